package dawnkettle.intake;

import dawnkettle.trouble.DeviceAway;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;

/**
 * The folder into which people and programs drop orders as {@code *.csv}.
 *
 * <p>A file has a header row {@code order,line,customer,product,packs,delivery_date,action}; the action is empty or
 * {@code new}, or {@code amend} (packs 0 cancels). It ends in exactly one of two folders beside it, by rename and never
 * over another file:
 *
 * <ul>
 *   <li>{@code refused/} where nothing of it counts: it cannot be read as a whole (not UTF-8 text, above 1 MB, a wrong
 *       header, an open quote, a last line that is not whole), or each of its orders has a problem. All problems stand
 *       beside it in {@code <name>.reasons.txt}.
 *   <li>{@code taken/} otherwise. An order with a problem in any of its lines is left out whole, the file's other
 *       orders are taken, and the problems stand beside it in {@code <name>.refusals.txt}.
 * </ul>
 *
 * <p>A file is first moved to {@code reading/}, so that what was read is what is moved on, whoever writes meanwhile. It
 * stays there until {@link Dropped#acknowledge}; after a crash the next look finds it again, and the ledger knows by its
 * SHA-256 whether it was counted. Dot files, {@code *.part} and files that are still being written are left alone.
 */
public final class DropFolder {
    private final Path folder;
    private final Duration settle;
    private final Map<Path, Sighting> sightings = new HashMap<>();

    /** A file's size and time of change as they were first seen together. */
    private record Sighting(long size, Instant changed, Instant at) {}

    /**
     * @param folder where files are dropped; made where it is missing
     * @param settle how long a file must have been left alone before it is read; zero takes all at once
     */
    public DropFolder(Path folder, Duration settle) {
        this.folder = folder;
        this.settle = settle;
    }

    /**
     * Takes hold of the files that are ready, the oldest first; those left from a crash come before them.
     *
     * @throws DeviceAway where the folder cannot be read or written
     */
    public List<Dropped> look(Instant now) {
        try {
            for (String name : List.of(Dropped.READING, Dropped.TAKEN, Dropped.REFUSED))
                Files.createDirectories(folder.resolve(name));
            List<Dropped> dropped = new ArrayList<>();
            for (Path left : csvIn(folder.resolve(Dropped.READING))) dropped.add(Dropped.open(folder, left));
            for (Path file : csvIn(folder))
                if (isSettled(file, now))
                    dropped.add(Dropped.open(folder, Names.moveFree(file, folder.resolve(Dropped.READING))));
            return dropped;
        } catch (IOException | UncheckedIOException e) {
            throw DeviceAway.clean(
                    "drop folder " + folder + ": cannot be read or written (" + e.getMessage()
                            + "); give the service write access to it, files wait where they are",
                    e);
        }
    }

    /**
     * A file of which not all counts.
     *
     * @param folder the one of the two folders in which it lies
     * @param reasons the file beside it that says why
     */
    public record LeftOut(String folder, String file, String reasons) {
        /** Whether nothing of it counts. */
        public boolean isWhole() {
            return folder.equals(Dropped.REFUSED);
        }
    }

    /** What was not taken since then by the machine's own time, whole or in part, and lies there still. */
    public List<LeftOut> leftOutSince(Instant since) {
        return Stream.of(Dropped.REFUSED, Dropped.TAKEN)
                .flatMap(name -> leftOut(name, since).stream())
                .toList();
    }

    private List<LeftOut> leftOut(String name, Instant since) {
        try (Stream<Path> files = Files.list(folder.resolve(name))) {
            return files.filter(file -> file.toString().endsWith(Dropped.reasons(name)))
                    .filter(file ->
                            !changed(file).isBefore(since) && !changed(file).equals(Instant.MAX))
                    .map(file -> file.getFileName().toString())
                    .sorted()
                    .map(file -> new LeftOut(
                            name,
                            file.substring(
                                    0, file.length() - Dropped.reasons(name).length()),
                            file))
                    .toList();
        } catch (IOException
                | UncheckedIOException none) { // nothing was ever dropped, or nobody may look: look() says so
            return List.of();
        }
    }

    private static List<Path> csvIn(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(DropFolder::isOrderFile)
                    .sorted(Comparator.comparing(DropFolder::changed).thenComparing(Path::getFileName))
                    .toList();
        }
    }

    private static boolean isOrderFile(Path file) {
        String name = file.getFileName().toString();
        return name.toLowerCase(Locale.ROOT).endsWith(".csv")
                && !name.startsWith(".")
                && !Files.isDirectory(file, LinkOption.NOFOLLOW_LINKS);
    }

    private static Instant changed(Path file) {
        try {
            return Files.getLastModifiedTime(file, LinkOption.NOFOLLOW_LINKS).toInstant();
        } catch (IOException gone) {
            return Instant.MAX;
        }
    }

    /** Whether nobody wrote for the settle time, by the file's own time or, where that is odd, by our watching it. */
    private boolean isSettled(Path file, Instant now) throws IOException {
        if (settle.isZero()) return true;
        if (Files.notExists(file, LinkOption.NOFOLLOW_LINKS)) return false;
        BasicFileAttributes seen = Files.readAttributes(file, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
        Instant changed = seen.lastModifiedTime().toInstant();
        if (!changed.plus(settle).isAfter(now)) {
            sightings.remove(file);
            return true;
        }
        Sighting before = sightings.get(file);
        if (before == null || before.size() != seen.size() || !before.changed().equals(changed)) {
            sightings.put(file, new Sighting(seen.size(), changed, now));
            return false;
        }
        if (before.at().plus(settle).isAfter(now)) return false;
        sightings.remove(file);
        return true;
    }
}

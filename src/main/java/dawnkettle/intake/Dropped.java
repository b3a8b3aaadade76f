package dawnkettle.intake;

import static java.nio.charset.StandardCharsets.UTF_8;

import dawnkettle.book.OrderBook;
import dawnkettle.shop.Shop;
import dawnkettle.trouble.DeviceAway;
import dawnkettle.trouble.Place;
import dawnkettle.trouble.Problem;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * One dropped file that we hold: read it, commit what it holds together with its SHA-256, then acknowledge it.
 *
 * <p>Where the ledger knows the SHA-256 (a crash came before the acknowledging, or somebody dropped the file twice) its
 * amendments must not be added again; its lines may, a line counts once anyway. A file that is refused is not to be
 * remembered: it may come again unchanged after the owner has put {@code conf/} right.
 */
public final class Dropped {
    static final String READING = "reading";
    static final String TAKEN = "taken";
    static final String REFUSED = "refused";

    private final Path folder;
    private final Path held;
    private final byte[] bytes;
    private final Optional<Problem> unreadable;

    private Dropped(Path folder, Path held, byte[] bytes, Optional<Problem> unreadable) {
        this.folder = folder;
        this.held = held;
        this.bytes = bytes;
        this.unreadable = unreadable;
    }

    static Dropped open(Path folder, Path held) {
        Place place = Place.of(held.getFileName().toString());
        if (!Files.isRegularFile(held, LinkOption.NOFOLLOW_LINKS))
            return new Dropped(
                    folder,
                    held,
                    new byte[0],
                    Optional.of(new Problem(place, "this is a link or a device, not a file", "drop the file itself")));
        try (InputStream in = Files.newInputStream(held, LinkOption.NOFOLLOW_LINKS)) {
            return new Dropped(folder, held, in.readNBytes(OrderTable.MOST_BYTES + 1), Optional.empty());
        } catch (IOException e) {
            return new Dropped(
                    folder,
                    held,
                    new byte[0],
                    Optional.of(new Problem(
                            place,
                            "the file cannot be opened",
                            "give the service leave to read it and drop it again")));
        }
    }

    /** The file's name, as it is held. */
    public String name() {
        return held.getFileName().toString();
    }

    /** What was read of it, at most 1 MB and a byte; a larger file is refused anyway. */
    public int size() {
        return bytes.length;
    }

    /** SHA-256 of what was read, in hexadecimal; of a file that cannot be read, of its name. */
    public String sha256() {
        try {
            byte[] of = unreadable.isPresent() ? name().getBytes(UTF_8) : bytes;
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(of));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    /** @param book the book as it stands, with what earlier files of the same look added to it */
    public Reading read(Shop shop, OrderBook book, Instant now) {
        return unreadable
                .map(problem -> new Reading(List.of(), List.of(), List.of(), List.of(problem), 0))
                .orElseGet(() -> new ReadOrders(shop, book, now).read(OrderTable.read(name(), bytes)));
    }

    /**
     * Moves the file on to where it ends; only after everything that was read is committed.
     *
     * @return where it lies now
     * @throws DeviceAway where it cannot be moved; it then stays held and the next look finds it
     */
    public Path acknowledge(Reading reading) {
        Path into = folder.resolve(reading.isRefused() ? REFUSED : TAKEN);
        Path target = Names.free(name(), into);
        try {
            // The words first: a file without its reasons could be taken for one that has none.
            if (!reading.problems().isEmpty()) write(beside(target, reading), words(reading));
            return Files.move(held, target);
        } catch (IOException e) {
            throw DeviceAway.clean(
                    "drop folder " + folder + ": \"" + name() + "\" cannot be moved to " + into.getFileName()
                            + "; give the service write access, it is tried again at the next look",
                    e);
        }
    }

    private static Path beside(Path target, Reading reading) {
        return target.resolveSibling(target.getFileName() + reasons(reading.isRefused() ? REFUSED : TAKEN));
    }

    /** What the name of the words beside a file of that folder ends with. */
    static String reasons(String folder) {
        return folder.equals(REFUSED) ? ".reasons.txt" : ".refusals.txt";
    }

    private static void write(Path file, String text) throws IOException {
        Path part = file.resolveSibling("." + file.getFileName() + ".part");
        Files.writeString(part, text, UTF_8);
        Files.move(part, file, java.nio.file.StandardCopyOption.REPLACE_EXISTING);
    }

    private static String words(Reading reading) {
        String head = reading.isRefused()
                ? "Nothing of this file was taken:"
                : "These orders were not taken, the others of the file were:";
        return head
                + reading.problems().stream()
                        .sorted()
                        .map(problem -> "\n" + problem)
                        .collect(Collectors.joining())
                + "\n";
    }
}

package dawnkettle.night;

import dawnkettle.store.LedgerCopy;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** The nightly copies in a folder, by the production day that each was made for. */
public record Copies(Path folder) {
    /** What the name of a copy that is locked ends with. */
    public static final String LOCKED = ".locked";

    private static final Pattern NAME = Pattern.compile("ledger-([0-9]{4}-[0-9]{2}-[0-9]{2})\\.db(?:\\.locked)?");

    /** One of them. */
    public record Dated(LocalDate day, Path file) {
        public boolean isLocked() {
            return file.toString().endsWith(LOCKED);
        }

        public LedgerCopy copy() {
            return new LedgerCopy(file);
        }
    }

    Path named(LocalDate day) {
        return folder.resolve("ledger-" + day + ".db");
    }

    /** The newest first; nothing but files that are named as copies are. */
    public List<Dated> newestFirst() throws IOException {
        return byDay().descendingMap().entrySet().stream()
                .map(entry -> new Dated(entry.getKey(), entry.getValue()))
                .toList();
    }

    TreeMap<LocalDate, Path> byDay() throws IOException {
        TreeMap<LocalDate, Path> copies = new TreeMap<>();
        try (Stream<Path> files = Files.list(folder)) {
            List<Path> sorted = files.sorted(Comparator.naturalOrder()).toList();
            for (Path file : sorted) day(file).ifPresent(day -> copies.put(day, file));
        }
        return copies;
    }

    private static Optional<LocalDate> day(Path file) {
        Matcher name = NAME.matcher(file.getFileName().toString());
        if (!name.matches() || !Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) return Optional.empty();
        try {
            return Optional.of(LocalDate.parse(name.group(1)));
        } catch (DateTimeException noDay) {
            return Optional.empty(); // not a copy of ours
        }
    }
}

package dawnkettle.night;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Clears away old copies of the ledger: the last ones stay, and of each month the first. */
final class OldCopies {
    /** So many nights can be gone back to; a shop that works six days a week has two weeks to see that something is wrong. */
    static final int LAST = 14;

    private static final Pattern NAME = Pattern.compile("ledger-([0-9]{4}-[0-9]{2}-[0-9]{2})\\.db");

    private final Path folder;

    OldCopies(Path folder) {
        this.folder = folder;
    }

    /**
     * Touches nothing but files that are named as copies are, and never {@code made}.
     *
     * @return how many were deleted
     * @throws IOException where the folder can't be listed or a copy not be deleted
     */
    int clear(Path made) throws IOException {
        TreeMap<LocalDate, Path> copies = copies();
        Set<LocalDate> kept = kept(copies);
        int cleared = 0;
        for (var copy : copies.entrySet()) {
            if (kept.contains(copy.getKey()) || copy.getValue().equals(made)) continue;
            Files.delete(copy.getValue());
            cleared++;
        }
        return cleared;
    }

    private static Set<LocalDate> kept(TreeMap<LocalDate, Path> copies) {
        Set<LocalDate> kept = new HashSet<>();
        copies.descendingKeySet().stream().limit(LAST).forEach(kept::add);
        Set<YearMonth> months = new HashSet<>();
        for (LocalDate day : copies.keySet()) if (months.add(YearMonth.from(day))) kept.add(day);
        return kept;
    }

    private TreeMap<LocalDate, Path> copies() throws IOException {
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

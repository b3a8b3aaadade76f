package dawnkettle.night;

import dawnkettle.store.LedgerCopy;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.HashSet;
import java.util.Set;
import java.util.TreeMap;

/** Clears away old copies of the ledger: the last ones stay, and of each month the first. */
final class OldCopies {
    /** So many nights can be gone back to; a shop that works six days a week has two weeks to see that something is wrong. */
    static final int LAST = 14;

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
        TreeMap<LocalDate, Path> copies = new Copies(folder).byDay();
        Set<LocalDate> kept = kept(copies);
        int cleared = 0;
        for (var copy : copies.entrySet()) {
            if (kept.contains(copy.getKey()) || copy.getValue().equals(made)) continue;
            delete(copy.getValue());
            cleared++;
        }
        return cleared;
    }

    /** Deletes those of days before {@code first}, however few are left. @return how many */
    int clearBefore(LocalDate first) throws IOException {
        int cleared = 0;
        for (Path copy : new Copies(folder).byDay().headMap(first).values()) {
            delete(copy);
            cleared++;
        }
        return cleared;
    }

    private static void delete(Path copy) throws IOException {
        Files.delete(copy);
        Files.deleteIfExists(new LedgerCopy(copy).checksumFile());
    }

    private static Set<LocalDate> kept(TreeMap<LocalDate, Path> copies) {
        Set<LocalDate> kept = new HashSet<>();
        copies.descendingKeySet().stream().limit(LAST).forEach(kept::add);
        Set<YearMonth> months = new HashSet<>();
        for (LocalDate day : copies.keySet()) if (months.add(YearMonth.from(day))) kept.add(day);
        return kept;
    }
}

package dawnkettle.store;

import dawnkettle.trouble.DeviceAway;
import dawnkettle.trouble.DiskAway;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Puts a checked copy in the ledger's place. What stood there is put aside under a name with the time and never deleted;
 * at every moment in between a whole ledger stands in its place.
 */
public final class PutBack {
    private static final DateTimeFormatter NAME = DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH-mm-ss", Locale.ROOT);

    private final Path ledger;

    public PutBack(Path ledger) {
        this.ledger = ledger.toAbsolutePath();
    }

    /**
     * What was done.
     *
     * @param aside where the ledger that stood there lies now; empty where there was none
     * @param from the last instant that the copy knows of
     * @param lost what the copy does not know of; empty where the ledger that was put aside can't be read
     */
    public record Done(Optional<Path> aside, Instant from, Optional<LostSince> lost) {}

    /**
     * @param now the time, for the name of what is put aside
     * @throws DeviceAway where another program is at work on the ledger, or the copy is not sound: nothing was changed
     */
    public Done from(LedgerCopy copy, Instant now, ZoneId zone) {
        try (LedgerHold hold = LedgerHold.take(ledger).orElseThrow(this::isHeld)) {
            return held(copy, now, zone, hold);
        } catch (IOException e) {
            throw new LedgerTrouble(ledger)
                    .clean(
                            "the copy can't be put there (" + e.getMessage() + ")",
                            "see who may write in its folder",
                            e);
        }
    }

    /** @param hold which is kept until all is done */
    private Done held(LedgerCopy copy, Instant now, ZoneId zone, LedgerHold hold) throws IOException {
        LedgerCopy.Verdict verdict = copy.checked();
        if (!verdict.isSound())
            throw new LedgerTrouble(copy.file())
                    .clean("this copy is not sound: " + verdict.problems().get(0), "take another one", null);
        Instant from = verdict.newest().orElse(Instant.EPOCH);
        Path coming = ledger.resolveSibling(ledger.getFileName() + ".coming");
        clear(coming);
        LedgerCopy made = copy.copiedTo(coming);
        Files.deleteIfExists(made.checksumFile());
        Optional<Path> aside = aside(now, zone);
        if (aside.isPresent()) keepWriteAhead(aside.get());
        Optional<LostSince> lost = lost(copy.file());
        try (Ledger second = Ledger.open(coming)) {
            second.restored()
                    .note(new RestoredRows.Restored(
                            now,
                            copy.file().getFileName().toString(),
                            from,
                            lost.isPresent(),
                            lost.map(LostSince::labels).orElse(List.of())));
            second.checkpoint();
        }
        Ownership.ofFolder(coming);
        LedgerCopy.force(coming);
        if (aside.isPresent()) putAside(aside.get(), lost.isPresent());
        Files.move(coming, ledger, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
        LedgerCopy.force(ledger.getParent());
        return new Done(aside, from, lost);
    }

    private DeviceAway isHeld() {
        return new LedgerTrouble(ledger)
                .clean(
                        "the service is at work on it",
                        "stop the service first (systemctl stop dawnkettle), then say this again",
                        null);
    }

    private static void clear(Path left) throws IOException {
        for (String end : List.of("", "-wal", "-shm")) Files.deleteIfExists(beside(left, end));
    }

    /** What the ledger knows and the copy does not; empty where it can't be read whole. */
    private Optional<LostSince> lost(Path copy) {
        if (Files.notExists(ledger)) return Optional.empty();
        try (Ledger now = Ledger.open(ledger)) {
            if (!now.faults().isEmpty()) return Optional.empty();
            now.checkpoint();
            return Optional.of(LostSince.between(now, copy));
        } catch (DeviceAway | DiskAway | IllegalStateException unreadable) {
            return Optional.empty();
        }
    }

    private Optional<Path> aside(Instant now, ZoneId zone) {
        if (Files.notExists(ledger)) return Optional.empty();
        Path aside = ledger.resolveSibling("ledger-aside-" + NAME.format(now.atZone(zone)) + ".db");
        if (Files.exists(aside))
            throw new LedgerTrouble(aside).clean("it is there already", "wait a second and say this again", null);
        return Optional.of(aside);
    }

    /** Opening a damaged ledger may clear its write-ahead file away, in which somebody may yet find something. */
    private void keepWriteAhead(Path aside) throws IOException {
        if (Files.exists(beside(ledger, "-wal"))) Files.copy(beside(ledger, "-wal"), beside(aside, "-wal"));
    }

    /** The write-ahead file goes first: beside another ledger it would be written into that. */
    private void putAside(Path aside, boolean isWhole) throws IOException {
        if (isWhole)
            Files.deleteIfExists(beside(aside, "-wal")); // all of it was written into the ledger when that closed
        for (String end : List.of("-wal", "-shm")) Files.deleteIfExists(beside(ledger, end));
        try {
            Files.createLink(aside, ledger);
        } catch (IOException | UnsupportedOperationException noLinksHere) {
            Files.copy(ledger, aside, StandardCopyOption.COPY_ATTRIBUTES);
            LedgerCopy.force(aside);
        }
    }

    private static Path beside(Path file, String end) {
        return file.resolveSibling(file.getFileName() + end);
    }
}

package dawnkettle.night;

import dawnkettle.night.SelfTest.Finding;
import dawnkettle.store.LedgerCopy;
import dawnkettle.store.StepKey;
import dawnkettle.store.StepRow;
import dawnkettle.trouble.DiskAway;
import dawnkettle.trouble.Trouble;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.Period;
import java.time.zone.ZoneRulesProvider;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/** What the self-test asks of this machine: its disk, its clock, the ledger and its copies. */
final class SelfTestOfLedger {
    /** Bytes; above it something keeps the ledger's file from being cut back (common practice, no source). */
    private static final long WRITE_AHEAD = 64_000_000;

    private static final Period RULES_HOLD = Period.ofMonths(18);

    private static final String LEDGER_SAFE = "What was written down is kept.";

    private final Office office;
    private final Ballast ballast;

    SelfTestOfLedger(Office office) {
        this.office = office;
        this.ballast = Ballast.of(office);
    }

    List<Finding> look(LocalDate productionDate) {
        List<Finding> found = new ArrayList<>();
        found.add(guarded("writing", this::writing));
        found.add(guarded("room on the disk", this::room));
        found.add(guarded("ballast", this::ballast));
        found.add(guarded("clock", this::clock));
        found.add(guarded("last copy", this::lastCopy));
        office.papers()
                .settings()
                .care()
                .copies()
                .second()
                .ifPresent(folder -> found.add(guarded("second copy", () -> secondCopy(folder))));
        found.add(guarded("what the ledger holds", () -> conservation(productionDate)));
        found.add(guarded("old rows of the ledger", () -> chain(productionDate)));
        found.add(guarded("time zone rules", this::zoneRules));
        return found;
    }

    private static Finding guarded(String what, Supplier<Finding> look) {
        try {
            return look.get();
        } catch (DiskAway gone) {
            throw gone;
        } catch (Trouble trouble) {
            return Finding.wrong(what, trouble.getMessage(), LEDGER_SAFE, "Look at the disk.");
        } catch (RuntimeException mistake) {
            return Finding.wrong(what, what + " could not be looked at: " + mistake, LEDGER_SAFE, "Send us this line.");
        }
    }

    private Finding writing() {
        ballast.writeSomething();
        return Finding.well("writing", "the state folder can be written to");
    }

    private Finding room() {
        long free = ballast.free() / 1_000_000;
        long wanted = office.papers().settings().care().room().free() / 1_000_000;
        if (free < wanted)
            return Finding.wrong(
                    "room on the disk",
                    "the disk has " + free + " MB left, and should have " + wanted,
                    LEDGER_SAFE,
                    "Make room: move old files of the tray folder to another machine.");
        if (writeAhead() > WRITE_AHEAD)
            return Finding.wrong(
                    "room on the disk",
                    "the file \"-wal\" beside the ledger has grown to " + writeAhead() / 1_000_000 + " MB",
                    LEDGER_SAFE,
                    "See that no program looks at the ledger for hours; restart the service.");
        return Finding.well("room on the disk", free + " MB are free");
    }

    private long writeAhead() {
        try {
            Path ledger = office.ledger().file().toAbsolutePath();
            Path file = ledger.resolveSibling(ledger.getFileName() + "-wal");
            return Files.exists(file) ? Files.size(file) : 0;
        } catch (IOException e) {
            return 0;
        }
    }

    private Finding ballast() {
        if (!ballast.isWanted()) return Finding.well("ballast", "none is kept");
        if (ballast.make()) return Finding.well("ballast", "is there");
        return Finding.wrong(
                "ballast",
                "the room that is kept back for a bad night is used up",
                LEDGER_SAFE,
                "Make room on the disk; it is kept back again by itself.");
    }

    private Finding clock() {
        return new ClockGate(office)
                .doubt()
                .map(doubt -> Finding.wrong(
                        "clock",
                        doubt,
                        "No day is closed and no wrong date goes on a case; sheets come and say DATE NOT CONFIRMED.",
                        "Look at a telephone, and give your word for it tonight: dawnkettle clock confirm DATE."))
                .orElseGet(() -> Finding.well("clock", "is trusted"));
    }

    /** A copy for each working day, the newest for today; before the first night there is none. */
    private Finding lastCopy() {
        Path folder = office.papers().settings().places().backups();
        Optional<Copies.Dated> newest = newest(folder);
        LocalDate wanted = wanted();
        if (newest.isEmpty() && isBefore(wanted)) return Finding.well("last copy", "the first is made tonight");
        if (newest.isEmpty())
            return Finding.wrong(
                    "last copy", "there is no copy of the ledger", LEDGER_SAFE, "Look at the folder of copies.");
        LedgerCopy.Verdict verdict = newest.get().copy().checked();
        String name = newest.get().file().getFileName().toString();
        if (!verdict.isSound())
            return Finding.wrong(
                    "last copy",
                    name + " is not sound: " + verdict.problems().get(0),
                    "The ledger itself is at work.",
                    "Look at the disk; another copy is made tonight.");
        if (newest.get().day().isBefore(wanted))
            return Finding.wrong(
                    "last copy",
                    "the newest copy is " + name + ", and there should be one of " + wanted,
                    "The ledger itself is at work.",
                    "Look at the command \"status\" why none was made.");
        return Finding.well("last copy", name + " is sound, with " + verdict.rowCount() + " rows");
    }

    private Finding chain(LocalDate productionDate) {
        List<String> broken = office.ledger().chain().brokenOf(productionDate);
        if (broken.isEmpty()) return Finding.well("old rows of the ledger", "all are as they were written");
        return Finding.wrong(
                "old rows of the ledger",
                broken.get(0) + (broken.size() == 1 ? "" : ", and " + (broken.size() - 1) + " more"),
                "Tonight's orders, plan and labels do not come from old rows.",
                "Keep the copies of before; say \"restore\" alone to see since which the rows differ.");
    }

    private Finding secondCopy(Path folder) {
        if (!Files.isDirectory(folder))
            return Finding.wrong(
                    "second copy",
                    "the folder for second copies \"" + folder + "\" is not there",
                    "The copies on this machine are made.",
                    "Plug the stick in, or see that the other machine is on.");
        Optional<Copies.Dated> newest = newest(folder);
        if (newest.filter(copy -> !copy.day().isBefore(wanted())).isEmpty() && !isBefore(wanted()))
            return Finding.wrong(
                    "second copy",
                    "the folder \"" + folder + "\" has no copy of " + wanted(),
                    "The copies on this machine are made.",
                    "See that it can be written to and has room.");
        return Finding.well("second copy", "is there");
    }

    private static Optional<Copies.Dated> newest(Path folder) {
        try {
            return Files.isDirectory(folder)
                    ? new Copies(folder).newestFirst().stream().findFirst()
                    : Optional.empty();
        } catch (IOException e) {
            return Optional.empty();
        }
    }

    /** The production day of which a copy should be there by now: the last one that began. */
    private LocalDate wanted() {
        LocalDate today = office.now().atZone(office.shop().house().zone()).toLocalDate();
        return office.shop().calendar().isWorkDay(today)
                ? today
                : office.shop().calendar().previous(today);
    }

    /** Whether the ledger began after the night on which that copy would have been made. */
    private boolean isBefore(LocalDate wanted) {
        Optional<StepRow> backup = office.ledger().steps().find(StepKey.of(Step.BACKUP.word(), wanted));
        return backup.isEmpty();
    }

    private Finding conservation(LocalDate productionDate) {
        List<String> broken = new ArrayList<>(office.ledger().broken(wanted()));
        if (!productionDate.equals(wanted())) broken.addAll(office.ledger().broken(productionDate));
        if (broken.isEmpty()) return Finding.well("what the ledger holds", "adds up");
        return Finding.wrong(
                "what the ledger holds",
                "the ledger does not add up: " + broken.get(0) + (broken.size() > 1 ? ", and more" : ""),
                "Nothing was lost by this look.",
                "Count before you pack, and send us the file of the command \"bundle\".");
    }

    /** Which rules of the time zones the Java machine has, named as 2026a by year and letter (IANA tz database). */
    private Finding zoneRules() {
        String zone = office.shop().house().zone().getId();
        String version = ZoneRulesProvider.getVersions(zone).lastKey();
        LocalDate today = office.now().atZone(office.shop().house().zone()).toLocalDate();
        boolean isOld = isOld(version, today);
        return isOld
                ? Finding.wrong(
                                "time zone rules",
                                "the rules of summer time on this machine are of " + version
                                        + ", more than 18 months old",
                                "They are right unless your country has changed its rules since.",
                                "Update Java on the machine when there is time.")
                        .waiting()
                : Finding.well("time zone rules", "are those of " + version + " (IANA)");
    }

    /** A release's month is not in its name: a year's letters are spread over its months, two apart, so that it counts as young too long rather than too short. */
    static boolean isOld(String version, LocalDate today) {
        if (!version.matches("[0-9]{4}[a-z]")) return false;
        int month = Math.min(12, 1 + 2 * (version.charAt(4) - 'a'));
        LocalDate published = LocalDate.of(Integer.parseInt(version.substring(0, 4)), month, 1);
        return published.plus(RULES_HOLD).isBefore(today);
    }
}

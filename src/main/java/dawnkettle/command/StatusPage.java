package dawnkettle.command;

import dawnkettle.night.Ballast;
import dawnkettle.night.BrokenRun;
import dawnkettle.night.BrokenRuns;
import dawnkettle.night.ClockGate;
import dawnkettle.night.Night;
import dawnkettle.night.Office;
import dawnkettle.store.Effect;
import dawnkettle.store.QueuedMail;
import dawnkettle.store.RestoredRows;
import dawnkettle.store.StepRow;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** How the night stands: the verdict in a line, then the steps, what is in doubt, what stands in the way, what comes next. */
public final class StatusPage {
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("EEE d MMM HH:mm", Locale.ENGLISH);
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEEE d MMMM", Locale.ENGLISH);
    private static final DateTimeFormatter HOUR = DateTimeFormatter.ofPattern("HH:mm", Locale.ENGLISH);

    /** So long after a ledger was put back its gaps may still surprise somebody. Common practice, no source. */
    private static final Duration STILL_NEW = Duration.ofDays(2);

    private final Office office;
    private final ZoneId zone;
    private final Instant now;
    private final ClockGate clock;
    private final List<LocalDate> days;
    private final List<StepRow> steps = new ArrayList<>();
    private final List<BrokenRun> runs;
    private final List<Effect> sheets;
    private final List<String> obstacles = new ArrayList<>();
    private final List<QueuedMail> mails;

    public StatusPage(Office office) {
        this.office = office;
        this.zone = office.shop().house().zone();
        this.now = office.clock().instant();
        this.clock = new ClockGate(office);
        LocalDate today = now.atZone(zone).toLocalDate();
        LocalDate next = office.timetable().closingFrom(now);
        // The book of the day between the two may be closed already: its night is the one that is asked about.
        this.days = today.datesUntil(next.plusDays(1)).toList();
        days.forEach(day -> steps.addAll(office.ledger().steps().of(day)));
        runs = new BrokenRuns(office).open();
        sheets = office.ledger().effects().in(Effect.State.AMBIGUOUS).stream()
                .filter(effect -> effect.kind() == Effect.Kind.SHEET)
                .filter(effect -> !effect.businessDate().isBefore(today))
                .toList();
        mails = office.ledger().outbox().waiting();
        gatherObstacles(today);
    }

    private void gatherObstacles(LocalDate today) {
        if (!clock.isTrusted()) obstacles.add(clock.told());
        if (Ballast.of(office).isGivenUp()) obstacles.add("The disk is full, or was: make room.");
        office.ledger().broken(today).forEach(law -> obstacles.add("The ledger does not add up: " + law));
    }

    private List<StepRow> failed() {
        return steps.stream()
                .filter(step -> step.state() == StepRow.State.FAILED || step.state() == StepRow.State.SKIPPED)
                .toList();
    }

    public boolean isWell() {
        return failed().isEmpty() && runs.isEmpty() && obstacles.isEmpty();
    }

    public List<String> lines() {
        List<String> lines = new ArrayList<>();
        lines.add(verdict());
        restored().ifPresent(lines::add);
        for (LocalDate day : days) day(day, lines);
        runs.forEach(run -> lines.add("  in doubt: " + run.said()));
        sheets.forEach(sheet -> lines.add("  in doubt: nobody knows whether " + named(sheet) + " of "
                + DAY.format(sheet.businessDate()) + " came out; look in the tray"));
        obstacles.forEach(one -> lines.add("  in the way: " + one));
        mails.forEach(mail -> lines.add("  mail waits: \"" + mail.subject() + "\", tried again "
                + TIME.format(mail.nextTry().atZone(zone))));
        lines.add(next());
        return lines;
    }

    private void day(LocalDate day, List<String> lines) {
        List<StepRow> its = steps.stream()
                .filter(step -> step.key().businessDate().equals(day))
                .toList();
        boolean isUnconfirmed = isUnconfirmed(day);
        if (its.isEmpty() && !isUnconfirmed) return;
        lines.add("Making of " + DAY.format(day) + ":");
        if (isUnconfirmed)
            lines.add(
                    "  date not confirmed: what hangs of this day says so; it becomes the day's plan once the clock is"
                            + " trusted, and comes again without those words");
        its.forEach(step -> lines.add("  " + step.key().step() + ": " + how(step)));
    }

    private boolean isUnconfirmed(LocalDate day) {
        return Stream.concat(
                        office.ledger().unconfirmed().planDays().stream(),
                        office.ledger().unconfirmed().callDays().stream())
                .anyMatch(day::equals);
    }

    /** As "done 15:02, 45 lines are in the book". */
    private String how(StepRow step) {
        String at = HOUR.format(step.changedAt().atZone(zone));
        String state = step.state().name().toLowerCase(Locale.ROOT);
        String how = switch (step.state()) {
            case DUE -> "due since " + HOUR.format(step.dueAt().atZone(zone));
            case STARTED -> "begun " + at + ", not at its end yet";
            case FAILED -> "failed " + at + ", after " + step.attempts() + (step.attempts() == 1 ? " try" : " tries");
            case DONE, SKIPPED -> state + " " + at;
        };
        return how + (step.note().isEmpty() ? "" : ", " + step.note());
    }

    /** As "sheet run-vats"; what was asked for by hand keeps its long name. */
    private static String named(Effect sheet) {
        return "sheet " + sheet.key().substring(sheet.key().lastIndexOf(' ') + 1);
    }

    private Optional<String> restored() {
        return office.ledger()
                .restored()
                .last()
                .filter(one -> now.isBefore(one.at().plus(STILL_NEW)))
                .map(this::said);
    }

    private String said(RestoredRows.Restored one) {
        return "The ledger was put back " + TIME.format(one.at().atZone(zone)) + " from the copy of "
                + TIME.format(one.from().atZone(zone))
                + ": what was ordered, written down or printed between the two is not in it. Labels of that time never"
                + " come by themselves; drop the orders again, write down again what was weighed.";
    }

    private String next() {
        Optional<Night.Coming> coming = new Night(office).next();
        String next = coming.map(
                        one -> "Next, by itself: " + TIME.format(one.at().atZone(zone)) + " " + one.what() + ".")
                .orElse("Next, by itself: nothing in the coming days.");
        if (clock.isTrusted()) return next;
        return "Next, by itself: sheets as they fall due, marked DATE NOT CONFIRMED. Book, labels and the rest wait for you: if"
                + " today is " + DAY.format(now.atZone(zone)) + ", say dawnkettle clock confirm "
                + now.atZone(zone).toLocalDate();
    }

    /** What is worst comes first, by its name. */
    private String verdict() {
        if (isWell()) return "All is well.";
        List<String> parts = new ArrayList<>();
        if (!clock.isTrusted()) parts.add("the clock is not trusted");
        if (!failed().isEmpty())
            parts.add(String.join(
                    ", ", failed().stream().map(StatusPage::fault).distinct().toList()));
        if (!runs.isEmpty()) parts.add(runs.size() + (runs.size() == 1 ? " run" : " runs") + " of labels to count");
        int others = obstacles.size() - (clock.isTrusted() ? 0 : 1);
        if (others > 0) parts.add(others + (others == 1 ? " thing" : " things") + " in the way");
        return "Look at this: " + String.join("; ", parts) + ".";
    }

    private static String fault(StepRow step) {
        return step.key().step() + (step.state() == StepRow.State.FAILED ? " failed" : " left out");
    }
}

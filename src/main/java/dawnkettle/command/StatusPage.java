package dawnkettle.command;

import dawnkettle.night.Ballast;
import dawnkettle.night.BrokenRun;
import dawnkettle.night.BrokenRuns;
import dawnkettle.night.ClockGate;
import dawnkettle.night.Night;
import dawnkettle.night.Office;
import dawnkettle.store.Effect;
import dawnkettle.store.QueuedMail;
import dawnkettle.store.StepRow;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** How the night stands: the verdict in a line, then the steps, what is in doubt, what stands in the way, what comes next. */
final class StatusPage {
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("EEE d MMM HH:mm", Locale.ENGLISH);

    private final Office office;
    private final ZoneId zone;
    private final List<StepRow> steps = new ArrayList<>();
    private final List<BrokenRun> runs;
    private final List<Effect> sheets;
    private final List<String> obstacles = new ArrayList<>();
    private final List<QueuedMail> mails;

    StatusPage(Office office) {
        this.office = office;
        this.zone = office.shop().house().zone();
        Instant now = office.clock().instant();
        LocalDate today = now.atZone(zone).toLocalDate();
        LocalDate next = office.timetable().closingFrom(now);
        // The book of the day between the two may be closed already: its night is the one that is asked about.
        today.datesUntil(next.plusDays(1))
                .forEach(day -> steps.addAll(office.ledger().steps().of(day)));
        runs = new BrokenRuns(office).open();
        sheets = office.ledger().effects().in(Effect.State.AMBIGUOUS).stream()
                .filter(effect -> effect.kind() == Effect.Kind.SHEET)
                .filter(effect -> !effect.businessDate().isBefore(today))
                .toList();
        mails = office.ledger().outbox().waiting();
        gatherObstacles(today);
    }

    private void gatherObstacles(LocalDate today) {
        ClockGate clock = new ClockGate(office);
        if (!clock.isTrusted()) obstacles.add(clock.told());
        if (Ballast.of(office).isGivenUp()) obstacles.add("The disk is full, or was: make room.");
        office.ledger().broken(today).forEach(law -> obstacles.add("The ledger does not add up: " + law));
    }

    private long failed() {
        return steps.stream()
                .filter(step -> step.state() == StepRow.State.FAILED || step.state() == StepRow.State.SKIPPED)
                .count();
    }

    boolean isWell() {
        return failed() == 0 && runs.isEmpty() && obstacles.isEmpty();
    }

    List<String> lines() {
        List<String> lines = new ArrayList<>();
        lines.add(verdict());
        for (StepRow step : steps)
            lines.add("  " + step.key().businessDate() + "  " + step.key().step() + ": "
                    + step.state().name().toLowerCase(Locale.ROOT)
                    + (step.note().isEmpty() ? "" : ", " + step.note()));
        runs.forEach(run -> lines.add("  in doubt: " + run.said()));
        sheets.forEach(sheet -> lines.add("  in doubt: " + sheet.key() + "; look in the tray"));
        obstacles.forEach(one -> lines.add("  in the way: " + one));
        mails.forEach(mail -> lines.add("  mail waits: \"" + mail.subject() + "\", tried again "
                + TIME.format(mail.nextTry().atZone(zone))));
        new Night(office)
                .next()
                .ifPresent(coming -> lines.add(
                        "Next, by itself: " + TIME.format(coming.at().atZone(zone)) + " " + coming.what() + "."));
        return lines;
    }

    private String verdict() {
        if (isWell()) return "All is well.";
        List<String> parts = new ArrayList<>();
        if (failed() > 0) parts.add(failed() + (failed() == 1 ? " step" : " steps") + " failed or skipped");
        if (!runs.isEmpty()) parts.add(runs.size() + (runs.size() == 1 ? " run" : " runs") + " of labels in doubt");
        if (!obstacles.isEmpty())
            parts.add(obstacles.size() + (obstacles.size() == 1 ? " thing" : " things") + " in the way");
        return "Look at this: " + String.join(", ", parts) + ".";
    }
}

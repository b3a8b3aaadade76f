package dawnkettle.night;

import dawnkettle.mail.Alarm;
import dawnkettle.store.Effect;
import dawnkettle.store.LabelRows;
import dawnkettle.store.QueuedMail;
import dawnkettle.store.StepKey;
import dawnkettle.store.StepRow;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** What the ledger knows to be the matter, as a person should be told it. */
final class Alarms {
    /** What is older was told, or is of no more use. */
    private static final Duration LOOKED_BACK = Duration.ofHours(36);

    private final Office office;
    private final Letters letters;

    Alarms(Office office, Letters letters) {
        this.office = office;
        this.letters = letters;
    }

    List<Alarm> open() {
        List<Alarm> alarms = new ArrayList<>();
        steps().forEach(alarms::add);
        labels().forEach(alarms::add);
        sheets().forEach(alarms::add);
        leftOut(office).forEach(one -> alarms.add(leftOut(one)));
        letters.givenUp(office.now().minus(LOOKED_BACK)).forEach(mail -> alarms.add(givenUp(mail)));
        clock().ifPresent(alarms::add);
        disk().ifPresent(alarms::add);
        return alarms;
    }

    private Stream<Alarm> steps() {
        return days().flatMap(day -> office.ledger().steps().of(day).stream()).flatMap(this::step);
    }

    private Stream<Alarm> step(StepRow row) {
        Optional<Step> step = Step.ofWord(row.key().step());
        if (step.isEmpty()) return Stream.empty();
        Remedy remedy = Remedy.of(step.get());
        String what = row.key().step() + " of " + row.key().businessDate();
        if (row.state() == StepRow.State.FAILED && !waitsForPlan(row))
            return Stream.of(new Alarm(
                    "failed " + what,
                    what + " is not done: " + row.note(),
                    remedy.safe(),
                    remedy.todo() + " It is tried again by itself.",
                    Optional.of(row.dueAt().plus(step.get().useful())),
                    false));
        if (row.state() == StepRow.State.SKIPPED
                && row.changedAt().isAfter(office.now().minus(LOOKED_BACK)))
            return Stream.of(new Alarm(
                    "skipped " + what,
                    what + " was skipped: too late to be of use",
                    remedy.safe(),
                    remedy.byHand(),
                    Optional.empty(),
                    true));
        return Stream.empty();
    }

    /** What can't be done for want of a plan is told with the plan that failed. */
    private boolean waitsForPlan(StepRow row) {
        LocalDate day = row.key().businessDate();
        if (!row.note().equals(NoPlan.of(day))) return false;
        return office.ledger()
                .steps()
                .find(StepKey.of(Step.PLAN.word(), day))
                .filter(plan -> plan.state() == StepRow.State.FAILED)
                .isPresent();
    }

    private Stream<Alarm> labels() {
        Remedy remedy = Remedy.of(Step.LABELS);
        Stream<Alarm> stopped = office.ledger().effects().in(Effect.State.FAILED).stream()
                .filter(effect -> LabelRows.isRun(effect.key()) && isOfThese(effect))
                .map(effect -> new Alarm(
                        effect.key(),
                        "no more labels come: " + effect.note(),
                        remedy.safe(),
                        remedy.todo() + " It goes on by itself.",
                        Optional.empty(),
                        false));
        Stream<Alarm> broken = new BrokenRuns(office)
                .open().stream()
                        .map(run -> new Alarm(
                                "in doubt " + BrokenRuns.key(run.label()),
                                run.said(),
                                remedy.safe(),
                                remedy.byHand(),
                                Optional.empty(),
                                false));
        return Stream.concat(stopped, broken);
    }

    /** A sheet that was given out twice, and of which nobody knows all the same. */
    private Stream<Alarm> sheets() {
        Remedy remedy = Remedy.of(Step.SHEETS);
        return office.ledger().effects().in(Effect.State.AMBIGUOUS).stream()
                .filter(effect -> effect.kind() == Effect.Kind.SHEET && isOfThese(effect))
                .map(effect -> new Alarm(
                        "in doubt " + effect.key(),
                        "nobody knows whether " + effect.key() + " came out: " + effect.note(),
                        remedy.safe(),
                        "Look in the tray.",
                        Optional.empty(),
                        true));
    }

    private Alarm givenUp(QueuedMail mail) {
        return new Alarm(
                "given up " + mail.messageId(),
                "mail \"" + mail.subject() + "\" could not be sent: " + mail.note(),
                "It lies in the tray folder.",
                "Look at the mail account.",
                Optional.empty(),
                true);
    }

    /** Orders that somebody sent and that no plan will hold, of the last day and a half. */
    static List<OrderSource.LeftOut> leftOut(Office office) {
        return Optional.ofNullable(office.edges().senses().orders())
                .map(orders -> orders.leftOutSince(office.now().minus(LOOKED_BACK)))
                .orElse(List.of());
    }

    private static Alarm leftOut(OrderSource.LeftOut one) {
        return new Alarm(
                "left out " + one.reasons(),
                "orders are left out: " + one.said(),
                "Everything else that was ordered is planned.",
                "Read it, put the file right and drop it again before the book closes, or write the order by mail.",
                Optional.empty(),
                true);
    }

    private Optional<Alarm> clock() {
        return new ClockGate(office)
                .doubt()
                .map(doubt -> new Alarm(
                        "clock",
                        "no dated label is printed: " + doubt,
                        "No day is closed by a wrong clock and no wrong date goes on a case; sheets come and say DATE NOT CONFIRMED.",
                        "See that the network is there, or set the clock; or look at a telephone and say: dawnkettle"
                                + " clock confirm DATE. Until then dates are written by hand.",
                        Optional.empty(),
                        false));
    }

    private Optional<Alarm> disk() {
        if (!office.papers().settings().care().selfTests()
                || !Ballast.of(office).isGivenUp()) return Optional.empty();
        return Optional.of(new Alarm(
                "disk",
                "the disk is full; the room that was kept back is used up",
                "The night goes on with that room; nothing is printed twice.",
                "Make room now: move old files of the tray folder to another machine.",
                Optional.empty(),
                false));
    }

    private boolean isOfThese(Effect effect) {
        return days().anyMatch(day -> day.equals(effect.businessDate()));
    }

    private Stream<LocalDate> days() {
        ZoneId zone = office.shop().house().zone();
        LocalDate today = office.now().atZone(zone).toLocalDate();
        return today.minusDays(1).datesUntil(today.plusDays(6));
    }
}

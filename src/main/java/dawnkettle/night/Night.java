package dawnkettle.night;

import dawnkettle.plan.DayPlan;
import dawnkettle.store.StepKey;
import dawnkettle.store.StepRow;
import dawnkettle.trouble.DeviceAway;
import dawnkettle.trouble.DiskAway;
import dawnkettle.trouble.Trouble;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;

/** The night: asked again and again, it does what the ledger says is due and not done. */
public final class Night {
    private static final Duration LONGEST_WAIT = Duration.ofMinutes(30);
    private static final StepKey FIRST_START = StepKey.of("first start", LocalDate.EPOCH);

    private final Office office;
    private final Map<Step, Work> work = new EnumMap<>(Step.class);
    private final PrintLabels labels;
    private final PrintHolds holds;
    private final DawnAgain dawnAgain;
    private final Letters letters;
    private final Alerts alerts;
    private final TakeMails mails;
    private final InDoubt doubt;
    private final TakeUnconfirmed unconfirmed;
    private final PrintSheets sheets;
    private final SendSummary summary;
    private final Predicate<Timetable.Slot> mine;
    /** The day of the last look: what fell due since, while the machine was off, is looked at as well. */
    private LocalDate lookedAt;

    /** All that falls due from the ledger's first day on. */
    public Night(Office office) {
        this(office, isAfterFirstStart(office));
    }

    /** @param mine which slots it cares for */
    public Night(Office office, Predicate<Timetable.Slot> mine) {
        this(office, mine, new BoxedPlanner(office));
    }

    Night(Office office, Predicate<Timetable.Slot> mine, BoxedPlanner planner) {
        this.office = office;
        this.mine = mine;
        this.lookedAt = office.ledger().steps().lastDay().orElse(LocalDate.MAX);
        this.labels = new PrintLabels(office);
        this.letters = new Letters(office);
        this.alerts = new Alerts(office, letters);
        this.mails = new TakeMails(office, letters);
        SheetEffects effects = new SheetEffects(office);
        PlanTomorrow planning = new PlanTomorrow(office, planner, new StandIn(office, effects));
        Evenings evenings = new Evenings(office);
        this.sheets = new PrintSheets(office, effects, plan -> evenings.ifCard(plan, planner::card));
        this.holds = new PrintHolds(office, sheets);
        this.dawnAgain = new DawnAgain(office);
        this.summary = new SendSummary(office, letters, sheets);
        this.unconfirmed = new TakeUnconfirmed(office, planning);
        SettleSoak soak = new SettleSoak(office, effects, planner);
        work.put(Step.SOAK_CALL, soak);
        work.put(Step.FALLBACK, new PrintFallback(office, effects));
        work.put(Step.CLOSE, new CloseBook(office));
        work.put(Step.PLAN, planning);
        work.put(Step.SHEETS, sheets);
        work.put(Step.SELF_TEST, new SelfTest(office));
        work.put(Step.BACKUP, new BackUp(office));
        work.put(Step.DAWN_CHECK, new DawnCheck(office, planning, sheets));
        work.put(Step.SUMMARY, summary);
        work.put(Step.COSTS, new ReportWeek(office));
        work.put(Step.RECALL_DRILL, new RecallDrill(office, letters));
        this.doubt = new InDoubt(
                office,
                Map.of(
                        Step.SOAK_CALL, soak::callUnconfirmed,
                        Step.FALLBACK, work.get(Step.FALLBACK),
                        Step.PLAN, planning::planUnconfirmed,
                        Step.SHEETS, sheets::printUnconfirmed,
                        Step.SUMMARY, summary::sendUnconfirmed));
    }

    /** Takes in orders, then runs every step that is due. A step that fails never stops the next. */
    public void tick() {
        new TakeOrders(office).run();
        mails.run();
        doubt.look();
        if (!doubt.is()) unconfirmed.run();
        Instant now = office.now();
        for (Timetable.Slot slot : slots(now)) if (!slot.due().isAfter(now)) run(slot);
        if (!doubt.is()) lookedAt = today(now);
        dawnAgain.run((key, day) -> runAgain(key, work.get(Step.DAWN_CHECK)));
        new ReplanLosses(office).run((key, day) -> runAgain(key, work.get(Step.DAWN_CHECK)));
        if (!doubt.is()) confirmed(today(now));
        holds.run();
        letters.deliver();
        alerts.run();
    }

    private LocalDate today(Instant now) {
        return now.atZone(office.shop().house().zone()).toLocalDate();
    }

    /** What is made good now that the clock is right: a plan that was made by a wrong one, sheets that say so, a summary. */
    private void confirmed(LocalDate today) {
        unconfirmed
                .takenNow()
                .filter(day -> office.ledger().steps().isDone(StepKey.of(Step.SHEETS.word(), day)))
                .ifPresent(day -> runAgain(StepKey.of("plan after a doubtful clock", day), work.get(Step.DAWN_CHECK)));
        for (LocalDate day : List.of(today, office.shop().calendar().next(today)))
            office.plan(day)
                    .filter(plan -> office.ledger().steps().isDone(StepKey.of(Step.SHEETS.word(), day))
                            && !sheets.leftInDoubt(plan).isEmpty())
                    .ifPresent(plan -> runAgain(
                            new StepKey(
                                    "sheets, date confirmed",
                                    day,
                                    plan.heading().revision()),
                            sheets::printConfirmed));
        summary.second(today).ifPresent(key -> runAgain(key, summary));
    }

    private List<Timetable.Slot> slots(Instant now) {
        return office.timetable().around(now, lookedAt).stream()
                .filter(slot -> slot.step() != Step.SELF_TEST
                        || office.papers().settings().care().selfTests())
                .filter(mine)
                .toList();
    }

    /** Nothing is due of days whose book closed before the ledger was there; its first start is noted in it. */
    private static Predicate<Timetable.Slot> isAfterFirstStart(Office office) {
        office.ledger().steps().due(FIRST_START, office.now(), office.now());
        Instant first = office.ledger().steps().find(FIRST_START).orElseThrow().dueAt();
        Timetable timetable = office.timetable();
        return slot -> slot.step() == Step.COSTS || slot.step() == Step.RECALL_DRILL
                ? !slot.due().isBefore(first)
                : !timetable.close(slot.businessDate()).isBefore(first);
    }

    /** When there is next something to do after now. */
    public Optional<Instant> nextWake() {
        Instant now = office.now();
        Stream<Instant> slots = slots(now).stream().map(Timetable.Slot::due).filter(due -> due.isAfter(now));
        Stream<Instant> runs = slots(now).stream()
                .filter(slot -> slot.step() == Step.LABELS)
                .flatMap(slot -> office.plan(slot.businessDate()).stream())
                .flatMap(plan -> labels.open(plan).stream())
                .map(PrintLabels.Due::at)
                .filter(due -> due.isAfter(now));
        Stream<Instant> mails = letters.nextTry().filter(due -> due.isAfter(now)).stream();
        return Stream.concat(Stream.concat(slots, runs), mails).min(Instant::compareTo);
    }

    /**
     * What it does by itself next.
     *
     * @param what in words
     */
    public record Coming(Instant at, String what) {}

    /** What is done by itself next, after now; what failed and is tried again among it. */
    public Optional<Coming> next() {
        Instant now = office.now();
        List<Coming> all = new ArrayList<>();
        for (Timetable.Slot slot : slots(now)) {
            Optional<StepRow> row =
                    office.ledger().steps().find(StepKey.of(slot.step().word(), slot.businessDate()));
            String what = slot.step().word() + " of " + slot.businessDate();
            if (slot.due().isAfter(now) && slot.step() != Step.LABELS) all.add(new Coming(slot.due(), what));
            row.filter(one ->
                            one.state() == StepRow.State.FAILED && slot.latest().isAfter(now))
                    .ifPresent(one -> all.add(new Coming(
                            one.changedAt().plus(wait(one.attempts())), what + " once more, for it failed")));
            if (slot.step() == Step.LABELS)
                office.plan(slot.businessDate()).stream()
                        .flatMap(plan -> labels.open(plan).stream())
                        .filter(due -> due.at().isAfter(now))
                        .forEach(due -> all.add(new Coming(
                                due.at(), "labels of lot " + due.label().lot())));
        }
        letters.nextTry().ifPresent(at -> all.add(new Coming(at, "a mail that waits")));
        return all.stream().min(Comparator.comparing(Coming::at));
    }

    private void run(Timetable.Slot slot) {
        if (doubt.keepsBack(slot)) return;
        StepKey key = StepKey.of(slot.step().word(), slot.businessDate());
        Instant now = office.now();
        office.ledger().steps().due(key, slot.due(), now);
        StepRow row = office.ledger().steps().find(key).orElseThrow();
        if (row.state().isFinal() || isWaiting(row, now)) return;
        if (now.isAfter(slot.latest()) && !isMadeGood(slot)) skip(key, now);
        else if (slot.step() == Step.LABELS) runLabels(key, slot.businessDate());
        else {
            if (slot.step() == Step.DAWN_CHECK) dawnAgain.noteIfInDoubt(slot);
            runStep(key, work.get(slot.step()));
        }
    }

    /** What hung with a date in doubt is of the day all the same, however late that was cleared up. */
    private boolean isMadeGood(Timetable.Slot slot) {
        if (slot.step() == Step.SOAK_CALL) return SettleSoak.hangsInDoubt(office, slot.businessDate());
        return List.of(Step.CLOSE, Step.PLAN, Step.SHEETS).contains(slot.step())
                && office.ledger().unconfirmed().isPlanTaken(slot.businessDate());
    }

    /** Something of a day once more, for a reason that came up since. */
    private void runAgain(StepKey key, Work again) {
        Instant now = office.now();
        office.ledger().steps().due(key, now, now);
        StepRow row = office.ledger().steps().find(key).orElseThrow();
        if (!row.state().isFinal() && !isWaiting(row, now)) runStep(key, again);
    }

    /** By a clock that may be wrong nothing is given up: it cannot be taken back. */
    private void skip(StepKey key, Instant now) {
        if (doubt.is()) return;
        office.ledger().steps().skipped(key, now, "it was too late to be of use");
        office.tell(key.step() + " of " + key.businessDate() + " is skipped: too late to be of use");
    }

    /** A failed step is tried again after 1, 2, 4 … minutes, at most half an hour. */
    private static boolean isWaiting(StepRow row, Instant now) {
        if (row.state() != StepRow.State.FAILED) return false;
        return isResting(row.changedAt(), row.attempts(), now);
    }

    /** Whether a thing that failed rests still; what failed in the future, by a clock that was ahead, does not. */
    static boolean isResting(Instant failedAt, int attempts, Instant now) {
        return !failedAt.isAfter(now) && now.isBefore(failedAt.plus(wait(attempts)));
    }

    /** How long a thing that failed so often rests before it is tried again. */
    static Duration wait(int attempts) {
        Duration wait = Duration.ofMinutes(1L << Math.max(0, Math.min(attempts - 1, 5)));
        return wait.compareTo(LONGEST_WAIT) < 0 ? wait : LONGEST_WAIT;
    }

    /** The boundary around each step: what goes wrong in it is written down and stops nothing else. */
    private void runStep(StepKey key, Work step) {
        if (!office.ledger().steps().start(key, office.now())) return;
        if (isDone(key, step)) verified(key.businessDate());
    }

    private boolean isDone(StepKey key, Work step) {
        try {
            String note = step.run(key.businessDate());
            office.ledger().steps().done(key, office.now(), note);
            office.tell(key.step() + ": " + note);
            return true;
        } catch (DiskAway gone) {
            throw gone; // nothing is written any more, not even that this failed
        } catch (Trouble | NoPlan trouble) {
            fail(key, trouble.getMessage());
        } catch (RuntimeException mistake) {
            fail(key, "did not run: " + mistake);
        }
        return false;
    }

    /** Whoever watches hears of a step only where what the ledger holds still adds up; that can't fail the step. */
    private void verified(LocalDate businessDate) {
        Lookout lookout = office.edges().senses().lookout();
        if (lookout == Lookout.NONE) return;
        try {
            List<String> broken = office.ledger().broken(businessDate);
            if (broken.isEmpty()) lookout.stepVerified();
            else office.tell("nobody is told that all is well: " + broken.get(0));
        } catch (DeviceAway | IllegalStateException away) {
            office.tell("nobody is told that all is well: " + away.getMessage());
        }
    }

    private void fail(StepKey key, String why) {
        office.ledger().steps().failed(key, office.now(), why);
        office.tell(key.step() + " of " + key.businessDate() + " failed: " + why);
    }

    /** Labels come lot by lot over the morning; the step is done when none is left to print. */
    private void runLabels(StepKey key, LocalDate productionDate) {
        Optional<DayPlan> plan = office.plan(productionDate);
        if (plan.isEmpty()) return;
        labels.run(plan.get());
        List<PrintLabels.Due> open = labels.open(plan.get());
        if (!open.isEmpty() || !office.ledger().steps().start(key, office.now())) return;
        office.ledger().steps().done(key, office.now(), plan.get().labels().size() + " lots and products are labelled");
        verified(productionDate);
    }
}

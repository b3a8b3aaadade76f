package dawnkettle.night;

import dawnkettle.store.StepKey;
import dawnkettle.store.StepRow;
import dawnkettle.trouble.DiskAway;
import dawnkettle.trouble.Trouble;
import java.time.Duration;
import java.time.Instant;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The night while nobody knows whether the clock is right: no day is closed and nothing is done for good; what people work
 * from comes all the same, on sheets that say that their date is not confirmed.
 */
final class InDoubt {
    /** A machine that has just been started is soon told the time; only then is paper spent (common practice, no source). */
    static final Duration PATIENCE = Duration.ofMinutes(10);

    /** Tells of the clock itself, while somebody is awake. */
    private static final Set<Step> ANY_CLOCK = EnumSet.of(Step.SELF_TEST);

    /** Go by a plan that was made while the clock was right; the date of its labels is asked for by the label. */
    private static final Set<Step> BY_THE_PLAN = EnumSet.of(Step.DAWN_CHECK, Step.LABELS, Step.SUMMARY);

    private final Office office;
    private final Map<Step, Work> works;
    private final Map<StepKey, Tried> tried = new HashMap<>();
    private Optional<String> doubt = Optional.empty();
    private Optional<Instant> since = Optional.empty();

    /** How often something was tried while the clock was in doubt, and when last. */
    private record Tried(boolean isDone, int times, Instant at) {}

    /** @param works what is done of a step while the clock is in doubt; what is not named waits */
    InDoubt(Office office, Map<Step, Work> works) {
        this.office = office;
        this.works = Map.copyOf(works);
    }

    /** Asks once in each look. */
    void look() {
        Optional<String> before = doubt;
        doubt = new ClockGate(office).doubt();
        Instant now = office.now();
        if (doubt.isEmpty()) since = Optional.empty();
        else if (since.isEmpty() || now.isBefore(since.get())) since = Optional.of(now);
        if (doubt.isEmpty()) tried.clear();
        if (doubt.isPresent() && before.isEmpty())
            office.tell("no day is closed and no date is printed: " + doubt.get());
        if (doubt.isEmpty() && before.isPresent()) office.tell("the clock is trusted again");
    }

    boolean is() {
        return doubt.isPresent();
    }

    /** Whether a step that is due is left alone in this look; what stands in for it is done here. */
    boolean keepsBack(Timetable.Slot slot) {
        if (doubt.isEmpty() || ANY_CLOCK.contains(slot.step())) return false;
        boolean isTooLate = office.now().isAfter(slot.latest());
        if (BY_THE_PLAN.contains(slot.step())
                && office.plan(slot.businessDate()).isPresent()) return isTooLate;
        boolean isWanted =
                !isTooLate && !office.now().isBefore(since.orElseThrow().plus(PATIENCE));
        Work work = works.get(slot.step());
        if (isWanted && work != null && !isOver(slot)) run(slot, work);
        return true;
    }

    private boolean isOver(Timetable.Slot slot) {
        return office.ledger()
                .steps()
                .find(key(slot))
                .filter(row -> row.state() == StepRow.State.DONE || row.state() == StepRow.State.SKIPPED)
                .isPresent();
    }

    /** The boundary around what stands in: a failure is told, tried again later, and stops nothing else. */
    private void run(Timetable.Slot slot, Work work) {
        StepKey key = key(slot);
        Instant now = office.now();
        Tried before = tried.getOrDefault(key, new Tried(false, 0, Instant.EPOCH));
        boolean isResting = now.isBefore(before.at().plus(Night.wait(before.times()))) && !now.isBefore(before.at());
        if (before.isDone() || before.times() > 0 && isResting) return;
        tried.put(key, new Tried(true, before.times() + 1, now));
        try {
            office.tell(key.step() + ", date not confirmed: " + work.run(key.businessDate()));
        } catch (DiskAway gone) {
            throw gone;
        } catch (Trouble | NoPlan trouble) {
            failed(key, trouble.getMessage());
        } catch (RuntimeException mistake) {
            failed(key, "did not run: " + mistake);
        }
    }

    private void failed(StepKey key, String why) {
        tried.put(key, new Tried(false, tried.get(key).times(), office.now()));
        office.tell(key.step() + " of " + key.businessDate() + ", date not confirmed, failed: " + why);
    }

    private static StepKey key(Timetable.Slot slot) {
        return StepKey.of(slot.step().word(), slot.businessDate());
    }
}

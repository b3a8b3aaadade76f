package dawnkettle.plan;

import dawnkettle.measure.Celsius;
import dawnkettle.shop.Limits;
import dawnkettle.shop.Recipe;
import dawnkettle.shop.Shop;
import dawnkettle.shop.Step;
import dawnkettle.stock.Fact;
import dawnkettle.stock.LotCode;
import dawnkettle.stock.RecordRules;
import dawnkettle.stock.RecordRules.Wanted;
import dawnkettle.stock.Recorded;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** How the records of a day's batches stand: not yet due, due, overdue, in order, or out of limits. */
public final class RecordStates {
    /** A step that is kept this hot or hotter is the cook. */
    private static final Celsius COOKING = Celsius.degrees(85);

    private final DayPlan plan;
    private final Shop shop;
    private final RecordRules rules;
    private final List<Recorded> records;

    /** @param records those of cooking, cooling and yields that stand, in the order in which they happened */
    public RecordStates(DayPlan plan, Shop shop, RecordRules rules, List<Recorded> records) {
        this.plan = plan;
        this.shop = shop;
        this.rules = rules;
        this.records = List.copyOf(records);
    }

    /** How a record stands. */
    public enum State {
        NOT_YET_DUE,
        DUE,
        OVERDUE,
        IN_ORDER,
        OUT_OF_LIMITS
    }

    /**
     * One record of one lot.
     *
     * @param since when it came into this state
     * @param said what is wrong, in words; empty where nothing is
     */
    public record Standing(LotCode lot, Wanted wanted, State state, Instant since, String said) {
        /** Whether it keeps the lot in the house. */
        public boolean holds() {
            return state == State.OVERDUE || state == State.OUT_OF_LIMITS;
        }
    }

    /** The records that are required or were written, at an instant. */
    public List<Standing> at(Instant now) {
        List<Standing> all = new ArrayList<>();
        for (PlannedBatch batch : plan.batches()) {
            cooked(batch, now).ifPresent(all::add);
            cooled(batch, now).ifPresent(all::add);
            weighed(batch, now).ifPresent(all::add);
        }
        return all;
    }

    private List<Recorded> of(PlannedBatch batch, Fact.Kind kind) {
        return records.stream()
                .filter(one -> one.fact().kind() == kind && lot(one.fact()).equals(batch.lot()))
                .toList();
    }

    private static LotCode lot(Fact fact) {
        if (fact instanceof Fact.Cooked f) return f.lot();
        if (fact instanceof Fact.Cooled f) return f.lot();
        return ((Fact.Yielded) fact).lot();
    }

    private Recipe recipe(PlannedBatch batch) {
        return shop.recipe(batch.recipe());
    }

    /** The last cook counts: a batch may be cooked on. */
    private Optional<Standing> cooked(PlannedBatch batch, Instant now) {
        List<Recorded> cooks = of(batch, Fact.Kind.COOKED);
        Limits limits = recipe(batch).limits();
        if (recipe(batch).soakGroup().isEmpty()) return Optional.empty();
        if (cooks.isEmpty())
            return step(
                            batch,
                            step -> step.target()
                                    .filter(c -> c.compareTo(COOKING) >= 0)
                                    .isPresent())
                    .flatMap(cook ->
                            missing(batch, Wanted.COOKED, cook.end(), cook.end().plus(grace()), now));
        Recorded last = cooks.get(cooks.size() - 1);
        Fact.Cooked fact = (Fact.Cooked) last.fact();
        boolean isDone = fact.reached().compareTo(limits.cook()) >= 0 && fact.minutes() >= limits.cookMinutes();
        return Optional.of(
                isDone
                        ? inOrder(batch, Wanted.COOKED, last)
                        : out(
                                batch,
                                Wanted.COOKED,
                                last,
                                "cooked at " + fact.reached() + " for " + fact.minutes() + " minutes; the limit is "
                                        + limits.cook() + " for " + limits.cookMinutes() + " minutes"));
    }

    private Duration grace() {
        return Duration.ofMinutes(rules.graceMinutes());
    }

    private Standing inOrder(PlannedBatch batch, Wanted wanted, Recorded record) {
        return new Standing(batch.lot(), wanted, State.IN_ORDER, record.happenedAt(), "");
    }

    private Standing out(PlannedBatch batch, Wanted wanted, Recorded record, String said) {
        return new Standing(batch.lot(), wanted, State.OUT_OF_LIMITS, record.recordedAt(), said);
    }

    /** Nothing was written: where it is required, it falls due and then overdue. */
    private Optional<Standing> missing(PlannedBatch batch, Wanted wanted, Instant due, Instant overdue, Instant now) {
        if (!rules.required().contains(wanted)) return Optional.empty();
        State state = now.isBefore(due) ? State.NOT_YET_DUE : now.isBefore(overdue) ? State.DUE : State.OVERDUE;
        Instant since = state == State.OVERDUE ? overdue : due;
        String said = state == State.OVERDUE ? "no record says that it was " + words(wanted) : "";
        return Optional.of(new Standing(batch.lot(), wanted, state, since, said));
    }

    private static String words(Wanted wanted) {
        return switch (wanted) {
            case COOKED -> "cooked";
            case COOLED -> "cooled in time";
            case YIELD -> "weighed";
        };
    }

    private Optional<PlannedOperation> step(PlannedBatch batch, java.util.function.Predicate<Step> wanted) {
        List<Step> steps = recipe(batch).steps();
        List<PlannedOperation> operations = plan.operationsOf(batch.id());
        for (int i = 0; i < Math.min(steps.size(), operations.size()); i++)
            if (wanted.test(steps.get(i))) return Optional.of(operations.get(i));
        return Optional.empty();
    }

    /**
     * Measured above a limit when its time was over: out of limits. Measured below it, but too late to show that it was
     * in time: as if nothing had been written.
     */
    private Optional<Standing> cooled(PlannedBatch batch, Instant now) {
        List<Recorded> readings = of(batch, Fact.Kind.COOLED);
        Optional<Instant> start = coolingStart(batch, readings);
        if (start.isEmpty()) return Optional.empty();
        Limits.Cooling limits = recipe(batch).limits().cooling();
        Limit warm = new Limit(limits.warm(), start.get(), limits.warmMinutes());
        Limit cold = new Limit(limits.cold(), start.get(), limits.coldMinutes());
        Optional<Recorded> over = readings.stream()
                .filter(one -> warm.isOver(one) || cold.isOver(one))
                .findFirst();
        if (over.isPresent()) return over.map(one -> out(batch, Wanted.COOLED, one, tooWarm(one, warm, cold)));
        Optional<Recorded> shown = readings.stream().filter(cold::isShown).findFirst();
        if (shown.isPresent() && readings.stream().anyMatch(warm::isShown))
            return shown.map(one -> inOrder(batch, Wanted.COOLED, one));
        return missing(batch, Wanted.COOLED, warm.at(), cold.at().plus(grace()), now);
    }

    /** A temperature that must be reached so many minutes after the start. */
    private record Limit(Celsius most, Instant start, int minutes) {
        Instant at() {
            return start.plus(Duration.ofMinutes(minutes));
        }

        /** At the very minute the limit itself still passes; a minute later it must be below. */
        boolean isOver(Recorded reading) {
            Celsius reached = ((Fact.Cooled) reading.fact()).reached();
            if (reading.happenedAt().isBefore(at())) return false;
            int above = reached.compareTo(most);
            return reading.happenedAt().isAfter(at()) ? above >= 0 : above > 0;
        }

        boolean isShown(Recorded reading) {
            return ((Fact.Cooled) reading.fact()).reached().compareTo(most) <= 0
                    && !reading.happenedAt().isAfter(at());
        }
    }

    private static String tooWarm(Recorded reading, Limit warm, Limit cold) {
        Limit broken = cold.isOver(reading) ? cold : warm;
        long minutes = Duration.between(broken.start(), reading.happenedAt()).toMinutes();
        return ((Fact.Cooled) reading.fact()).reached() + " after " + minutes + " minutes of cooling; the limit is "
                + broken.most() + " within " + broken.minutes() + " minutes";
    }

    /** The last reading that is still hot, or else when the plan has it go to the bath. */
    private Optional<Instant> coolingStart(PlannedBatch batch, List<Recorded> readings) {
        return readings.stream()
                .filter(one -> ((Fact.Cooled) one.fact()).reached().compareTo(Limits.Cooling.HOT) >= 0)
                .map(Recorded::happenedAt)
                .max(Comparator.naturalOrder())
                .or(() -> step(
                                batch,
                                step -> step.target()
                                        .filter(target -> target.degrees() < Cooling.COLD)
                                        .isPresent())
                        .map(PlannedOperation::start));
    }

    private Optional<Standing> weighed(PlannedBatch batch, Instant now) {
        List<Recorded> yields = of(batch, Fact.Kind.YIELDED);
        if (!yields.isEmpty()) return Optional.of(inOrder(batch, Wanted.YIELD, yields.get(yields.size() - 1)));
        List<PlannedOperation> steps = plan.operationsOf(batch.id());
        Instant end = steps.get(steps.size() - 1).end();
        return missing(batch, Wanted.YIELD, end, end.plus(grace()), now);
    }
}

package dawnkettle.night;

import dawnkettle.plan.DayPlan;
import dawnkettle.plan.PlannedBatch;
import dawnkettle.plan.RecordStates;
import dawnkettle.plan.RecordStates.Standing;
import dawnkettle.plan.RecordStates.State;
import dawnkettle.stock.Fact;
import dawnkettle.stock.Holds;
import dawnkettle.stock.LotCode;
import dawnkettle.stock.Recorded;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/** Lets no held lot out of the house: neither one that somebody holds, nor one whose records are overdue or out of limits. */
public final class Gate {
    private final Office office;

    public Gate(Office office) {
        this.office = office;
    }

    /** How the records of a plan's batches stand now. */
    public List<Standing> standings(DayPlan plan) {
        List<Recorded> records = office.ledger()
                .records()
                .all(plan.heading().productionDate(), Fact.Kind.COOKED, Fact.Kind.COOLED, Fact.Kind.YIELDED);
        return new RecordStates(
                        plan,
                        office.shop(),
                        office.papers().settings().records().rules(),
                        records)
                .at(office.now());
    }

    /** Why each lot of a plan may not leave, and each lot made from one of those. */
    public Map<LotCode, String> held(DayPlan plan) {
        Holds holds = office.ledger().records().holds();
        Map<LotCode, String> why = new TreeMap<>();
        for (PlannedBatch batch : plan.batches())
            holds.why(batch.lot()).ifPresent(reason -> why.put(batch.lot(), reason));
        for (Standing standing : standings(plan))
            if (standing.state() == State.OVERDUE && !holds.wasReleasedSince(standing.lot(), standing.since()))
                why.putIfAbsent(standing.lot(), standing.said());
        return withWhatWasMadeOfThem(plan, why);
    }

    private static Map<LotCode, String> withWhatWasMadeOfThem(DayPlan plan, Map<LotCode, String> why) {
        Map<LotCode, String> all = new LinkedHashMap<>(why);
        boolean more = true;
        while (more) {
            more = false;
            for (PlannedBatch batch : plan.batches())
                if (all.containsKey(batch.lot()))
                    for (PlannedBatch.Feed feed : batch.feeds())
                        more |= all.putIfAbsent(plan.batch(feed.batch()).lot(), "made from held lot " + batch.lot())
                                == null;
        }
        return all;
    }

    /** Held lots of a plan, and those of other days that somebody holds. */
    public Set<LotCode> heldLots(Optional<DayPlan> plan) {
        Set<LotCode> held = new TreeSet<>(office.ledger().records().holds().held());
        plan.ifPresent(one -> held.addAll(held(one).keySet()));
        return held;
    }

    /**
     * Holds a lot at once where a record that was just written shows it out of limits.
     *
     * @return the hold as it was written down; empty where there is none, or the lot was held already
     */
    public Optional<Recorded> holdIfOut(Recorded written) {
        Optional<LotCode> lot = lot(written.fact());
        if (lot.isEmpty() || office.ledger().records().holds().isHeld(lot.get())) return Optional.empty();
        Instant now = written.recordedAt();
        Optional<Recorded> hold = office.plan(lot.get().productionDate()).stream()
                .flatMap(plan -> standings(plan).stream())
                .filter(one -> one.lot().equals(lot.get()) && one.state() == State.OUT_OF_LIMITS)
                .findFirst()
                .map(one -> new Recorded(new Fact.Held(one.lot(), one.said()), now, now, written.origin()));
        hold.ifPresent(office.ledger().records()::add);
        return hold;
    }

    private static Optional<LotCode> lot(Fact fact) {
        if (fact instanceof Fact.Cooked cooked) return Optional.of(cooked.lot());
        return fact instanceof Fact.Cooled cooled ? Optional.of(cooled.lot()) : Optional.empty();
    }

    /** What the owner should know of a plan's lots: what is held with who waits for it, and what is overdue. */
    public List<String> said(DayPlan plan) {
        List<String> said = new ArrayList<>();
        held(plan).forEach((lot, why) -> {
            int packs = plan.allocation().stream()
                    .filter(one -> one.lot().equals(lot))
                    .mapToInt(one -> one.packs())
                    .sum();
            long customers = plan.allocation().stream()
                    .filter(one -> one.lot().equals(lot))
                    .map(one -> one.customer())
                    .distinct()
                    .count();
            said.add("lot " + lot + " is held: " + why + ". " + packs + " packs for " + customers
                    + " customers may not leave; after your decision: record release " + lot + " by NAME WHY");
        });
        return said;
    }
}

package dawnkettle.night;

import dawnkettle.measure.Mass;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.PlannedBatch;
import dawnkettle.plan.PlannedSoak;
import dawnkettle.stock.Fact;
import dawnkettle.stock.KnownLots;
import dawnkettle.stock.KnownLots.Bought;
import dawnkettle.stock.KnownLots.Made;
import dawnkettle.stock.KnownLots.Packs;
import dawnkettle.stock.LotCode;
import dawnkettle.stock.Missing;
import dawnkettle.stock.Quantity;
import dawnkettle.stock.Recorded;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** The lots that a record may name: all that came in, and what the plans in force made on the days its words name. */
public final class FindLots {
    private final Office office;

    public FindLots(Office office) {
        this.office = office;
    }

    public KnownLots of(List<String> words) {
        List<Made> made = words.stream()
                .map(word -> word.toUpperCase(Locale.ROOT))
                .filter(LotCode::isOne)
                .flatMap(word -> day(new LotCode(word)).stream())
                .distinct()
                .flatMap(this::madeOn)
                .toList();
        return new KnownLots(bought(), made, past(words, made));
    }

    private KnownLots.Past past(List<String> words, List<Made> made) {
        Map<LotCode, Long> losses = new HashMap<>();
        for (Made one : made)
            office.ledger().records().lossOf(one.lot()).ifPresent(number -> losses.put(one.lot(), number));
        return new KnownLots.Past(
                tubs(), office.ledger().records().holds(office.shop()), losses, down(), numbered(words));
    }

    /** Stations that are down today or on the next making day. */
    private List<Fact.Down> down() {
        LocalDate today =
                LocalDate.ofInstant(office.now(), office.shop().house().zone());
        return Stream.of(today, office.shop().calendar().next(today))
                .flatMap(day -> Missing.of(office.ledger().records().ofRoom(day)).down().stream())
                .toList();
    }

    /** The record that a cancelling one names. */
    private Optional<KnownLots.Numbered> numbered(List<String> words) {
        if (words.size() < 2
                || !words.get(0).equalsIgnoreCase("cancel")
                || !words.get(1).matches("[0-9]{1,9}")) return Optional.empty();
        long number = Long.parseLong(words.get(1));
        return office.ledger()
                .records()
                .find(number)
                .map(found -> new KnownLots.Numbered(
                        number, found, !office.ledger().records().isCancelled(number)));
    }

    /** Tubs of the days around now, as planned or called for, the last filled first. */
    private List<KnownLots.FilledTub> tubs() {
        LocalDate today =
                LocalDate.ofInstant(office.now(), office.shop().house().zone());
        LocalDate next = office.shop().calendar().next(today);
        List<KnownLots.FilledTub> tubs = new ArrayList<>();
        for (LocalDate day : List.of(
                office.shop().calendar().previous(today),
                today,
                next,
                office.shop().calendar().next(next)))
            soaks(day).forEach(soak -> tubs.add(new KnownLots.FilledTub(soak.tub(), day, soak.fillAt())));
        tubs.sort(java.util.Comparator.comparing(KnownLots.FilledTub::filledAt).reversed());
        return tubs;
    }

    private List<PlannedSoak> soaks(LocalDate day) {
        return office.plan(day)
                .map(DayPlan::soaks)
                .or(() -> office.ledger().soaks().find(day).map(call -> call.tubs()))
                .orElse(List.of());
    }

    /** The day a code names; empty where its digits are none, and then there is no such lot either. */
    private static Optional<LocalDate> day(LotCode lot) {
        try {
            return Optional.of(lot.productionDate());
        } catch (DateTimeException noSuchDay) {
            return Optional.empty();
        }
    }

    private List<Bought> bought() {
        Map<String, Bought> lots = new LinkedHashMap<>();
        for (Recorded recorded : office.ledger().records().all(Fact.Kind.RECEIVED))
            if (recorded.fact() instanceof Fact.Received came)
                lots.merge(came.lot(), new Bought(came.lot(), came.material(), came.quantity()), FindLots::together);
        return List.copyOf(lots.values());
    }

    private static Bought together(Bought before, Bought more) {
        long all = Math.addExact(before.received().smallest(), more.received().smallest());
        return new Bought(
                before.lot(),
                before.material(),
                new Quantity(all, before.received().unit()));
    }

    private Stream<Made> madeOn(LocalDate day) {
        return office.plan(day).stream().flatMap(plan -> plan.batches().stream().map(batch -> made(plan, batch)));
    }

    private Made made(DayPlan plan, PlannedBatch batch) {
        KnownLots.Making making = new KnownLots.Making(
                batch.recipe(), plan.operationsOf(batch.id()).get(0).start(), input(plan, batch), batch.expected());
        Map<String, Packs> packs = new HashMap<>();
        for (PlannedBatch.Filled filled : batch.packs())
            packs.put(filled.product(), packs(batch.lot(), filled.product(), filled.packs()));
        return new Made(batch.lot(), making, packs, isLost(batch.lot()));
    }

    /** Dry beans, or what other batches give for it. */
    private static Mass input(DayPlan plan, PlannedBatch batch) {
        return batch.beans()
                .plus(Mass.sum(plan.batches().stream()
                        .flatMap(other -> other.feeds().stream())
                        .filter(feed -> feed.batch().equals(batch.id()))
                        .map(PlannedBatch.Feed::mass)
                        .toList()));
    }

    private Packs packs(LotCode lot, String product, int planned) {
        int filled = planned;
        int gone = 0;
        for (Fact fact : facts(Fact.Kind.COUNTED, Fact.Kind.PACKED, Fact.Kind.SOLD, Fact.Kind.LOST)) {
            if (fact instanceof Fact.Sold sold
                    && sold.lot().equals(lot)
                    && sold.product().equals(product)) gone += sold.packs();
            if (fact instanceof Fact.LostPacks lost
                    && lost.lot().equals(lot)
                    && lost.product().equals(product)) gone += lost.packs();
            if (fact instanceof Fact.Packed packed
                    && packed.lot().equals(lot)
                    && packed.product().equals(product)) filled = packed.packs();
            if (fact instanceof Fact.CountedPacks count
                    && count.lot().equals(lot)
                    && count.product().equals(product)) filled = Math.max(filled, count.packs() + gone);
        }
        return new Packs(filled, gone);
    }

    private boolean isLost(LotCode lot) {
        return facts(Fact.Kind.LOST).stream()
                .anyMatch(fact ->
                        fact instanceof Fact.LostBatch lost && lost.lot().equals(lot));
    }

    private List<Fact> facts(Fact.Kind... kinds) {
        List<Fact> facts = new ArrayList<>();
        office.ledger().records().all(kinds).forEach(recorded -> facts.add(recorded.fact()));
        return facts;
    }
}

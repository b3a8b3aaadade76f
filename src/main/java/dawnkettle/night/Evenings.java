package dawnkettle.night;

import dawnkettle.book.BookLine;
import dawnkettle.book.ClosedBook;
import dawnkettle.floor.Budget;
import dawnkettle.plan.Allowances;
import dawnkettle.plan.DayFloor;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.Disruption;
import dawnkettle.plan.Evening;
import dawnkettle.plan.Heading.Frozen;
import dawnkettle.plan.IfCard;
import dawnkettle.plan.PlannedOrder;
import dawnkettle.plan.PlannedSoak;
import dawnkettle.plan.SoakCall;
import dawnkettle.plan.WhatHappened;
import dawnkettle.stock.Fact;
import dawnkettle.stock.LotCode;
import dawnkettle.stock.Missing;
import dawnkettle.stock.Recorded;
import dawnkettle.store.LabelRows;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Gathers what a plan is computed from: the book, the cold room, the tubs, what has happened. */
final class Evenings {
    private final Office office;

    Evenings(Office office) {
        this.office = office;
    }

    /** What is known of a production day now; for a revision, with the plan in force and what has happened since. */
    Evening of(LocalDate productionDate, ClosedBook book, long decodes) {
        Instant now = office.now().truncatedTo(ChronoUnit.SECONDS);
        return new Evening(
                book,
                outlook(productionDate),
                larder(productionDate),
                soakRoom(productionDate),
                committed(productionDate),
                now,
                new Budget(
                        decodes,
                        search().seed(),
                        search().guardMillis(),
                        office.edges().moving()));
    }

    /** What then, if something of a plan is lost; a card that does not come out is told of and holds nothing up. */
    Optional<IfCard> ifCard(DayPlan plan) {
        return ifCard(plan, IfCard::of);
    }

    /** @param how the card is worked out */
    Optional<IfCard> ifCard(DayPlan plan, BoxedPlanner.Cards how) {
        LocalDate day = plan.heading().productionDate();
        try {
            List<BookLine> lines =
                    plan.orders().stream().map(PlannedOrder::line).toList();
            Evening evening = of(day, new ClosedBook(day, plan.heading().computedAt(), lines), 0);
            return Optional.of(how.card(new CountedYields(office).shop(day), evening, plan));
        } catch (RuntimeException mistake) {
            office.tell("no if... card of " + day + ": " + mistake.getMessage());
            return Optional.empty();
        }
    }

    private NightSettings.Search search() {
        return office.papers().settings().search();
    }

    private Evening.Outlook outlook(LocalDate productionDate) {
        LocalDate next = office.shop().calendar().next(productionDate);
        List<Allowances.LateDay> late = new PastWeeks(office.ledger(), office.shop()).lateDays();
        List<BookLine> ahead = office.book().bookFor(next).stream()
                .filter(line -> line.packs() > 0)
                .toList();
        return new Evening.Outlook(ahead, Allowances.of(office.shop(), productionDate, late, ahead));
    }

    private Evening.Larder larder(LocalDate productionDate) {
        return new Evening.Larder(
                office.ledger().stock().finished(office.shop(), productionDate),
                office.ledger().stock().beans(office.shop(), productionDate, office.now()),
                notToBeGiven(productionDate));
    }

    /** Lots that are held, and those of the day that were lost as a whole: nothing of them leaves. */
    private Set<LotCode> notToBeGiven(LocalDate productionDate) {
        Set<LotCode> lots = new HashSet<>(new Gate(office).heldLots(office.plan(productionDate)));
        for (Recorded recorded : office.ledger().records().all(productionDate, Fact.Kind.LOST))
            if (recorded.fact() instanceof Fact.LostBatch lost) lots.add(lost.lot());
        return lots;
    }

    private Evening.SoakRoom soakRoom(LocalDate productionDate) {
        Optional<SoakCall> call = office.ledger()
                .soaks()
                .find(productionDate)
                .or(() -> office.ledger().unconfirmed().calls().find(productionDate))
                .filter(found -> !found.isEmpty());
        return new Evening.SoakRoom(
                office.edges().senses().thermometer().read(office.now()),
                call,
                occupied(productionDate),
                new CountedSoaks(office).of(productionDate).beliefs());
    }

    /** Tubs of the day before, until their last batch is ground. */
    private List<Evening.Occupied> occupied(LocalDate productionDate) {
        Optional<DayPlan> before = office.planOnTheWall(office.shop().calendar().previous(productionDate));
        List<Evening.Occupied> occupied = new ArrayList<>();
        before.ifPresent(plan -> plan.soaks().forEach(soak -> occupied.add(occupied(plan, soak))));
        return occupied;
    }

    private static Evening.Occupied occupied(DayPlan plan, PlannedSoak soak) {
        Instant until = soak.batches().stream()
                .map(batch -> plan.operationsOf(batch).get(0).end())
                .max(Comparator.naturalOrder())
                .orElse(soak.latestGrindAt());
        return new Evening.Occupied(soak.tub(), until);
    }

    private Evening.Committed committed(LocalDate productionDate) {
        Optional<DayPlan> before = office.planOnTheWall(productionDate);
        Disruption missing = missing(productionDate);
        return before.map(plan -> new Evening.Committed(
                        before, facts(plan), new Disruption(lost(plan), List.of(), List.of()).and(missing)))
                .orElse(new Evening.Committed(Optional.empty(), List.of(), missing));
    }

    /** Who is away and what is down, as it was written down. */
    private Disruption missing(LocalDate productionDate) {
        Missing missing = Missing.of(office.ledger().records().ofRoom(productionDate));
        return new Disruption(
                List.of(),
                missing.away().stream()
                        .map(one ->
                                new Disruption.FewerHands(new DayFloor.Span(one.from(), one.until()), one.halfHands()))
                        .toList(),
                missing.down().stream()
                        .map(one ->
                                new Disruption.StationDown(one.station(), new DayFloor.Span(one.from(), one.until())))
                        .toList());
    }

    /** Batches of a plan that were written down as lost. */
    private List<Disruption.LostBatch> lost(DayPlan plan) {
        List<Disruption.LostBatch> lost = new ArrayList<>();
        for (Recorded one : office.ledger().records().all(Fact.Kind.LOST))
            if (one.fact() instanceof Fact.LostBatch fact)
                plan.findBatch(fact.lot())
                        .ifPresent(batch -> lost.add(new Disruption.LostBatch(batch.id(), one.happenedAt())));
        return lost;
    }

    /** What of a plan has happened by now; a tub or a batch without a record is taken to be as planned. */
    List<Frozen> facts(DayPlan plan) {
        List<Frozen> facts = new ArrayList<>(WhatHappened.by(plan, office.now()));
        for (LabelRows.LabelledLot labelled :
                office.ledger().labels().labelledFrom(plan.heading().computedAt()))
            if (plan.findBatch(labelled.lot()).isPresent())
                facts.add(new Frozen(Frozen.Kind.LOT_LABELLED, labelled.lot().text(), labelled.at()));
        return facts;
    }
}

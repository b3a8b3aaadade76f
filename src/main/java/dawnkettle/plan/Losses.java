package dawnkettle.plan;

import dawnkettle.plan.DayFloor.DayHands;
import dawnkettle.plan.DayFloor.DayStation;
import dawnkettle.plan.DayFloor.Span;
import dawnkettle.plan.IfCard.Loss;
import dawnkettle.shop.Shop;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What a day can lose from an instant on: each batch that is not packed, a hand of each stretch, each station. */
final class Losses {
    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
    /** One person. */
    static final int HAND = 2;

    private final Shop shop;
    private final DayPlan plan;
    private final Instant now;

    Losses(Shop shop, DayPlan plan, Instant now) {
        this.shop = shop;
        this.plan = plan;
        this.now = now;
    }

    /** A loss, and what it does to the day where the day would feel it at all. */
    record Possible(Loss loss, Optional<Disruption> disruption) {}

    List<Possible> all() {
        List<Possible> all = new ArrayList<>();
        plan.batches().stream().filter(this::isAhead).forEach(batch -> all.add(batch(batch)));
        hands(all);
        for (DayStation station : plan.floor().stations()) station(station).ifPresent(all::add);
        return all;
    }

    private boolean isAhead(PlannedBatch batch) {
        boolean isLost = plan.heading().frozen().stream()
                .anyMatch(fact -> fact.kind() == Heading.Frozen.Kind.BATCH_LOST
                        && fact.id().equals(batch.id()));
        return !isLost && last(plan.operationsOf(batch.id())).end().isAfter(now);
    }

    private static PlannedOperation last(List<PlannedOperation> steps) {
        return steps.get(steps.size() - 1);
    }

    private Possible batch(PlannedBatch batch) {
        List<PlannedOperation> steps = plan.operationsOf(batch.id());
        Instant known = later(now, seen(batch, steps));
        Loss loss = new Loss(
                Loss.Kind.BATCH,
                batch.id(),
                shop.recipe(batch.recipe()).name() + " " + batch.lot(),
                new Span(steps.get(0).start(), last(steps).end()),
                known);
        return new Possible(loss, Optional.of(Disruption.lost(batch.id(), known)));
    }

    /** A batch that went wrong is seen before it is cooled; where nothing cools it, when packing would begin. */
    private Instant seen(PlannedBatch batch, List<PlannedOperation> steps) {
        int cooling = Wants.bath(shop.recipe(batch.recipe()))
                .map(bath -> shop.recipe(batch.recipe()).steps().indexOf(bath))
                .orElse(0);
        if (cooling > 0) return steps.get(cooling - 1).end();
        return steps.stream()
                .skip(1)
                .filter(step -> step.halfHands() > 0)
                .map(PlannedOperation::start)
                .max(Comparator.naturalOrder())
                .orElse(steps.get(0).end());
    }

    /** One fewer from each time at which more people come, until the last go. */
    private void hands(List<Possible> all) {
        List<DayHands> stretches = plan.floor().hands().stream()
                .sorted(Comparator.comparing(hands -> hands.span().from()))
                .toList();
        int before = 0;
        Instant ended = Instant.MIN;
        for (DayHands stretch : stretches) {
            boolean more = stretch.halfHands() > before || stretch.span().from().isAfter(ended);
            if (more && stretch.span().until().isAfter(now)) all.add(hand(stretch, stretches));
            before = stretch.halfHands();
            ended = stretch.span().until();
        }
    }

    private Possible hand(DayHands from, List<DayHands> stretches) {
        Instant known = later(now, from.span().from());
        Instant until = stretches.get(stretches.size() - 1).span().until();
        Optional<Span> needed = new HandsBound(plan).beyond(HAND, new Span(known, until));
        String clock = CLOCK.format(from.span().from().atZone(plan.heading().zone()));
        Loss loss = new Loss(
                Loss.Kind.HAND, clock, "one hand fewer from " + clock, needed.orElse(new Span(known, until)), known);
        return new Possible(loss, needed.map(span -> Disruption.fewer(HAND, new Span(known, until))));
    }

    /** From its first step ahead until the end of the day. */
    private Optional<Possible> station(DayStation station) {
        if (station.windows().isEmpty()) return Optional.empty();
        Instant until = station.windows().get(station.windows().size() - 1).until();
        if (!until.isAfter(now)) return Optional.empty();
        List<PlannedOperation> here = plan.operations().stream()
                .filter(step -> step.station().equals(station.station())
                        && !step.start().isBefore(now))
                .toList();
        Optional<Instant> first = here.stream().map(PlannedOperation::start).min(Comparator.naturalOrder());
        Instant known = later(now, first.orElse(station.windows().get(0).from()));
        Span span = new Span(known, until);
        Loss loss = new Loss(Loss.Kind.STATION, station.station(), name(station), span, known);
        return Optional.of(new Possible(loss, first.map(any -> Disruption.down(station.station(), span))));
    }

    private String name(DayStation station) {
        return shop.floor().stations().stream()
                .filter(own -> own.code().equals(station.station()))
                .map(dawnkettle.shop.WorkStation::name)
                .findFirst()
                .orElse(station.station());
    }

    private static Instant later(Instant one, Instant other) {
        return one.isAfter(other) ? one : other;
    }
}

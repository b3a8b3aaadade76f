package dawnkettle.plan;

import dawnkettle.book.BookLine;
import dawnkettle.plan.IfCard.Extra;
import dawnkettle.plan.IfCard.Late;
import dawnkettle.plan.IfCard.Short;
import dawnkettle.plan.IfCard.StandIn;
import dawnkettle.stock.LotCode;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** What a replan gives otherwise than the plan on the wall: to customers, to vans, and to do. */
final class Differences {
    private final DayPlan before;
    private final DayPlan after;
    private final Instant from;

    /** @param from nothing before it can differ */
    Differences(DayPlan before, DayPlan after, Instant from) {
        this.before = before;
        this.after = after;
        this.from = from;
    }

    /** A line that gets fewer packs than it would have. */
    record ShortLine(BookLine line, int packs, String reason) {}

    List<ShortLine> shortLines() {
        List<ShortLine> lines = new ArrayList<>();
        Map<String, Integer> planned = new HashMap<>();
        for (PlannedOrder was : before.orders()) planned.merge(key(was.line()), was.plannedPacks(), Integer::sum);
        for (PlannedOrder order : after.orders()) {
            int had = planned.getOrDefault(key(order.line()), 0);
            if (order.plannedPacks() < had)
                lines.add(new ShortLine(order.line(), had - order.plannedPacks(), order.reason()));
        }
        return lines;
    }

    private static String key(BookLine line) {
        return line.order() + " " + line.line();
    }

    /** By product, route and customer. */
    List<Short> shorts() {
        Map<List<String>, Short> shorts = new LinkedHashMap<>();
        for (ShortLine one : shortLines()) {
            BookLine line = one.line();
            shorts.merge(
                    List.of(line.product(), line.route(), line.customer()),
                    new Short(line.product(), line.route(), line.customer(), one.packs(), one.reason()),
                    (a, b) -> new Short(a.product(), a.route(), a.customer(), a.packs() + b.packs(), a.reason()));
        }
        return shorts.values().stream()
                .sorted(Comparator.comparing(Short::product)
                        .thenComparing(Short::route)
                        .thenComparing(Short::customer))
                .toList();
    }

    List<Late> late() {
        List<Late> late = new ArrayList<>();
        for (PlannedRoute van : after.routes()) {
            int was = before.routes().stream()
                    .filter(own ->
                            own.route().equals(van.route()) && own.departs().equals(van.departs()))
                    .mapToInt(PlannedRoute::lateMinutes)
                    .findFirst()
                    .orElse(0);
            if (van.lateMinutes() > was)
                late.add(new Late(van.route(), van.departs(), van.lateMinutes(), van.lateMinutes() - was));
        }
        return late;
    }

    /** Lots that lines get more of than they would have. */
    List<StandIn> standIns() {
        Map<List<String>, StandIn> standIns = new LinkedHashMap<>();
        Map<String, Integer> given = new HashMap<>();
        for (Allocation was : before.allocation()) given.merge(key(was), was.packs(), Integer::sum);
        for (Allocation one : after.allocation()) {
            int more = one.packs() - given.getOrDefault(key(one), 0);
            if (more <= 0) continue;
            String batch = after.findBatch(one.lot()).map(PlannedBatch::id).orElse("");
            LotCode lot = one.lot();
            standIns.merge(
                    List.of(one.product(), lot.text()),
                    new StandIn(one.product(), one.product(), more, lot, one.fromStock() ? "" : batch),
                    (a, b) -> new StandIn(a.instead(), a.product(), a.packs() + b.packs(), a.lot(), a.batch()));
        }
        return List.copyOf(standIns.values());
    }

    private static String key(Allocation one) {
        return one.order() + " " + one.line() + " " + one.lot();
    }

    /** Batches other than {@code lost} that end before the last of their steps, or never begin; by the clock. */
    List<String> leftOut(String lost) {
        return before.batches().stream()
                .map(PlannedBatch::id)
                .filter(batch -> !batch.equals(lost) && missing(batch).isPresent())
                .sorted(Comparator.comparing((String batch) -> missing(batch).orElseThrow())
                        .thenComparing(Comparator.naturalOrder()))
                .toList();
    }

    /** When the first of a batch's steps would have been that is not made any more. */
    private Optional<Instant> missing(String batch) {
        Set<Integer> made =
                after.operationsOf(batch).stream().map(PlannedOperation::seq).collect(Collectors.toSet());
        return before.operationsOf(batch).stream()
                .filter(step -> !made.contains(step.seq()))
                .map(PlannedOperation::start)
                .filter(start -> !start.isBefore(from))
                .findFirst();
    }

    List<Extra> extra() {
        return after.batches().stream()
                .filter(batch ->
                        before.batches().stream().noneMatch(own -> own.id().equals(batch.id())))
                .map(batch -> {
                    PlannedOperation first = after.operationsOf(batch.id()).get(0);
                    return new Extra(batch.id(), batch.recipe(), first.station(), first.start());
                })
                .toList();
    }
}

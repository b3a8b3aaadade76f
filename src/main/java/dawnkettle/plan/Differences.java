package dawnkettle.plan;

import dawnkettle.book.BookLine;
import dawnkettle.plan.IfCard.Late;
import dawnkettle.plan.IfCard.Short;
import dawnkettle.plan.IfCard.StandIn;
import dawnkettle.stock.LotCode;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** What a replan gives otherwise than the plan on the wall: to customers, to vans, and to do. */
final class Differences {
    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
    private static final int FIRST = 4;

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
        for (PlannedOrder order : after.orders()) {
            int had = before.orders().stream()
                    .filter(was -> isSame(was.line(), order.line()))
                    .mapToInt(PlannedOrder::plannedPacks)
                    .sum();
            if (order.plannedPacks() < had)
                lines.add(new ShortLine(order.line(), had - order.plannedPacks(), order.reason()));
        }
        return lines;
    }

    private static boolean isSame(BookLine one, BookLine other) {
        return one.order().equals(other.order()) && one.line() == other.line();
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
        for (Allocation one : after.allocation()) {
            int more = one.packs() - packs(before, one);
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

    private static int packs(DayPlan plan, Allocation like) {
        return plan.allocation().stream()
                .filter(one -> one.order().equals(like.order())
                        && one.line() == like.line()
                        && one.lot().equals(like.lot()))
                .mapToInt(Allocation::packs)
                .sum();
    }

    /** The first steps that go elsewhere, at another time or not at all. */
    List<String> first() {
        List<Change> changes = new ArrayList<>();
        for (PlannedBatch batch : before.batches())
            changed(batch.id()).filter(change -> !change.at().isBefore(from)).ifPresent(changes::add);
        for (PlannedBatch batch : after.batches())
            if (before.batches().stream().noneMatch(own -> own.id().equals(batch.id()))) {
                PlannedOperation start = after.operationsOf(batch.id()).get(0);
                changes.add(new Change(
                        start.start(),
                        "start another batch, " + batch.id() + ", at " + start.station() + " at "
                                + clock(start.start())));
            }
        return changes.stream()
                .sorted(Comparator.comparing(Change::at).thenComparing(Change::what))
                .limit(FIRST)
                .map(Change::what)
                .toList();
    }

    private record Change(Instant at, String what) {}

    private Optional<Change> changed(String batch) {
        List<PlannedOperation> now = after.operationsOf(batch);
        for (PlannedOperation was : before.operationsOf(batch)) {
            Optional<PlannedOperation> is =
                    now.stream().filter(step -> step.seq() == was.seq()).findFirst();
            if (is.isEmpty())
                return Optional.of(new Change(
                        was.start(),
                        now.isEmpty()
                                ? "leave out " + batch + " (" + was.station() + " " + clock(was.start()) + ")"
                                : batch + " ends before " + was.stage() + " at " + clock(was.start())));
            if (!is.get().start().equals(was.start()) || !is.get().station().equals(was.station()))
                return Optional.of(moved(was, is.get()));
        }
        return Optional.empty();
    }

    private Change moved(PlannedOperation was, PlannedOperation is) {
        String where = is.station().equals(was.station()) ? "" : " at " + is.station();
        String when = is.start().equals(was.start()) ? "" : " at " + clock(is.start());
        Instant at = is.start().isBefore(was.start()) ? is.start() : was.start();
        return new Change(
                at,
                was.batch() + " " + was.stage() + where + when + ", not " + was.station() + " " + clock(was.start()));
    }

    private String clock(Instant at) {
        return CLOCK.format(at.atZone(before.heading().zone()));
    }
}

package dawnkettle.plan;

import dawnkettle.measure.Mass;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * A past day with so many percent of its orders, planned.
 *
 * @param late minutes by van that is late
 * @param finish when the last step ends
 * @param loads how far stations and hands are used until the first late van leaves (where none is late,
 *     the day's last one), and the tubs; the most used first
 */
public record GrowthPoint(
        int percent,
        int batches,
        Mass beans,
        Packs packs,
        Map<String, Integer> late,
        Instant finish,
        List<Load> loads,
        List<String> reasons) {
    public GrowthPoint {
        late = Map.copyOf(late);
        loads = List.copyOf(loads);
        reasons = List.copyOf(reasons);
    }

    /** Packs ordered, and how many of them can't be had. */
    public record Packs(long ordered, long missing) {}

    /** How much of what a stage, the tubs or the hands can do is used, in percent. */
    public record Load(String what, int percent) {}

    /** Whether all is made and every van in time. */
    public boolean holds() {
        return packs.missing() == 0 && late.isEmpty();
    }

    public int lateMinutes() {
        return late.values().stream().mapToInt(Integer::intValue).sum();
    }

    static GrowthPoint of(int percent, DayPlan plan) {
        long ordered =
                plan.orders().stream().mapToLong(order -> order.line().packs()).sum();
        long missing =
                plan.orders().stream().mapToLong(PlannedOrder::declinedPacks).sum();
        Map<String, Integer> late = new TreeMap<>();
        for (PlannedRoute route : plan.routes())
            if (route.lateMinutes() > 0) late.merge(route.route(), route.lateMinutes(), Math::max);
        return new GrowthPoint(
                percent,
                plan.batches().size(),
                Mass.sum(plan.batches().stream().map(PlannedBatch::beans).toList()),
                new Packs(ordered, missing),
                late,
                plan.operations().stream()
                        .map(PlannedOperation::end)
                        .max(Comparator.naturalOrder())
                        .orElse(plan.heading().computedAt()),
                loads(plan),
                plan.shortages().stream().map(Shortage::reason).distinct().toList());
    }

    private static List<Load> loads(DayPlan plan) {
        Instant end = tightUntil(plan);
        List<Load> loads = new ArrayList<>();
        Map<String, Double> used = new HashMap<>();
        Map<String, Double> can = new TreeMap<>();
        Map<String, DayFloor.DayStation> stations = new HashMap<>();
        for (DayFloor.DayStation station : plan.floor().stations()) {
            stations.put(station.station(), station);
            double minutes = station.windows().stream()
                    .mapToDouble(window -> minutes(window, end))
                    .sum();
            can.merge(station.stage(), minutes * room(station), Double::sum);
        }
        for (PlannedOperation step : plan.operations()) {
            if (!stations.containsKey(step.station())) continue;
            boolean shared = stations.get(step.station()).places() == 0;
            double took = minutes(new DayFloor.Span(step.start(), step.end()), end);
            used.merge(step.stage(), took * (shared ? step.occupies().milligrams() / 1000.0 : 1), Double::sum);
        }
        can.forEach((stage, most) -> loads.add(load(stage, used.getOrDefault(stage, 0.0), most)));
        loads.add(hands(plan, end));
        loads.add(tubs(plan));
        loads.sort(Comparator.comparingInt(Load::percent).reversed().thenComparing(Load::what));
        return loads;
    }

    /** When the first late van leaves, else the last of the making day, else when the last step ends. */
    private static Instant tightUntil(DayPlan plan) {
        Optional<Instant> late = plan.routes().stream()
                .filter(route -> route.lateMinutes() > 0)
                .map(PlannedRoute::departs)
                .min(Comparator.naturalOrder());
        Optional<Instant> last = plan.routes().stream()
                .map(PlannedRoute::departs)
                .filter(departs -> departs.atZone(plan.heading().zone())
                        .toLocalDate()
                        .equals(plan.heading().productionDate()))
                .max(Comparator.naturalOrder());
        return late.or(() -> last)
                .orElseGet(() -> plan.operations().stream()
                        .map(PlannedOperation::end)
                        .max(Comparator.naturalOrder())
                        .orElse(plan.heading().computedAt()));
    }

    private static double room(DayFloor.DayStation station) {
        return station.places() > 0 ? station.places() : station.capacityGrams();
    }

    /** Minutes of a stretch that lie before {@code end}. */
    private static double minutes(DayFloor.Span span, Instant end) {
        Instant until = span.until().isBefore(end) ? span.until() : end;
        return Math.max(0, Duration.between(span.from(), until).toMinutes());
    }

    private static Load load(String what, double used, double can) {
        return new Load(what, can == 0 ? 0 : (int) Math.round(100 * used / can));
    }

    private static Load hands(DayPlan plan, Instant end) {
        double can = plan.floor().hands().stream()
                .mapToDouble(hands -> minutes(hands.span(), end) * hands.halfHands())
                .sum();
        double used = plan.operations().stream()
                .mapToDouble(step -> minutes(new DayFloor.Span(step.start(), step.end()), end) * step.halfHands())
                .sum();
        return load("hands", used, can);
    }

    private static Load tubs(DayPlan plan) {
        double can = plan.floor().tubs().stream()
                .mapToDouble(tub -> tub.mostBeans().milligrams())
                .sum();
        double used = plan.soaks().stream()
                .mapToDouble(soak -> soak.beans().milligrams())
                .sum();
        return load("tubs", used, can);
    }
}

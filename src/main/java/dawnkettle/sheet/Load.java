package dawnkettle.sheet;

import dawnkettle.plan.Allocation;
import dawnkettle.plan.PlannedOrder;
import dawnkettle.plan.PlannedRoute;
import dawnkettle.shop.Customer;
import dawnkettle.shop.Route;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** What one van takes on one day, stop by stop. */
record Load(String route, LocalDate day, Optional<PlannedRoute> planned, List<Stop> stops) {
    Load {
        stops = List.copyOf(stops);
    }

    /**
     * One customer on the round.
     *
     * @param lines packs by product and lot
     * @param orders lines of the book that get less than was asked for
     */
    record Stop(String customer, int number, List<Allocation> lines, List<PlannedOrder> orders) {
        Stop {
            lines = List.copyOf(lines);
            orders = List.copyOf(orders);
        }

        List<PlannedOrder> shortOrders() {
            return orders.stream().filter(order -> order.declinedPacks() > 0).toList();
        }

        int packs() {
            return lines.stream().mapToInt(Allocation::packs).sum();
        }

        int boxes(Desk desk) {
            return lines.stream()
                    .mapToInt(line -> desk.cases(line.product(), line.packs()).boxes())
                    .sum();
        }
    }

    /** Every van of the plan, in the order in which they leave; a line without a van comes last, it is not lost. */
    static List<Load> of(Day day) {
        record Key(String route, LocalDate day) {}
        Comparator<Key> order = Comparator.comparing(Key::day).thenComparing(Key::route);
        TreeMap<Key, List<Allocation>> lines = new TreeMap<>(order);
        TreeMap<Key, List<PlannedOrder>> orders = new TreeMap<>(order);
        for (Allocation line : day.plan().allocation())
            lines.computeIfAbsent(new Key(line.route(), line.deliveryDate()), key -> new ArrayList<>())
                    .add(line);
        for (PlannedOrder one : day.plan().orders())
            orders.computeIfAbsent(new Key(one.line().route(), one.line().deliveryDate()), key -> new ArrayList<>())
                    .add(one);
        orders.keySet().forEach(key -> lines.computeIfAbsent(key, absent -> new ArrayList<>()));
        return lines.entrySet().stream()
                .map(entry -> new Load(
                        entry.getKey().route(),
                        entry.getKey().day(),
                        planned(day, entry.getKey().route(), entry.getKey().day()),
                        stops(day.desk(), entry.getValue(), orders.getOrDefault(entry.getKey(), List.of()))))
                .sorted(Comparator.comparing(Load::leaves)
                        .thenComparing(Load::day)
                        .thenComparing(Load::route))
                .toList();
    }

    private static Optional<PlannedRoute> planned(Day day, String route, LocalDate on) {
        return day.plan().routes().stream()
                .filter(one -> one.route().equals(route))
                .filter(one -> day.desk().dates().day(one.departs()).equals(on))
                .findFirst();
    }

    private static List<Stop> stops(Desk desk, List<Allocation> lines, List<PlannedOrder> orders) {
        TreeMap<String, List<Allocation>> byCustomer =
                lines.stream().collect(Collectors.groupingBy(Allocation::customer, TreeMap::new, Collectors.toList()));
        orders.forEach(one -> byCustomer.computeIfAbsent(one.line().customer(), absent -> new ArrayList<>()));
        return byCustomer.entrySet().stream()
                .map(entry -> new Stop(
                        entry.getKey(),
                        desk.shop()
                                .findCustomer(entry.getKey())
                                .map(Customer::stop)
                                .orElse(Integer.MAX_VALUE),
                        entry.getValue().stream()
                                .sorted(Comparator.comparing(Allocation::product)
                                        .thenComparing(Allocation::lot))
                                .toList(),
                        orders.stream()
                                .filter(one -> one.line().customer().equals(entry.getKey()))
                                .toList()))
                .sorted(Comparator.comparingInt(Stop::number).thenComparing(Stop::customer))
                .toList();
    }

    private Instant leaves() {
        return planned.map(PlannedRoute::departs).orElse(Instant.MAX);
    }

    String name(Desk desk) {
        return desk.shop().routes().stream()
                .filter(one -> one.code().equals(route))
                .map(Route::name)
                .findFirst()
                .orElse("");
    }

    /** Boxes that the van holds; empty where the shop no longer knows the route. */
    Optional<Integer> holds(Desk desk) {
        return desk.shop().routes().stream()
                .filter(one -> one.code().equals(route))
                .map(Route::cases)
                .findFirst();
    }

    int lateMinutes() {
        return planned.map(PlannedRoute::lateMinutes).orElse(0);
    }

    int packs() {
        return stops.stream().mapToInt(Stop::packs).sum();
    }

    int boxes(Desk desk) {
        return stops.stream().mapToInt(stop -> stop.boxes(desk)).sum();
    }

    /** Stops that get something. */
    List<Stop> served() {
        return stops.stream().filter(stop -> !stop.lines().isEmpty()).toList();
    }
}

package dawnkettle.conf;

import dawnkettle.book.StandingOrder;
import dawnkettle.shop.Customer;
import dawnkettle.shop.Route;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** Reads {@code standing.csv}: what customers take every week unless told otherwise. */
final class ReadStanding {
    static final String FILE = "standing.csv";
    static final List<String> COLUMNS = Stream.of(
                    Stream.of("customer", "product"),
                    Stream.of(DayOfWeek.values()).map(Written::shortName),
                    Stream.of("from", "until"))
            .flatMap(names -> names)
            .toList();

    private final Known known;
    private final Map<String, Route> routeOf = new HashMap<>();
    private final List<Placed<StandingOrder>> read = new ArrayList<>();

    ReadStanding(Known known, List<Placed<Customer>> customers, List<Route> routes) {
        this.known = known;
        for (Placed<Customer> customer : customers)
            for (Route route : routes)
                if (route.code().equals(customer.value().route()))
                    routeOf.put(customer.value().code(), route);
    }

    List<StandingOrder> read(Rows rows) {
        for (Cells row : rows.cells()) one(row);
        return read.stream().map(Placed::value).toList();
    }

    private void one(Cells row) {
        int before = row.problems().count();
        String customer = known.customers.refer(row.in("customer"));
        String product = known.products.refer(row.in("product"));
        LocalDate from = row.in("from").date();
        Optional<LocalDate> until = row.find("until").map(Written::date);
        if (until.isPresent() && until.get().isBefore(from))
            row.in("until").bad(0, "lies before from", "write a later day, or nothing where it has no end");
        List<Placed<StandingOrder>> orders = new ArrayList<>();
        for (DayOfWeek day : DayOfWeek.values())
            row.find(Written.shortName(day)).ifPresent(packs -> {
                StandingOrder order = new StandingOrder(customer, product, day, packs.whole(1, 100_000), from, until);
                runs(order, packs);
                orders.add(new Placed<>(order, packs.place()));
            });
        if (orders.isEmpty() && row.problems().count() == before)
            row.problems()
                    .add(
                            row.place(),
                            "customer \"" + customer + "\" takes nothing of \"" + product + "\" on any weekday",
                            "write packs below a weekday, or take the row out");
        orders.forEach(order -> once(order, row.problems()));
        if (row.problems().count() == before) read.addAll(orders);
    }

    private void runs(StandingOrder order, Written packs) {
        Route route = routeOf.get(order.customer());
        if (route != null && !route.days().contains(order.weekday()))
            packs.bad(
                    0,
                    "falls on a day on which route \"" + route.code() + "\" of customer \"" + order.customer()
                            + "\" does not run",
                    "move it to a day on which it runs");
    }

    private void once(Placed<StandingOrder> order, Problems problems) {
        for (Placed<StandingOrder> other : read)
            if (overlap(order.value(), other.value())) {
                problems.add(
                        order.place(),
                        "customer \"" + order.value().customer() + "\" already takes \""
                                + order.value().product() + "\" on that day by line "
                                + other.place().line(),
                        "end the one before the other begins");
                return;
            }
    }

    private static boolean overlap(StandingOrder a, StandingOrder b) {
        return a.customer().equals(b.customer())
                && a.product().equals(b.product())
                && a.weekday() == b.weekday()
                && !a.from().isAfter(b.until().orElse(LocalDate.MAX))
                && !b.from().isAfter(a.until().orElse(LocalDate.MAX));
    }
}

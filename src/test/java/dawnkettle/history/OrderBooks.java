package dawnkettle.history;

import static java.nio.charset.StandardCharsets.UTF_8;

import dawnkettle.book.MakingDates;
import dawnkettle.book.StandingOrder;
import dawnkettle.conf.Configuration;
import dawnkettle.shop.Customer;
import dawnkettle.shop.Product;
import dawnkettle.shop.Route;
import dawnkettle.shop.Shop;
import dawnkettle.trouble.Table;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** Who wanted what on each making day: the standing orders, orders like those of the rehearsal, and what came late. */
final class OrderBooks {
    /** Of a standing order's days, how many it is not taken (common practice, no source). */
    private static final double SKIPPED = 0.04;

    /** Of the usual orders, what is left on a public holiday. */
    private static final double HOLIDAY = 0.15;

    /** Any product, any day. */
    private static final double STRAY_LATE = 0.05;

    private final Shop shop;
    private final List<StandingOrder> standing;
    private final MakingDates dates;
    private final Map<DayOfWeek, Double> extraLines = new TreeMap<>();
    private final Map<String, List<Taken>> pool = new TreeMap<>();
    private final Map<LocalDate, Map<Wanted.Key, Wanted>> wanted = new TreeMap<>();
    private final Map<LocalDate, Map<String, Integer>> late = new TreeMap<>();

    /** An order line of the rehearsal as an example. */
    private record Taken(String product, int packs) {}

    OrderBooks(Configuration conf, Path rehearsalOrders) throws IOException {
        this.shop = conf.shop();
        this.standing = conf.standing();
        this.dates = new MakingDates(shop.calendar());
        readPool(Files.readString(rehearsalOrders, UTF_8));
        Span.FIRST.datesUntil(Span.LAST.plusDays(7)).forEach(this::delivery);
        new Span(shop.calendar()).workDays().forEach(this::afterClose);
    }

    Collection<Wanted> madeOn(LocalDate day) {
        return wanted.getOrDefault(day, Map.of()).values();
    }

    /** Packs that came after the close of a making day, by product. */
    Map<String, Integer> lateOn(LocalDate day) {
        return late.getOrDefault(day, Map.of());
    }

    private void readPool(String orders) {
        List<Table.Row> rows = Table.read("orders.csv", orders).rows();
        Map<DayOfWeek, Integer> lines = new TreeMap<>();
        Map<DayOfWeek, List<LocalDate>> days = new TreeMap<>();
        for (Table.Row row : rows.subList(1, rows.size())) {
            List<String> cells = row.cells().stream().map(Table.Cell::text).toList();
            if (cells.get(6).equals("amend") || shop.findCustomer(cells.get(2)).isEmpty()) continue;
            LocalDate day = LocalDate.parse(cells.get(5));
            lines.merge(day.getDayOfWeek(), 1, Integer::sum);
            days.computeIfAbsent(day.getDayOfWeek(), weekday -> new ArrayList<>())
                    .add(day);
            pool.computeIfAbsent(shop.customer(cells.get(2)).priceList(), list -> new ArrayList<>())
                    .add(new Taken(cells.get(3), Integer.parseInt(cells.get(4))));
        }
        lines.forEach((weekday, count) -> extraLines.put(
                weekday, (double) count / days.get(weekday).stream().distinct().count()));
    }

    private void delivery(LocalDate day) {
        double busy = Span.level(day)
                * new Chance("busy", day).around(0.03)
                * (shop.calendar().closed().containsKey(day) ? HOLIDAY : 1);
        Chance kept = new Chance("standing", day);
        for (StandingOrder order : standing)
            if (order.weekday() == day.getDayOfWeek() && kept.happens(busy * (1 - SKIPPED)))
                add(day, order.customer(), order.product(), order.packs());
        Chance extra = new Chance("extra", day);
        List<Customer> open = shop.customers().stream()
                .filter(customer ->
                        route(customer).days().contains(day.getDayOfWeek()) && pool.containsKey(customer.priceList()))
                .toList();
        long lines = Math.round(extraLines.getOrDefault(day.getDayOfWeek(), 0.0) * busy * extra.around(0.1));
        for (long line = 0; line < lines && !open.isEmpty(); line++) {
            Customer customer = extra.oneOf(open);
            Taken like = extra.oneOf(pool.get(customer.priceList()));
            add(day, customer.code(), like.product(), like.packs());
        }
    }

    private void afterClose(LocalDate day) {
        Chance chance = new Chance("late", day);
        for (LateHabit habit : LateHabit.OF_MILLRACE)
            if (habit.weekday() == day.getDayOfWeek()
                    && chance.happens(habit.often().chance())) lines(day, habit, chance);
        for (Product product : shop.products())
            if (chance.happens(STRAY_LATE))
                line(day, chance, shop.customers().stream().toList(), new LateHabit.Line(product.code(), 1, 3));
    }

    private void lines(LocalDate day, LateHabit habit, Chance chance) {
        List<Customer> customers = shop.customers().stream()
                .filter(customer -> customer.priceList().equals(habit.priceList()))
                .toList();
        int lines = chance.between(1, habit.often().mostLines());
        for (int line = 0; line < lines; line++) line(day, chance, customers, habit.line());
    }

    private void line(LocalDate day, Chance chance, List<Customer> customers, LateHabit.Line line) {
        List<Customer> reached = customers.stream()
                .filter(customer ->
                        route(customer).madeSameDay() && route(customer).days().contains(day.getDayOfWeek()))
                .toList();
        int packs = line.step() * chance.between(1, line.mostSteps());
        add(day, chance.oneOf(reached).code(), line.product(), packs);
        late.computeIfAbsent(day, making -> new TreeMap<>()).merge(line.product(), packs, Integer::sum);
    }

    private void add(LocalDate delivery, String customer, String product, int packs) {
        Route route = route(shop.customer(customer));
        Optional<LocalDate> making = dates.makingDate(delivery, route, shop.product(product));
        making.ifPresent(day -> wanted.computeIfAbsent(day, any -> new TreeMap<>())
                .merge(
                        new Wanted.Key(delivery, customer, product),
                        Wanted.of(new Wanted.Key(delivery, customer, product), route, day, packs),
                        (before, more) -> before.plus(more.packs())));
    }

    private Route route(Customer customer) {
        return shop.route(customer.route());
    }

    /** Mass of what was wanted on a making day, in kg. */
    double kilograms(LocalDate day) {
        return madeOn(day).stream()
                .collect(Collectors.summingDouble(line ->
                        line.packs() * shop.product(line.key().product()).net().inGrams() / 1000.0));
    }
}

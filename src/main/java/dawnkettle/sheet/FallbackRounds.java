package dawnkettle.sheet;

import dawnkettle.shop.Customer;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** Who gets what where no plan comes: van by van, stop by stop. */
final class FallbackRounds {
    private final List<Fallback.Line> lines;
    private final Desk desk;

    FallbackRounds(Fallback fallback, Desk desk) {
        this.lines = fallback.lines().stream().filter(line -> line.packs() > 0).toList();
        this.desk = desk;
    }

    /** For two columns. */
    Table table() {
        TreeMap<String, List<Fallback.Line>> byRoute =
                lines.stream().collect(Collectors.groupingBy(Fallback.Line::route, TreeMap::new, Collectors.toList()));
        List<Table.Section> sections = new ArrayList<>();
        byRoute.forEach((route, there) -> round(route, there, sections));
        List<Table.Column> columns = List.of(
                new Table.Column("", 6.6),
                new Table.Column(desk.say(Word.PICK_PACKS), 12),
                new Table.Column(desk.say(Word.PICK_CASES), 18),
                new Table.Column(desk.say(Word.PICK_PRODUCT), 56));
        return new Table(columns, 5.6, sections).dense();
    }

    private void round(String route, List<Fallback.Line> there, List<Table.Section> sections) {
        TreeMap<String, List<Fallback.Line>> byCustomer = there.stream()
                .sorted(Comparator.comparing(Fallback.Line::product))
                .collect(Collectors.groupingBy(
                        Fallback.Line::customer,
                        () -> new TreeMap<>(
                                Comparator.comparingInt(this::stop).thenComparing(Comparator.naturalOrder())),
                        Collectors.toList()));
        byCustomer.forEach((customer, given) -> {
            List<Row> head = new ArrayList<>();
            if (customer.equals(byCustomer.firstKey())) head.add(Row.bar(12, routeName(route)));
            String name = desk.customerName(customer);
            head.add(Row.shaded(10.5, name));
            Row again = Row.shaded(10.5, desk.say(Word.CONTINUED, route + "  " + name));
            sections.add(new Table.Section(
                    head, List.of(again), given.stream().map(this::row).toList(), given.size() <= PickSheet.KEPT_ROWS));
        });
    }

    private int stop(String customer) {
        return desk.shop().findCustomer(customer).map(Customer::stop).orElse(Integer.MAX_VALUE);
    }

    private String routeName(String code) {
        return desk.shop().routes().stream()
                .filter(route -> route.code().equals(code))
                .map(route -> code + "  " + route.name() + "  " + route.departs())
                .findFirst()
                .orElse(code);
    }

    private Row row(Fallback.Line line) {
        return Row.of(
                Cell.tick("", Lettering.plain(10)).small(),
                Cell.text(Integer.toString(line.packs()), Lettering.bold(12)),
                Cell.text(desk.cases(line.product(), line.packs()).brief(), Lettering.plain(10)),
                Cell.text(desk.productName(line.product()), Lettering.plain(10.5)));
    }
}

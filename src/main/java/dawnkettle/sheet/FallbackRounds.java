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

    /** A bar a van, a row a customer. */
    Table table() {
        TreeMap<String, List<Fallback.Line>> byRoute =
                lines.stream().collect(Collectors.groupingBy(Fallback.Line::route, TreeMap::new, Collectors.toList()));
        List<Table.Section> sections = new ArrayList<>();
        byRoute.forEach((route, there) -> sections.add(round(route, there)));
        List<Table.Column> columns = List.of(
                new Table.Column("", 8),
                new Table.Column(desk.say(Word.FALLBACK_CUSTOMER), 50),
                new Table.Column(desk.say(Word.PICK_PACKS), 14),
                new Table.Column(desk.say(Word.PICK_PRODUCT), 114));
        return new Table(columns, 5.6, sections).dense();
    }

    private Table.Section round(String route, List<Fallback.Line> there) {
        TreeMap<String, List<Fallback.Line>> byCustomer = there.stream()
                .sorted(Comparator.comparing(Fallback.Line::product))
                .collect(Collectors.groupingBy(
                        Fallback.Line::customer,
                        () -> new TreeMap<>(
                                Comparator.comparingInt(this::stop).thenComparing(Comparator.naturalOrder())),
                        Collectors.toList()));
        List<Row> rows = new ArrayList<>();
        byCustomer.forEach((customer, given) -> rows.add(row(customer, given)));
        return new Table.Section(
                List.of(Row.bar(12, routeName(route))),
                List.of(Row.shaded(10.5, desk.say(Word.CONTINUED, route))),
                rows,
                rows.size() <= PickSheet.KEPT_ROWS);
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

    private Row row(String customer, List<Fallback.Line> given) {
        int packs = given.stream().mapToInt(Fallback.Line::packs).sum();
        String all = given.stream()
                .map(line -> line.packs() + " × " + desk.productName(line.product()))
                .collect(Collectors.joining(";  "));
        return Row.of(
                Cell.tick("", Lettering.plain(10)).small(),
                Cell.text(desk.customerName(customer), Lettering.bold(10.5)),
                Cell.text(Integer.toString(packs), Lettering.bold(12)),
                Cell.text(all, Lettering.plain(10.5)));
    }
}

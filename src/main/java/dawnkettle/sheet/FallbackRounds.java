package dawnkettle.sheet;

import dawnkettle.shop.Customer;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** Who gets what where no plan comes: van by van, stop by stop. */
final class FallbackRounds {
    private final List<Given> lines;
    private final Desk desk;

    /** A van of a day. */
    private record Round(Optional<LocalDate> on, String route) implements Comparable<Round> {
        private static final Comparator<Round> ORDER = Comparator.comparing(
                        (Round round) -> round.on().orElse(LocalDate.MIN))
                .thenComparing(Round::route);

        @Override
        public int compareTo(Round other) {
            return ORDER.compare(this, other);
        }
    }

    FallbackRounds(List<Given> given, Desk desk) {
        this.lines = given.stream().filter(line -> line.packs() > 0).toList();
        this.desk = desk;
    }

    /** A bar a van, a row a customer. */
    Table table() {
        TreeMap<Round, List<Given>> byRoute = lines.stream()
                .collect(Collectors.groupingBy(
                        line -> new Round(line.on(), line.route()), TreeMap::new, Collectors.toList()));
        List<Table.Section> sections = new ArrayList<>();
        byRoute.forEach((round, there) -> sections.add(section(round, there)));
        List<Table.Column> columns = List.of(
                new Table.Column("", 8),
                new Table.Column(desk.say(Word.FALLBACK_CUSTOMER), 50),
                new Table.Column(desk.say(Word.PICK_PACKS), 14),
                new Table.Column(desk.say(Word.PICK_PRODUCT), 114));
        return new Table(columns, 5.6, sections).dense();
    }

    private Table.Section section(Round round, List<Given> there) {
        TreeMap<String, List<Given>> byCustomer = there.stream()
                .sorted(Comparator.comparing(Given::product))
                .collect(Collectors.groupingBy(
                        Given::customer,
                        () -> new TreeMap<>(
                                Comparator.comparingInt(this::stop).thenComparing(Comparator.naturalOrder())),
                        Collectors.toList()));
        List<Row> rows = new ArrayList<>();
        byCustomer.forEach((customer, given) -> rows.add(row(customer, given)));
        return new Table.Section(
                List.of(Row.bar(12, name(round))),
                List.of(Row.shaded(10.5, desk.say(Word.CONTINUED, round.route()))),
                rows,
                rows.size() <= PickSheet.KEPT_ROWS);
    }

    private int stop(String customer) {
        return desk.shop().findCustomer(customer).map(Customer::stop).orElse(Integer.MAX_VALUE);
    }

    /** What goes out on another day than it is made says when. */
    private String name(Round round) {
        return routeName(round.route())
                + round.on().map(day -> "  " + desk.dates().brief(day)).orElse("");
    }

    private String routeName(String code) {
        return desk.shop().routes().stream()
                .filter(route -> route.code().equals(code))
                .map(route -> code + "  " + route.name() + "  " + route.departs())
                .findFirst()
                .orElse(code);
    }

    private Row row(String customer, List<Given> given) {
        int packs = given.stream().mapToInt(Given::packs).sum();
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

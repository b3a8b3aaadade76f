package dawnkettle.conf;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.book.Admission;
import dawnkettle.book.Amendment;
import dawnkettle.book.BookLine;
import dawnkettle.book.OrderBook;
import dawnkettle.book.OrderLine;
import dawnkettle.book.OrderNumber;
import dawnkettle.floor.Budget;
import dawnkettle.measure.Celsius;
import dawnkettle.measure.Mass;
import dawnkettle.plan.Cooling;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.Evening;
import dawnkettle.plan.PlanDay;
import dawnkettle.plan.PlannedRoute;
import dawnkettle.plan.SoakCall;
import dawnkettle.plan.Temperatures;
import dawnkettle.shop.BlockSize;
import dawnkettle.shop.Customer;
import dawnkettle.shop.Pack;
import dawnkettle.shop.Product;
import dawnkettle.shop.Recipe;
import dawnkettle.shop.Shop;
import dawnkettle.shop.Step;
import dawnkettle.trouble.Table;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The demonstration shop that ships in {@code conf/}: whole, believable, and able to do its own days. */
class MillraceTest {
    private static final Path CONF = Path.of("conf");
    private static final LocalDate FIRST_ORDERED = LocalDate.of(2026, 12, 3);

    private final Configuration millrace = ReadConfiguration.from(CONF);
    private final Shop shop = millrace.shop();

    @Test
    void it_is_as_large_as_the_job_says() {
        assertThat(shop.customers()).hasSize(150);
        assertThat(shop.products()).hasSizeGreaterThanOrEqualTo(14);
        assertThat(shop.products().stream().map(product -> product.packing().pack()))
                .contains(Pack.values());
        assertThat(shop.recipes()).hasSizeGreaterThanOrEqualTo(7);
        assertThat(shop.recipes().stream().filter(Recipe::flavoured)).isNotEmpty();
        assertThat(shop.routes()).hasSizeGreaterThanOrEqualTo(7);
        assertThat(shop.routes().stream().map(route -> route.days()).distinct().count())
                .isGreaterThan(4);
    }

    @Test
    void every_customer_is_called_by_two_names_or_more_and_writes_from_nowhere_real() {
        assertThat(shop.customers()).allMatch(customer -> customer.aliases().size() >= 2);
        assertThat(shop.customers().stream().flatMap(customer -> customer.mails().stream()))
                .hasSizeGreaterThanOrEqualTo(150)
                .allMatch(address -> address.endsWith(".example"));
    }

    /** GS1 sets prefix 952 aside for demonstrations and examples (GS1 company prefix list). */
    @Test
    void its_case_numbers_are_of_the_demonstration_prefix() {
        assertThat(shop.products().stream().flatMap(product -> product.wording().gtin().stream()))
                .hasSize(shop.products().size())
                .allMatch(gtin -> gtin.substring(1, 4).equals("952"));
    }

    /** Slab formula with 75 to 5 °C in the bath's water; {@code plan.Cooling} holds its sources. */
    @Test
    void every_block_is_cold_when_its_cooling_steps_are_over() {
        for (Product product : shop.products()) {
            Optional<BlockSize> block = product.packing().block();
            List<Step> cooling = shop.recipeOf(product).steps().stream()
                    .filter(step -> step.target()
                            .filter(target -> target.degrees() < Cooling.COLD)
                            .isPresent())
                    .toList();
            assertThat(cooling).isNotEmpty();
            if (block.isEmpty()) continue;
            double water = cooling.get(0).target().orElseThrow().degrees();
            assertThat(cooling.stream().mapToInt(Step::minutes).sum())
                    .as("%s in %s", product.code(), block.get())
                    .isGreaterThanOrEqualTo(Cooling.minutesToCold(block.get(), water));
            assertThat(Cooling.meetsTwoSteps(block.get(), water))
                    .as(product.code())
                    .isTrue();
        }
    }

    @Test
    void the_rehearsals_orders_are_all_taken() throws IOException {
        Admission admission = new Admission(shop, FIRST_ORDERED.minusDays(1));
        Set<String> seen = new HashSet<>();
        for (Table.Row row : orderRows()) {
            Customer customer = admission.findCustomer(text(row, 2)).orElseThrow();
            Product product = admission.findProduct(text(row, 3)).orElseThrow();
            LocalDate day = admission.findDay(text(row, 5)).orElseThrow();
            assertThat(admission.unreachable(customer, product, day))
                    .as("%s", row.place())
                    .isEmpty();
            String line = text(row, 0) + " " + text(row, 1);
            if (text(row, 6).equals("amend")) assertThat(seen).contains(line);
            else assertThat(seen.add(line)).as(line).isTrue();
        }
        assertThat(seen).hasSizeGreaterThan(300);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "2026-12-03",
                "2026-12-04",
                "2026-12-05",
                "2026-12-07",
                "2026-12-09",
                "2026-12-10",
                "2026-12-11",
                "2026-12-12"
            })
    void a_day_wants_between_1200_and_1600_kg_of_which_most_is_standing(LocalDate day) throws IOException {
        List<BookLine> lines = book().bookFor(day);
        Mass all = mass(lines);
        Mass standing = mass(lines.stream()
                .filter(line -> line.source() == OrderLine.Source.STANDING)
                .toList());

        assertThat(all).isBetween(Mass.kilograms(1_200), Mass.kilograms(1_600));
        assertThat((double) standing.milligrams() / all.milligrams()).isBetween(0.7, 0.85);
    }

    /** An ordinary Thursday, a Saturday, the day after a closed day, in a mild, a cold and a warm soak room. */
    @ParameterizedTest
    @CsvSource({"2026-12-03,170", "2026-12-05,120", "2026-12-07,170", "2026-12-09,120", "2026-12-09,250"})
    void a_day_can_be_made_with_every_van_in_time(LocalDate day, int roomTenths) throws IOException {
        DayPlan plan = plan(day, roomTenths);

        assertThat(plan.shortages()).isEmpty();
        assertThat(plan.routes()).hasSizeGreaterThan(2).allMatch(route -> route.lateMinutes() == 0);
        assertThat(plan.routes().stream().map(PlannedRoute::route)).doesNotHaveDuplicates();
    }

    private DayPlan plan(LocalDate day, int roomTenths) throws IOException {
        var temperatures =
                new Temperatures(Celsius.tenths(roomTenths), shop.climate().tap(day.getMonth()), "test");
        LocalDate eve = shop.calendar().previous(day);
        Instant called = at(eve, millrace.night().times().soakCall());
        Instant closed = at(eve, millrace.night().times().close());
        var call = PlanDay.soakCall(shop, evening(day, called, temperatures, Optional.empty()), closed);
        return PlanDay.of(shop, evening(day, closed, temperatures, Optional.of(call)));
    }

    private Evening evening(LocalDate day, Instant now, Temperatures temperatures, Optional<SoakCall> call)
            throws IOException {
        return new Evening(
                book().close(day, now),
                Evening.Outlook.NONE,
                Evening.Larder.EMPTY,
                new Evening.SoakRoom(temperatures, call, List.of()),
                Evening.Committed.NOTHING,
                now,
                new Budget(3_000, 1, 60_000));
    }

    private Instant at(LocalDate day, LocalTime time) {
        return day.atTime(time).atZone(shop.house().zone()).toInstant();
    }

    private Mass mass(List<BookLine> lines) {
        return Mass.sum(lines.stream()
                .map(line -> shop.product(line.product()).net().times(line.packs()))
                .toList());
    }

    private OrderBook book() throws IOException {
        List<OrderLine> lines = new ArrayList<>();
        List<Amendment> amendments = new ArrayList<>();
        Instant taken =
                FIRST_ORDERED.minusDays(2).atStartOfDay(shop.house().zone()).toInstant();
        for (Table.Row row : orderRows()) {
            OrderNumber order = new OrderNumber(text(row, 0));
            int line = Integer.parseInt(text(row, 1));
            int packs = Integer.parseInt(text(row, 4));
            if (text(row, 6).equals("amend"))
                amendments.add(new Amendment(order, line, packs, OrderLine.Source.FILE, "orders.csv", taken, false));
            else
                lines.add(new OrderLine(
                        order,
                        line,
                        text(row, 2),
                        text(row, 3),
                        packs,
                        LocalDate.parse(text(row, 5)),
                        OrderLine.Source.FILE,
                        "orders.csv",
                        taken));
        }
        return new OrderBook(shop, lines, amendments, millrace.standing(), List.of());
    }

    private static List<Table.Row> orderRows() throws IOException {
        Table table = Table.read("orders.csv", Files.readString(CONF.resolve("rehearsal/orders.csv"), UTF_8));
        assertThat(table.problems()).isEmpty();
        return table.rows().subList(1, table.rows().size());
    }

    private static String text(Table.Row row, int column) {
        return row.cells().get(column).text();
    }
}

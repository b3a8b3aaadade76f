package dawnkettle.cost;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.cost.Moves.Cause;
import dawnkettle.mail.Millrace;
import dawnkettle.measure.Mass;
import dawnkettle.measure.Money;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

/**
 * Variances against worked examples of standard costing. There an adverse variance is a loss; here it is a cost above zero.
 * An input of a recipe takes the place of a product: its quantity is the mass, so that the volume of all inputs is the
 * yield variance and their shift the mix variance.
 */
class MovesTest {
    private static final LocalDate MONDAY = LocalDate.of(2026, 11, 23);

    /** Kilograms at a price, as a product that is nothing but its beans. */
    private static ProductCost line(String code, String kilograms, String price) {
        BigDecimal mass = new BigDecimal(kilograms);
        return cost(code, mass, mass.multiply(new BigDecimal(price)), 0, BigDecimal.ZERO);
    }

    private static ProductCost cost(
            String code, BigDecimal kilograms, BigDecimal beans, long seconds, BigDecimal labour) {
        Map<CostPart, Money> parts = new EnumMap<>(CostPart.class);
        for (CostPart part : CostPart.values()) parts.put(part, Money.zero(Millrace.USD));
        parts.put(CostPart.BEANS, Money.of(beans.setScale(2, RoundingMode.UNNECESSARY), Millrace.USD));
        parts.put(CostPart.LABOUR, Money.of(labour.setScale(2, RoundingMode.UNNECESSARY), Millrace.USD));
        Mass mass = Mass.kilograms(kilograms);
        return new ProductCost(code, 1, mass, mass, seconds, parts);
    }

    private static WeekCosts week(ProductCost... products) {
        Map<CostPart, Money> parts = new EnumMap<>(CostPart.class);
        for (CostPart part : CostPart.values())
            parts.put(
                    part,
                    List.of(products).stream()
                            .map(one -> one.part(part))
                            .reduce(Money.zero(Millrace.USD), Money::plus));
        List<Mass> masses = List.of(products).stream().map(ProductCost::mass).toList();
        long seconds =
                List.of(products).stream().mapToLong(ProductCost::handSeconds).sum();
        ProductCost all = new ProductCost("", 1, Mass.sum(masses), Mass.sum(masses), seconds, parts);
        return new WeekCosts(MONDAY, 6, 30, List.of(products), all);
    }

    private static String part(Moves moves, Cause cause) {
        return moves.parts().get(cause).amount().toPlainString();
    }

    /** opentuition.com, "materials mix and yield": 50, 40, 20 kg at 10, 5, 9 for 100 kg; output 23,180; mix 9,200 A, yield 7,216 A. */
    @Test
    void mix_and_yield_of_three_materials_are_the_published_ones() {
        Moves moves = Moves.between(
                week(line("A", "11590", "10"), line("B", "9272", "5"), line("C", "4636", "9")),
                week(line("A", "13200", "10"), line("B", "7600", "5"), line("C", "5600", "9")));
        assertThat(part(moves, Cause.MIX)).isEqualTo("9200.00");
        assertThat(part(moves, Cause.VOLUME)).isEqualTo("7216.00");
        assertThat(moves.whole().amount().toPlainString()).as("usage").isEqualTo("16416.00");
    }

    /** scribd 726914485: 5 kg at 2 and 5 kg at 4 a unit, 100 units; used 600 and 900; mix 300 A, yield 1,500 A, usage 1,800 A. */
    @Test
    void mix_and_yield_of_two_materials_are_the_published_ones() {
        Moves moves = Moves.between(
                week(line("A", "500", "2"), line("B", "500", "4")), week(line("A", "600", "2"), line("B", "900", "4")));
        assertThat(part(moves, Cause.MIX)).isEqualTo("300.00");
        assertThat(part(moves, Cause.VOLUME)).isEqualTo("1500.00");
    }

    /** opentuition.com, "mix and yield with losses": 5 l at 16 and 6 l at 25 for 10 l; output 4,800; yield 6,900 F; mix and price computed. */
    @Test
    void a_yield_that_is_better_and_a_price_that_is_worse_stand_apart() {
        Moves moves = Moves.between(
                week(line("A", "2400", "16"), line("B", "2880", "25")),
                week(line("A", "2200", "18"), line("B", "2750", "21")));
        assertThat(part(moves, Cause.VOLUME)).isEqualTo("-6900.00");
        assertThat(part(moves, Cause.MIX)).isEqualTo("450.00");
        assertThat(part(moves, Cause.BEAN_PRICE)).isEqualTo("-6600.00");
    }

    /** qammunity.org 8059627: 183,200 at 5.80 where 185,000 at 6.00 are standard: price 36,640 F, quantity 10,800 F; labour 18,930 h at 16.90 where 18,500 h at 16.50 are: computed. */
    @Test
    void price_and_quantity_rate_and_efficiency_are_the_published_ones() {
        BigDecimal output = new BigDecimal("185000");
        ProductCost standard = cost("X", output, new BigDecimal("1110000"), 18_500 * 3_600L, new BigDecimal("305250"));
        ProductCost actual = new ProductCost(
                "X",
                1,
                Mass.kilograms(output),
                Mass.kilograms(183_200),
                18_930 * 3_600L,
                cost("X", output, new BigDecimal("1062560"), 0, new BigDecimal("319917"))
                        .parts());
        Moves moves = Moves.between(week(standard), week(actual));
        assertThat(part(moves, Cause.BEAN_PRICE)).isEqualTo("-36640.00");
        assertThat(part(moves, Cause.BEAN_USE)).isEqualTo("-10800.00");
        assertThat(part(moves, Cause.WAGE)).isEqualTo("7572.00");
        assertThat(part(moves, Cause.WORK_USE)).isEqualTo("7095.00");
        assertThat(part(moves, Cause.VOLUME)).isEqualTo("0.00");
    }

    /** accountingqa.blogspot.com: 450 at 6.50 where 430 at 6.90 are standard: price 180 F, quantity 138 U, net 42 F. */
    @Test
    void a_small_example_comes_out_too() {
        BigDecimal output = new BigDecimal("430");
        ProductCost actual = new ProductCost(
                "X",
                1,
                Mass.kilograms(430),
                Mass.kilograms(450),
                0,
                cost("X", output, new BigDecimal("2925"), 0, BigDecimal.ZERO).parts());
        Moves moves = Moves.between(week(cost("X", output, new BigDecimal("2967"), 0, BigDecimal.ZERO)), week(actual));
        assertThat(part(moves, Cause.BEAN_PRICE)).isEqualTo("-180.00");
        assertThat(part(moves, Cause.BEAN_USE)).isEqualTo("138.00");
        assertThat(moves.whole().amount().toPlainString()).isEqualTo("-42.00");
    }

    @Property(tries = 200)
    void the_parts_add_up_to_the_whole_to_the_cent(
            @ForAll @Size(min = 1, max = 6) List<@IntRange(min = 1, max = 90_000) Integer> cents,
            @ForAll @Size(min = 1, max = 6) List<@IntRange(min = 1, max = 90_000) Integer> others) {
        Moves moves = Moves.between(any(cents), any(others));
        assertThat(moves.whole().minor())
                .isEqualTo(others.stream().mapToLong(one -> one).sum()
                        - cents.stream().mapToLong(one -> one).sum());
    }

    private static WeekCosts any(List<Integer> cents) {
        List<ProductCost> products = new ArrayList<>();
        for (int i = 0; i < cents.size(); i++)
            products.add(cost(
                    "P" + i,
                    BigDecimal.valueOf(1 + cents.get(i) % 97),
                    BigDecimal.valueOf(cents.get(i), 2),
                    i,
                    BigDecimal.ZERO));
        return week(products.toArray(new ProductCost[0]));
    }
}

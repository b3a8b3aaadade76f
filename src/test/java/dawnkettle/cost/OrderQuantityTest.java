package dawnkettle.cost;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.math.MathContext;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class OrderQuantityTest {
    private static BigDecimal of(String text) {
        return new BigDecimal(text);
    }

    /**
     * Published examples: the SCperf package's documentation, after Hillier and Lieberman (8000, 12000, 0.3: 25298, cost
     * 7589.5); Hopp and Spearman, Factory Physics, as quoted (1000, 500, 35: 169); Snyder and Shen, example 3.1 (1300, 8,
     * 0.225: 304.05, cost 68.41; from memory, recomputed); the inventorize package's documentation (5000, 400, 28: 377.96,
     * the data published, the answer recomputed).
     */
    @ParameterizedTest
    @CsvSource({
        "8000, 12000, 0.3, 25298, 1",
        "1000, 500, 35, 169.03, 0.01",
        "1300, 8, 0.225, 304.05, 0.01",
        "5000, 400, 28, 377.96, 0.01"
    })
    void the_economic_lot_is_the_published_one(
            String demand, String order, String holding, String lot, String tolerance) {
        assertThat(OrderQuantity.economic(of(demand), of(order), of(holding)))
                .isCloseTo(of(lot), within(of(tolerance)));
    }

    /** The same examples: what it costs, and how long a cycle is (SCperf: 3.2 months). */
    @Test
    void what_the_economic_lot_costs_is_the_published_cost() {
        assertThat(OrderQuantity.economicCost(of("8000"), of("12000"), of("0.3")))
                .isCloseTo(of("7589.5"), within(of("0.1")));
        assertThat(OrderQuantity.economicCost(of("1300"), of("8"), of("0.225")))
                .isCloseTo(of("68.41"), within(of("0.01")));
        BigDecimal months =
                OrderQuantity.economic(of("8000"), of("12000"), of("0.3")).divide(of("8000"), MathContext.DECIMAL32);
        assertThat(months).isCloseTo(of("3.2"), within(of("0.05")));
    }

    /** {@code d L + z sigma sqrt(L)}, the textbook form; 100 a day, deviation 20, 9 days, 1.645: 900 + 98.7 (by hand). */
    @Test
    void the_reorder_point_is_use_over_the_lead_time_and_the_safety_stock() {
        BigDecimal safety = OrderQuantity.safety(of("20"), 9, OrderQuantity.NINETY_FIVE_PERCENT);
        assertThat(safety).isEqualByComparingTo("98.7");
        assertThat(OrderQuantity.reorderPoint(of("100"), 9, safety)).isEqualByComparingTo("998.7");
    }
}

package dawnkettle.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import dawnkettle.DemoDay;
import dawnkettle.book.BookLine;
import dawnkettle.measure.Celsius;
import dawnkettle.stock.LotCode;
import dawnkettle.stock.StockLot;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;

class AnswersTest {
    private static final LocalDate DAY = LocalDate.of(2026, 12, 4);
    private static final DemoDay DEMO = new DemoDay(DAY);

    /**
     * On a day with a shortage a line gets its fair share of a lot, and then what others left of the same lot. Two rows of
     * it broke the law of the ledger that a line is served once from a lot, and no plan could be kept.
     */
    @Test
    void a_line_that_is_served_twice_from_one_lot_has_one_row_of_it() {
        PlannedOrder any = DEMO.plan(Celsius.degrees(18), 0).orders().stream()
                .filter(order -> order.line().product().equals("FIRM-400"))
                .findFirst()
                .orElseThrow();
        BookLine line = any.line();
        OpenLine open = new OpenLine(line, DEMO.conf.shop().product("FIRM-400"), 1, "van", 0);
        StockLot older = stock("261202-FI01");
        StockLot newer = stock("261203-FI01");
        open.gifts.add(gift(older, 3));
        open.gifts.add(gift(newer, 2));
        open.gifts.add(gift(older, 4));

        List<Allocation> rows = new Answers(List.of(open), brew -> null, brew -> DAY).allocation();

        assertThat(rows)
                .extracting(Allocation::lot, Allocation::packs)
                .containsExactly(tuple(older.lot(), 7), tuple(newer.lot(), 2));
    }

    private static StockLot stock(String lot) {
        return new StockLot(new LotCode(lot), "FIRM-400", 20, DAY.minusDays(2), DAY.plusDays(10), false);
    }

    private static OpenLine.Gift gift(StockLot lot, int packs) {
        return new OpenLine.Gift(Optional.of(lot), Optional.empty(), packs);
    }

    @Test
    void no_plan_of_the_demonstration_serves_a_line_twice_from_one_lot() {
        Set<String> served = new HashSet<>();
        for (Allocation one : DEMO.plan(Celsius.degrees(18), 0).allocation())
            assertThat(served.add(one.order() + " " + one.line() + " " + one.lot()))
                    .isTrue();
        assertThat(served).isNotEmpty();
    }
}

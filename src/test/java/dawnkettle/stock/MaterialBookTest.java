package dawnkettle.stock;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.measure.Mass;
import dawnkettle.measure.Money;
import dawnkettle.stock.MaterialBook.Cause;
import dawnkettle.stock.MaterialBook.Use;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Currency;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

class MaterialBookTest {
    private static final Instant START = Instant.parse("2026-12-01T08:00:00Z");
    private static final LocalDate DAY = LocalDate.of(2026, 12, 1);

    private final MaterialBook book = new MaterialBook();

    private void came(String lot, long kilograms, Optional<LocalDate> bestBefore, int hour) {
        Fact.Received came = new Fact.Received(
                "BEANS",
                lot,
                Quantity.of(Mass.kilograms(kilograms)),
                Money.minor(100, Currency.getInstance("USD")),
                bestBefore);
        book.came(START.plusSeconds(hour * 3600L), DAY.plusDays(hour / 24), came);
    }

    private static Use use(int hour, long kilograms) {
        return new Use(START.plusSeconds(hour * 3600L), Cause.DOSED, "261203-FI01", kilograms * 1_000_000);
    }

    private long left(String lot) {
        return book.find(lot).orElseThrow().left() / 1_000_000;
    }

    @Test
    void what_expires_first_goes_first_though_it_came_last() {
        came("OLD", 10, Optional.of(DAY.plusDays(90)), 0);
        came("NEW", 10, Optional.of(DAY.plusDays(30)), 24);
        came("UNDATED", 10, Optional.empty(), 0);
        book.takeOf("BEANS", List.of(), use(30, 12));
        book.played();

        assertThat(left("NEW")).isZero();
        assertThat(left("OLD")).isEqualTo(8);
        assertThat(left("UNDATED")).isEqualTo(10);
        assertThat(book.holdings()).extracting(MaterialBook.Holding::lot).containsExactly("NEW", "OLD", "UNDATED");
    }

    @Test
    void the_lot_that_the_sheet_names_goes_before_all_others() {
        came("A", 10, Optional.empty(), 0);
        came("B", 10, Optional.empty(), 1);
        book.takeOf("BEANS", List.of("B"), use(2, 4));
        book.played();

        assertThat(left("A")).isEqualTo(10);
        assertThat(left("B")).isEqualTo(6);
    }

    @Test
    void more_than_there_was_is_written_in_as_unexplained() {
        came("A", 10, Optional.empty(), 0);
        book.take(List.of("A"), use(1, 13));
        book.played();

        assertThat(left("A")).isZero();
        assertThat(Reconciliation.bought("A", book).isWhole()).isTrue();
        assertThat(book.moves())
                .filteredOn(move -> move.cause() == Cause.UNEXPLAINED)
                .extracting(MaterialBook.Move::change)
                .containsExactly(3_000_000L);
    }

    @Test
    void a_count_keeps_its_reason() {
        came("A", 10, Optional.empty(), 0);
        book.counted(START.plusSeconds(7200), "A", 9_000_000, "a sack was torn");
        book.played();

        assertThat(book.moves())
                .last()
                .isEqualTo(new MaterialBook.Move(
                        START.plusSeconds(7200), "A", Cause.COUNTED, "a sack was torn", -1_000_000));
    }

    @Property(tries = 200)
    void what_came_in_is_always_what_was_taken_and_is_left(
            @ForAll @Size(max = 30) List<@IntRange(min = 0, max = 40) Integer> steps) {
        MaterialBookTest each = new MaterialBookTest();
        each.came("A", 50, Optional.empty(), 0);
        each.came("B", 70, Optional.empty(), 3);
        for (int i = 0; i < steps.size(); i++) {
            if (steps.get(i) % 5 == 0)
                each.book.counted(START.plusSeconds(i * 3600L), "A", steps.get(i) * 1_000_000L, "counted");
            else each.book.takeOf("BEANS", List.of(), use(i, steps.get(i)));
        }
        each.book.played();

        for (String lot : List.of("A", "B"))
            assertThat(Reconciliation.bought(lot, each.book).isWhole()).isTrue();
    }
}

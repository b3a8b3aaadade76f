package dawnkettle.stock;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

class PackBookTest {
    private static final Instant START = Instant.parse("2026-12-04T08:00:00Z");

    private static Instant hour(int hour) {
        return START.plusSeconds(hour * 3600L);
    }

    @Test
    void a_lot_goes_through_all_its_states() {
        PackBook book = new PackBook();
        book.filled(hour(0), 100);
        book.loaded(hour(2), 60);
        book.allocated(12);
        book.sold(hour(3), 5);
        book.lost(hour(4), 3);
        book.returned(hour(30), 8);
        book.destroyed(hour(31), 10);

        PackBook.State state = book.played();
        assertThat(state.isWhole()).isTrue();
        assertThat(state.out()).isEqualTo(new PackBook.Out(60, 5, 3, 2));
        assertThat(state.here()).isEqualTo(new PackBook.Here(12, 18));
        assertThat(state.back()).as("those that came back go first").isEqualTo(new PackBook.Back(8, 8));
        assertThat(state.withCustomers()).isEqualTo(52);
    }

    @Test
    void a_count_that_differs_keeps_its_reason_and_the_sum() {
        PackBook book = new PackBook();
        book.filled(hour(0), 30);
        book.loaded(hour(2), 24);
        book.counted(hour(9), 4, "two were given to the neighbours");

        PackBook.State state = book.played();
        assertThat(state.in()).isEqualTo(new PackBook.In(30, -2));
        assertThat(state.here().all()).isEqualTo(4);
        assertThat(state.differences()).containsExactly("-2 packs: two were given to the neighbours");
        assertThat(state.isWhole()).isTrue();
    }

    @Test
    void a_whole_lot_that_is_lost_leaves_nothing_here() {
        PackBook book = new PackBook();
        book.filled(hour(0), 30);
        book.allocated(24);
        book.wholeLost(hour(1));

        PackBook.State state = book.played();
        assertThat(state.out().lost()).isEqualTo(30);
        assertThat(state.here().all()).isZero();
    }

    @Property(tries = 300)
    void every_pack_is_somewhere_whatever_happens(
            @ForAll @Size(max = 25) List<@IntRange(min = 0, max = 59) Integer> events) {
        PackBook book = new PackBook();
        book.filled(hour(0), 100);
        for (int i = 0; i < events.size(); i++) play(book, hour(i + 1), events.get(i) / 6, events.get(i) % 6);

        assertThat(book.played().isWhole()).isTrue();
    }

    private static void play(PackBook book, Instant at, int packs, int what) {
        switch (what) {
            case 0 -> book.loaded(at, packs);
            case 1 -> book.sold(at, packs);
            case 2 -> book.lost(at, packs);
            case 3 -> book.returned(at, packs);
            case 4 -> book.destroyed(at, packs);
            default -> book.counted(at, packs, "");
        }
    }
}

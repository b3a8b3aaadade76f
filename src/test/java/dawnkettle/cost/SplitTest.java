package dawnkettle.cost;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.Collections;
import java.util.List;
import java.util.stream.LongStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

class SplitTest {
    private static List<BigDecimal> weights(long... weights) {
        return LongStream.of(weights).mapToObj(BigDecimal::valueOf).toList();
    }

    /** Largest remainder (Hamilton's method), ties to the earlier item: worked by hand. */
    @Test
    void what_is_left_over_goes_to_the_largest_remainders() {
        assertThat(Split.of(10_000, weights(1, 1, 1))).containsExactly(3_334L, 3_333L, 3_333L);
        assertThat(Split.of(100, weights(1, 1, 1))).containsExactly(34L, 33L, 33L);
        assertThat(Split.of(5, weights(3, 7))).containsExactly(2L, 3L);
        assertThat(Split.of(1_001, weights(7, 2, 1))).containsExactly(701L, 200L, 100L);
        assertThat(Split.of(7, Collections.nCopies(6, BigDecimal.ONE))).containsExactly(2L, 1L, 1L, 1L, 1L, 1L);
    }

    @Test
    void nothing_and_less_than_nothing_are_shared_out_too() {
        assertThat(Split.of(0, List.of())).isEmpty();
        assertThat(Split.of(-5, weights(3, 7))).containsExactly(-2L, -3L);
        assertThat(Split.of(3, weights(0, 0))).containsExactly(2L, 1L);
        assertThat(Split.of(1, List.of(new BigDecimal("0.25"), new BigDecimal("0.2500001"))))
                .containsExactly(0L, 1L);
    }

    @Property
    void parts_add_up_and_none_is_off_by_a_whole_unit(
            @ForAll @LongRange(min = 0, max = 1_000_000_000_000L) long total,
            @ForAll @Size(min = 1, max = 12) List<@IntRange(min = 0, max = 100_000) Integer> shares) {
        List<BigDecimal> weights = shares.stream().map(BigDecimal::valueOf).toList();
        List<Long> parts = Split.of(total, weights);
        assertThat(parts.stream().mapToLong(Long::longValue).sum()).isEqualTo(total);
        long sum = shares.stream().mapToLong(Integer::longValue).sum();
        for (int i = 0; i < parts.size() && sum > 0; i++) {
            long low = Math.multiplyExact(total, shares.get(i).longValue()) / sum;
            assertThat(parts.get(i)).isBetween(low, low + 1);
        }
    }
}

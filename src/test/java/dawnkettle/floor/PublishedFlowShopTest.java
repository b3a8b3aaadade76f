package dawnkettle.floor;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

/** The core on flow shops whose best finish is published: one place a stage, no waits bounded, no hands. */
class PublishedFlowShopTest {
    private static final int[][] JOHNSON = {{5, 1, 9, 3, 10}, {2, 6, 7, 8, 4}};

    /** Two-machine rule of S. M. Johnson 1954; the five jobs are a textbook example from memory, all 120 orders tried here. */
    @Test
    void two_stages_end_as_early_as_the_best_of_all_orders() {
        int best = bestOfAllOrders(new ArrayList<>(), JOHNSON);
        Run run = RunEngine.run(Taillard.shop(JOHNSON), new Budget(500, 1, 60_000));
        assertThat(best).isEqualTo(30);
        assertThat(run.score().finish()).isEqualTo(best);
        assertThat(RunCheck.broken(Taillard.shop(JOHNSON), run)).isEmpty();
    }

    /** The same rule on drawn jobs: first those shorter on the first stage by rising minutes, then the others by falling ones. */
    @Property(tries = 50)
    void two_stages_end_as_early_as_by_the_rule_of_johnson(
            @ForAll @Size(min = 1, max = 9) List<@IntRange(min = 1, max = 20) Integer> first, @ForAll Random random) {
        int[][] minutes = {
            first.stream().mapToInt(Integer::intValue).toArray(),
            random.ints(first.size(), 1, 20).toArray()
        };
        Run run = RunEngine.run(Taillard.shop(minutes), new Budget(600, 1, 60_000));
        assertThat(run.score().finish()).isEqualTo(finish(johnson(minutes), minutes));
    }

    private static List<Integer> johnson(int[][] minutes) {
        Comparator<Integer> front = Comparator.comparingInt(job -> minutes[0][job]);
        Comparator<Integer> back = Comparator.comparingInt(job -> -minutes[1][job]);
        var order = new ArrayList<Integer>();
        IntStream.range(0, minutes[0].length)
                .filter(job -> minutes[0][job] < minutes[1][job])
                .boxed()
                .sorted(front)
                .forEach(order::add);
        IntStream.range(0, minutes[0].length)
                .filter(job -> minutes[0][job] >= minutes[1][job])
                .boxed()
                .sorted(back)
                .forEach(order::add);
        return order;
    }

    private static int bestOfAllOrders(List<Integer> order, int[][] minutes) {
        if (order.size() == minutes[0].length) return finish(order, minutes);
        int best = Integer.MAX_VALUE;
        for (int job = 0; job < minutes[0].length; job++) {
            if (order.contains(job)) continue;
            order.add(job);
            best = Math.min(best, bestOfAllOrders(order, minutes));
            order.remove(order.size() - 1);
        }
        return best;
    }

    private static int finish(List<Integer> order, int[][] minutes) {
        int[] free = new int[minutes.length];
        for (int job : order)
            for (int stage = 0; stage < minutes.length; stage++)
                free[stage] = Math.max(free[stage], stage == 0 ? 0 : free[stage - 1]) + minutes[stage][job];
        return free[minutes.length - 1];
    }

    /** E. Taillard, Benchmarks for basic scheduling problems, EJOR 64 (1993): rows 1 and 5 of ta001 as printed in public copies. */
    @Test
    void the_published_generator_draws_the_published_rows() {
        int[][] minutes = Taillard.minutes(873_654_221, 20, 5);
        assertThat(minutes[0])
                .containsExactly(54, 83, 15, 71, 77, 36, 53, 38, 27, 87, 76, 91, 14, 29, 12, 77, 32, 87, 68, 94);
        assertThat(minutes[4])
                .containsExactly(58, 56, 20, 85, 53, 35, 53, 41, 69, 13, 86, 72, 8, 49, 47, 87, 58, 18, 68, 28);
    }

    /** Best known finish of ta001: 1278; lower bound in the same paper: 1232. */
    @Test
    void the_first_published_flow_shop_reaches_its_published_finish() {
        FloorDay day = Taillard.shop(873_654_221, 20, 5);
        Run run = RunEngine.run(day, new Budget(40_000, 1, 60_000));
        assertThat(RunCheck.broken(day, run)).isEmpty();
        assertThat(run.score().finish()).isEqualTo(1278);
        assertThat(run.bound().finish()).isBetween(1232, 1278);
    }

    /**
     * Best known finish of ta011, the first of the 20 x 10 flow shops: 1582 (several public lists that agree). Its 20 jobs of ten
     * steps each are an order of 200 pieces, all of whose places for a whole job are to be tried.
     */
    @Test
    void many_steps_a_job_do_not_make_a_long_order() {
        FloorDay day = Taillard.shop(587_595_453, 20, 10);
        Run run = RunEngine.run(day, new Budget(100_000, 1, 60_000));
        assertThat(RunCheck.broken(day, run)).isEmpty();
        assertThat(run.score().finish()).isLessThanOrEqualTo(1582 * 1007 / 1000);
    }

    /** Published lower bounds of the ten 20 x 5 flow shops (same paper; each is a bound of one machine). */
    @Test
    void no_bound_is_below_the_published_one_machine_bound() {
        int[] seeds = {
            873654221,
            379008056,
            1866992158,
            216771124,
            495070989,
            402959317,
            1369363414,
            2021925980,
            573109518,
            88325120
        };
        int[] published = {1232, 1290, 1073, 1268, 1198, 1180, 1226, 1170, 1206, 1082};
        int[] best = {1278, 1359, 1081, 1293, 1235, 1195, 1234, 1206, 1230, 1108};
        for (int number = 0; number < seeds.length; number++)
            assertThat(Bounds.of(Taillard.shop(seeds[number], 20, 5)).finish())
                    .isBetween(published[number], best[number]);
    }
}

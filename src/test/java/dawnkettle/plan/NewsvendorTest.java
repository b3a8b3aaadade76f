package dawnkettle.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The amount to have ready, against textbook examples and against trying everything. */
class NewsvendorTest {
    /** Package stockpyl's documentation (pypi.org/project/stockpyl): left 2, shortage 18, normal 120 ± 10. */
    @Test
    void a_normal_demand_as_in_the_documented_example() {
        assertThat(Newsvendor.ofNormal(120, 10, 18, 2)).isCloseTo(132.8155, within(1e-3));
        assertThat(Newsvendor.costOfNormal(10, 18, 2)).isCloseTo(35.0997, within(1e-3));
    }

    /**
     * A textbook exercise (solutioninn.com, from Hillier and Lieberman): buy 1.50, sell 2.50, refund 0.50, and P(15, 16,
     * 17, 18) = .4, .2, .3, .1: one short costs 1.00, one over 1.00, so order 16.
     */
    @Test
    void a_demand_of_few_cases_as_in_the_exercise() {
        List<Integer> demand = List.of(15, 15, 15, 15, 16, 16, 17, 17, 17, 18);
        assertThat(Newsvendor.ofOneDay(100, 100).best(demand)).isEqualTo(16);
    }

    /** A published answer that is wrong (qammunity.org/6843903 prints 92.6): one short 60, one over 110, normal 80 ± 30. */
    @Test
    void the_published_wrong_answer_is_rejected() {
        double right = Newsvendor.ofNormal(80, 30, 60, 110);
        assertThat(right).isCloseTo(68.7, within(0.1));
        assertThat(Math.abs(right - 92.6)).isGreaterThan(20);
        // and by counting: of 100,000 drawn demands, 68.7 costs less than 92.6
        Random dice = new Random(25);
        double ours = 0;
        double theirs = 0;
        for (int i = 0; i < 100_000; i++) {
            double demand = 80 + 30 * dice.nextGaussian();
            ours += cost(right, demand);
            theirs += cost(92.6, demand);
        }
        assertThat(ours).isLessThan(theirs);
    }

    private static double cost(double amount, double demand) {
        return demand > amount ? 60 * (demand - amount) : 110 * (amount - demand);
    }

    @Test
    void without_history_nothing_is_made_ready() {
        assertThat(Newsvendor.ofOneDay(100, 1).best(List.of())).isZero();
    }

    /** What keeps until it is wanted may be made ready more freely. */
    @Test
    void what_is_wanted_later_is_made_ready_more_freely() {
        List<Integer> demand = List.of(0, 0, 0, 0, 10);
        assertThat(Newsvendor.ofOneDay(100, 100).best(demand)).isZero();
        assertThat(new Newsvendor(100, 100, 2, 6).best(demand)).isEqualTo(6);
    }

    /** 1,000 random cases against trying every amount. */
    @Test
    void no_amount_costs_less_in_a_thousand_random_cases() {
        Random dice = new Random(24);
        for (int run = 0; run < 1_000; run++) {
            long left = dice.nextInt(500);
            Newsvendor vendor = new Newsvendor(
                    dice.nextInt(500), left, left == 0 ? 0 : dice.nextInt((int) left + 1), dice.nextInt(30));
            List<Integer> demand = new ArrayList<>();
            int cases = 1 + dice.nextInt(30);
            for (int i = 0; i < cases; i++) demand.add(dice.nextInt(3) == 0 ? 0 : dice.nextInt(60));
            assertThat(vendor.best(demand))
                    .as("case %d: %s for %s", run, vendor, demand)
                    .isEqualTo(tried(vendor, demand));
        }
    }

    private static long tried(Newsvendor vendor, List<Integer> demand) {
        long best = 0;
        long least = Long.MAX_VALUE;
        for (long amount = 0; amount <= 100; amount++) {
            long cost = 0;
            for (int wanted : demand) cost += vendor.cost(amount, wanted);
            if (cost < least) {
                least = cost;
                best = amount;
            }
        }
        return best;
    }
}

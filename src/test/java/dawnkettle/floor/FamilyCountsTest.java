package dawnkettle.floor;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

/** Cooker and press with changeovers, small enough for every order on either to be tried. */
class FamilyCountsTest {
    private static final int HORIZON = 600;
    private static final String[] FAMILIES = {"a", "b", "c"};
    private static final int NEVER = Integer.MAX_VALUE;

    /** A batch: cooked from its release, pressed, on its way for so long, and asked for by a minute. */
    record Batch(int family, int release, int cook, int press, int behind, int due) {}

    @Test
    void two_cookers_pace_the_press_whatever_it_saves_on_changeovers() {
        var batches =
                IntStream.range(0, 6).mapToObj(n -> batch(n / 5, 0, 30, 10)).toList();
        int[][] changeover = {{0, 5, 5}, {5, 0, 5}, {5, 5, 0}};
        // The cookers end two each at 30, 60 and 90; of the last two one waits for the press. Their last two ends sum
        // to 180 at
        // least, and the presses start no nearer than 10 to each other: the last at 95.
        assertThat(leastOfAllOrders(batches, changeover, 2)).isEqualTo(110);
        assertThat(bound(batches, changeover, 2)).isEqualTo(105);
    }

    @Test
    void a_family_that_comes_early_and_late_is_waited_for_or_changed_to_twice() {
        int[][] changeover = {{0, 50, 50}, {50, 0, 50}, {50, 50, 0}};
        var batches = List.of(batch(0, 0, 1, 20), batch(0, 100, 1, 20), batch(1, 0, 1, 20), batch(1, 0, 1, 20));
        // b b, change, then a is there: 1 + 40 + 50 = 91, and the second a at 101.
        assertThat(leastOfAllOrders(batches, changeover, 4)).isEqualTo(131);
        assertThat(bound(batches, changeover, 4)).isEqualTo(131);
    }

    private static Batch batch(int family, int release, int cook, int press) {
        return new Batch(family, release, cook, press, 0, HORIZON);
    }

    @Provide
    Arbitrary<List<Batch>> batches() {
        return Combinators.combine(
                        Arbitraries.integers().between(0, 2),
                        Arbitraries.integers().between(0, 60),
                        Arbitraries.integers().between(0, 30),
                        Arbitraries.integers().between(1, 15),
                        Arbitraries.integers().between(0, 40),
                        Arbitraries.of(60, 90, 120, HORIZON))
                .as(Batch::new)
                .list()
                .ofMinSize(1)
                .ofMaxSize(5);
    }

    @Property(tries = 2000)
    void no_order_on_cookers_and_press_ends_before_the_bound(
            @ForAll("batches") List<Batch> batches,
            @ForAll @Size(9) List<@IntRange(max = 30) Integer> changeovers,
            @ForAll @IntRange(min = 1, max = 3) int cookers) {
        int[][] changeover = IntStream.range(0, 3)
                .mapToObj(from -> IntStream.range(0, 3)
                        .map(to -> from == to ? 0 : changeovers.get(3 * from + to))
                        .toArray())
                .toArray(int[][]::new);
        int least = leastOfAllOrders(batches, changeover, cookers);
        if (least == NEVER) return;
        FloorDay day = day(batches, changeover, cookers);
        assertThat(Bounds.ofRunsInTime(new Floor(day)).finish()).isLessThanOrEqualTo(least);
        assertThat(Bounds.of(day).finish()).isLessThanOrEqualTo(least);
    }

    private static int bound(List<Batch> batches, int[][] changeover, int cookers) {
        return Bounds.ofRunsInTime(new Floor(day(batches, changeover, cookers))).finish();
    }

    private static FloorDay day(List<Batch> batches, int[][] changeover, int cookers) {
        var open = List.of(new Window(0, HORIZON));
        var stations = List.of(
                new Station("cooker", "cook", cookers, 0, open),
                new Station("press", "press", 1, 0, open),
                new Station("bath", "bath", batches.size(), 0, open));
        var changeovers = new ArrayList<Changeover>();
        for (int from = 0; from < 3; from++)
            for (int to = 0; to < 3; to++)
                changeovers.add(new Changeover("press", FAMILIES[from], FAMILIES[to], changeover[from][to]));
        var dues = IntStream.range(0, batches.size())
                .mapToObj(number -> new Due("van" + number, batches.get(number).due, 1))
                .toList();
        var jobs = IntStream.range(0, batches.size())
                .mapToObj(number -> job(batches.get(number), number))
                .toList();
        return new FloorDay(stations, List.of(), changeovers, dues, jobs, HORIZON);
    }

    private static Job job(Batch batch, int number) {
        var steps = List.of(step("cook", batch.cook), step("press", batch.press), step("bath", batch.behind));
        var due = List.of("van" + number);
        return new Job("B" + number, FAMILIES[batch.family], batch.release, HORIZON, steps, List.of(), due, List.of());
    }

    private static Operation step(String stage, int minutes) {
        return new Operation(stage, minutes, 0, Operation.ANY_WAIT, 0);
    }

    /** The earliest end of all orders in which all is in time. */
    private static int leastOfAllOrders(List<Batch> batches, int[][] changeover, int cookers) {
        List<int[]> orders = orders(batches.size());
        int least = NEVER;
        for (int[] cooked : orders) {
            int[] ready = cookedAt(batches, cooked, cookers);
            for (int[] pressed : orders) least = Math.min(least, end(batches, pressed, ready, changeover));
        }
        return least;
    }

    private static int[] cookedAt(List<Batch> batches, int[] order, int cookers) {
        int[] free = new int[cookers];
        int[] ready = new int[batches.size()];
        for (int number : order) {
            Arrays.sort(free);
            free[0] = Math.max(free[0], batches.get(number).release) + batches.get(number).cook;
            ready[number] = free[0];
        }
        return ready;
    }

    private static int end(List<Batch> batches, int[] order, int[] ready, int[][] changeover) {
        int free = 0;
        int end = 0;
        int before = -1;
        for (int number : order) {
            Batch batch = batches.get(number);
            int changed = before < 0 ? 0 : changeover[batches.get(before).family][batch.family];
            free = Math.max(free + changed, ready[number]) + batch.press;
            if (free + batch.behind > batch.due) return NEVER;
            end = Math.max(end, free + batch.behind);
            before = number;
        }
        return end;
    }

    private static List<int[]> orders(int size) {
        List<int[]> orders = List.of(new int[0]);
        for (int number = 0; number < size; number++) {
            var longer = new ArrayList<int[]>();
            for (int[] order : orders) for (int at = 0; at <= number; at++) longer.add(with(order, number, at));
            orders = longer;
        }
        return orders;
    }

    private static int[] with(int[] order, int number, int at) {
        int[] longer = Arrays.copyOf(order, order.length + 1);
        System.arraycopy(order, at, longer, at + 1, order.length - at);
        longer[at] = number;
        return longer;
    }
}

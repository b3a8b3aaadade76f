package dawnkettle.floor;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;

/** The changeover bound against every order of single jobs. */
class FamilyOrderTest {
    private static final int NEVER = Integer.MAX_VALUE / 2;

    @Test
    void what_has_a_long_way_behind_it_goes_first_even_at_the_price_of_a_wash() {
        int[][] wash = {{0, 5}, {20, 0}};
        var soymilk = List.of(new FamilyOrder.Part(30, 45, NEVER));
        var firm = List.of(new FamilyOrder.Part(40, 110, NEVER));
        // Firm first: 40 + 110 = 150, and soymilk 40 + 20 + 30 + 45 = 135. Soymilk first: 30 + 5 + 40 + 110 = 185.
        assertThat(new FamilyOrder(wash, List.of(soymilk, firm)).shortest()).isEqualTo(150);
    }

    @Test
    void a_family_is_split_where_its_last_minutes_ask_it() {
        int[][] wash = {{0, 5}, {5, 0}};
        var two = List.of(new FamilyOrder.Part(10, 0, 10), new FamilyOrder.Part(10, 0, NEVER));
        var one = List.of(new FamilyOrder.Part(10, 0, 25));
        assertThat(new FamilyOrder(wash, List.of(two, one)).shortest()).isEqualTo(40);
    }

    private record Piece(int family, int minutes, int tail, int last) {}

    @Property(tries = 400)
    void no_order_of_single_jobs_ends_earlier(@ForAll Random random) {
        int families = 1 + random.nextInt(3);
        int[][] wash = closed(random, families);
        int[] tail = random.ints(families, 0, 40).toArray();
        int[] late = {20 + random.nextInt(40), 60 + random.nextInt(60)};
        var jobs = new ArrayList<Piece>();
        for (int job = 0; job < 1 + random.nextInt(6); job++) {
            int family = random.nextInt(families);
            jobs.add(new Piece(family, 1 + random.nextInt(12), tail[family], late[random.nextInt(2)]));
        }
        int best = best(jobs, new ArrayList<>(), wash);
        assertThat(new FamilyOrder(wash, parts(jobs, families)).shortest()).isEqualTo(best == NEVER ? 0 : best);
    }

    private static List<List<FamilyOrder.Part>> parts(List<Piece> jobs, int families) {
        var all = new ArrayList<List<FamilyOrder.Part>>();
        for (int family = 0; family < families; family++) {
            int number = family;
            all.add(jobs.stream()
                    .filter(job -> job.family == number)
                    .map(job -> new FamilyOrder.Part(job.minutes, job.tail, job.last))
                    .sorted(Comparator.comparingInt(FamilyOrder.Part::lastMinute))
                    .toList());
        }
        return all;
    }

    /** Changeovers that no way round shortens. */
    private static int[][] closed(Random random, int families) {
        int[][] wash = new int[families][families];
        for (int from = 0; from < families; from++)
            for (int to = 0; to < families; to++) wash[from][to] = from == to ? 0 : random.nextInt(25);
        for (int over = 0; over < families; over++)
            for (int from = 0; from < families; from++)
                for (int to = 0; to < families; to++)
                    wash[from][to] = Math.min(wash[from][to], wash[from][over] + wash[over][to]);
        return wash;
    }

    private static int best(List<Piece> left, List<Piece> done, int[][] wash) {
        if (left.isEmpty()) return end(done, wash);
        int best = NEVER;
        for (Piece next : List.copyOf(left)) {
            var rest = new ArrayList<>(left);
            rest.remove(next);
            done.add(next);
            best = Math.min(best, best(rest, done, wash));
            done.remove(done.size() - 1);
        }
        return best;
    }

    private static int end(List<Piece> order, int[][] wash) {
        int minute = 0;
        int end = 0;
        Piece before = null;
        for (Piece job : order) {
            minute += job.minutes + (before == null ? 0 : wash[before.family][job.family]);
            if (minute > job.last) return NEVER;
            end = Math.max(end, minute + job.tail);
            before = job;
        }
        return end;
    }
}

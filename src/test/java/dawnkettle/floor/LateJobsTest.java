package dawnkettle.floor;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;
import java.util.Random;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

/**
 * As few jobs too late as can be on one machine: J. M. Moore, An n job, one machine sequencing algorithm, Management Science 15
 * (1968), in Hodgson's form. Here each van takes nothing after its minute, so that what is too late finds no place.
 */
class LateJobsTest {
    /** A textbook example, from memory; all subsets were tried in a study outside of this project: two are late. */
    @Test
    void of_five_jobs_two_are_late() {
        int[] minutes = {7, 8, 4, 6, 6};
        int[] dues = {9, 17, 18, 19, 21};
        assertThat(moore(minutes, dues)).isEqualTo(2);
        assertThat(run(minutes, dues, 200).unplaced()).hasSize(2);
    }

    @Property(tries = 100)
    void no_more_jobs_are_late_than_by_the_rule_of_moore(
            @ForAll @Size(min = 1, max = 7) List<@IntRange(min = 1, max = 12) Integer> minutes, @ForAll long seed) {
        var random = new Random(seed);
        int[] minutesOf = minutes.stream().mapToInt(Integer::intValue).toArray();
        int[] dues = random.ints(minutesOf.length, 5, 45).toArray();
        assertThat(run(minutesOf, dues, 600).unplaced()).hasSize(moore(minutesOf, dues));
    }

    /** Jobs by rising due; whenever one would be late, the longest so far is given up. */
    private static int moore(int[] minutes, int[] dues) {
        var kept = new PriorityQueue<Integer>(Comparator.reverseOrder());
        int clock = 0;
        int late = 0;
        var order = IntStream.range(0, minutes.length)
                .boxed()
                .sorted(Comparator.comparingInt(job -> dues[job]))
                .toList();
        for (int job : order) {
            kept.add(minutes[job]);
            clock += minutes[job];
            if (clock <= dues[job]) continue;
            clock -= kept.remove();
            late++;
        }
        return late;
    }

    private static Run run(int[] minutes, int[] dues, long decodes) {
        int horizon = 200;
        var stations = new ArrayList<Station>();
        var jobs = new ArrayList<Job>();
        stations.add(new Station("machine", "machine", 1, 0, List.of(new Window(0, horizon))));
        for (int job = 0; job < minutes.length; job++) {
            String van = "van" + job;
            stations.add(new Station(van, van, 1, 0, List.of(new Window(0, dues[job] + 1))));
            var steps = List.of(
                    new Operation("machine", minutes[job], 0, Operation.ANY_WAIT, 0), new Operation(van, 1, 0, 0, 0));
            jobs.add(new Job("J" + job, "", 0, horizon, steps, List.of(), List.of(), List.of()));
        }
        var day = new FloorDay(stations, List.of(), List.of(), List.of(), jobs, horizon);
        Run run = RunEngine.run(day, new Budget(decodes, 1, 60_000));
        assertThat(RunCheck.broken(day, run)).isEmpty();
        return run;
    }
}

package dawnkettle.floor;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Plants one fault at a time into a sound run of a small day. */
class RunCheckTest {
    private static final Placement B1_GROUND = new Placement("B1", 0, "grinder", 0, 0, 10);
    private static final List<Placement> SOUND = List.of(
            B1_GROUND,
            new Placement("B1", 1, "cooker", 0, 10, 30),
            new Placement("B2", 0, "grinder", 0, 10, 20),
            new Placement("B1", 2, "bath", 0, 30, 60),
            new Placement("B2", 1, "cooker", 0, 50, 70),
            new Placement("B2", 2, "bath", 0, 70, 100),
            new Placement("P1", 0, "cooker", 0, 80, 90));
    /** B2 starts 2 min late for its tub and ends 10 min late for its van, weight 2; the cooker turns to herbs and back. */
    private static final Score COUNTED = new Score(0, 2, 20, 100, 2);

    private static FloorDay day() {
        var stations = List.of(
                new Station("grinder", "grind", 1, 0, List.of(new Window(0, 60), new Window(60, 200))),
                new Station("cooker", "cook", 1, 0, List.of(new Window(0, 200))),
                new Station("bath", "cool", 0, 100, List.of(new Window(0, 300))));
        var hands = List.of(new Hands(new Window(0, 40), 4), new Hands(new Window(50, 200), 2));
        var washes =
                List.of(new Changeover("cooker", "firm", "herb", 10), new Changeover("cooker", "herb", "firm", 10));
        var dues = List.of(new Due("van", 90, 2));
        return new FloorDay(stations, hands, washes, dues, List.of(b1(), b2(), p1()), 250);
    }

    private static Job b1() {
        var steps = List.of(grind(), cook(20, 5), cool());
        return new Job("B1", "firm", 0, 100, steps, List.of(), List.of(), List.of(B1_GROUND));
    }

    private static Job b2() {
        var steps = List.of(grind(), cook(20, 40), cool());
        return new Job("B2", "herb", 5, 8, steps, List.of(), List.of("van"), List.of());
    }

    private static Job p1() {
        var steps = List.of(cook(10, Operation.ANY_WAIT));
        return new Job("P1", "firm", 0, 100, steps, List.of(new Job.After("B1", 20)), List.of(), List.of());
    }

    private static Operation grind() {
        return new Operation("grind", 10, 2, Operation.ANY_WAIT, 0);
    }

    private static Operation cook(int minutes, int longestWait) {
        return new Operation("cook", minutes, 1, longestWait, 0);
    }

    private static Operation cool() {
        return new Operation("cool", 30, 0, 15, 60);
    }

    private static List<String> broken(List<Placement> placements, List<String> unplaced, Score score) {
        return RunCheck.broken(day(), new Run(placements, unplaced, score, score, new Bound(0, 0, ""), 0, false));
    }

    private static List<String> brokenWith(List<Placement> placements) {
        return broken(placements, List.of(), COUNTED);
    }

    private static List<Placement> with(String job, int operation, UnaryOperator<Placement> change) {
        return SOUND.stream()
                .map(placement -> placement.job().equals(job) && placement.operation() == operation
                        ? change.apply(placement)
                        : placement)
                .toList();
    }

    private static Placement startingAt(Placement old, int start) {
        int end = start + old.end() - old.start();
        return new Placement(old.job(), old.operation(), old.station(), old.place(), start, end);
    }

    @Test
    void a_sound_run_breaks_nothing() {
        assertThat(brokenWith(SOUND)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            B2 | 0 |   5 | minute 5: jobs on grinder place 0 are 2, not at most 1
            B2 | 1 |  45 | minute 45: half people are 1, not at most 0
            B1 | 2 |  45 | minute 70: load on bath are 120, not at most 100
            P1 | 0 |  75 | cooker place 0 is not changed over from B2 to P1 at 75: it takes 10 min
            B1 | 2 |  46 | B1 operation 2 at bath from 46 to 76 waits 16 min, more than it may
            B1 | 2 |  29 | B1 operation 2 at bath from 29 to 59 starts before the step before it has ended
            B2 | 0 |  55 | B2 operation 0 at grinder from 55 to 65 is not whole within one window of the station
            B2 | 0 |   4 | B2 operation 0 at grinder from 4 to 14 starts before its release
            P1 | 0 |  30 | P1 operation 0 at cooker from 30 to 40 starts before B1 has ended
            P1 | 0 |  81 | P1 operation 0 at cooker from 81 to 91 waits 21 min for B1, too long
            B1 | 0 |   1 | B1 left what was fixed: 0
            B2 | 2 | 230 | B2 operation 2 at bath from 230 to 260 ends after the day's horizon
            """)
    void a_step_moved_to_a_wrong_minute_is_told_of(String job, int operation, int start, String told) {
        assertThat(brokenWith(with(job, operation, old -> startingAt(old, start))))
                .contains(told);
    }

    @Test
    void more_people_than_there_are_is_told_of() {
        // Grinding takes two halves and cooking one.
        var crowd = new ArrayList<>(SOUND);
        crowd.set(2, new Placement("B2", 0, "grinder", 0, 20, 30));
        var day = new FloorDay(
                day().stations(),
                List.of(new Hands(new Window(0, 200), 2)),
                day().changeovers(),
                day().dues(),
                day().jobs(),
                250);
        var run = new Run(crowd, List.of(), COUNTED, COUNTED, new Bound(0, 0, ""), 0, false);
        assertThat(RunCheck.broken(day, run)).contains("minute 20: half people are 3, not at most 2");
    }

    @Test
    void a_step_of_the_wrong_length_or_at_the_wrong_station_is_told_of() {
        assertThat(brokenWith(with("P1", 0, old -> new Placement("P1", 0, "cooker", 0, 80, 89))))
                .contains("P1 operation 0 at cooker from 80 to 89 does not last as long as it must");
        assertThat(brokenWith(with("P1", 0, old -> new Placement("P1", 0, "grinder", 0, 80, 90))))
                .contains("P1 operation 0 at grinder from 80 to 90 is not work for this station");
        assertThat(brokenWith(with("P1", 0, old -> new Placement("P1", 0, "cooker", 1, 80, 90))))
                .containsExactly("P1 operation 0 at cooker from 80 to 90 names place 1, which the station lacks");
    }

    @Test
    void a_step_left_out_placed_twice_or_unheard_of_is_told_of() {
        assertThat(brokenWith(SOUND.subList(0, 5))).contains("B2 has 2 operations placed, not 3");
        var twice = new ArrayList<>(SOUND);
        twice.add(new Placement("P1", 0, "cooker", 0, 120, 130));
        assertThat(brokenWith(twice)).containsExactly("P1 operation 0 at cooker from 120 to 130 is placed twice");
        assertThat(brokenWith(with("P1", 0, old -> new Placement("P9", 0, "cooker", 0, 80, 90))))
                .containsExactly(
                        "P9 operation 0 at cooker from 80 to 90 names a job, an operation or a station that the"
                                + " day lacks");
    }

    @Test
    void a_child_of_an_unplaced_job_is_told_of() {
        var without = SOUND.stream()
                .filter(placement ->
                        placement.equals(B1_GROUND) || !placement.job().equals("B1"))
                .toList();
        assertThat(broken(without, List.of("B1"), new Score(1, 2, 20, 100, 1)))
                .containsExactly("P1 operation 0 at cooker from 80 to 90 is made from B1, which is unplaced");
    }

    @Test
    void an_unplaced_job_keeps_what_is_fixed_and_nothing_else() {
        var without = SOUND.stream()
                .filter(placement ->
                        placement.equals(B1_GROUND) || placement.job().equals("B2"))
                .toList();
        assertThat(broken(without, List.of("B1", "P1"), new Score(2, 2, 20, 100, 0)))
                .isEmpty();
        assertThat(broken(SOUND, List.of("B1", "P1"), COUNTED))
                .containsExactly("B1 has 3 operations placed, not 1", "P1 has 1 operations placed, not 0");
        assertThat(broken(without, List.of("B1", "P1", "P1"), COUNTED))
                .containsExactly("P1 is unplaced twice, or is no job of the day");
    }

    @Test
    void a_wrong_score_is_told_of() {
        Score flattering = new Score(0, 2, 20, 99, 2);
        assertThat(broken(SOUND, List.of(), flattering))
                .containsExactly("the run says " + flattering + " and counts " + COUNTED);
    }
}

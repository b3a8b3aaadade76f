package dawnkettle.floor;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.Tuple;

/** Small floors of every kind: breaks, shared baths, changeovers, stages met twice, parents of parents, people who come and go. */
final class AnyFloor {
    private static final int HORIZON = 400;
    private static final List<String> STAGES = List.of("grind", "cook", "press", "bath");
    private static final List<String> FAMILIES = List.of("firm", "herb", "milk");

    private AnyFloor() {}

    static Arbitrary<FloorDay> day() {
        return Combinators.combine(stations(), hands(), changeovers(), dues(), jobs(8))
                .as((stations, hands, changeovers, dues, jobs) ->
                        new FloorDay(stations, hands, changeovers, dues, jobs, HORIZON));
    }

    private static Arbitrary<List<Station>> stations() {
        return Combinators.combine(STAGES.stream().map(AnyFloor::stationsOf).toList())
                .as(lists -> lists.stream().flatMap(List::stream).toList());
    }

    private static Arbitrary<List<Station>> stationsOf(String stage) {
        return Combinators.combine(Arbitraries.integers().between(1, 2), station(stage, 1), station(stage, 2))
                .as((count, one, other) -> List.of(one, other).subList(0, count));
    }

    private static Arbitrary<Station> station(String stage, int number) {
        String code = stage + number;
        var places = Combinators.combine(Arbitraries.integers().between(1, 3), windows())
                .as((count, open) -> new Station(code, stage, count, 0, open));
        var shared = Combinators.combine(Arbitraries.longs().between(30, 150), windows())
                .as((grams, open) -> new Station(code, stage, 0, grams, open));
        return stage.equals("bath") ? Arbitraries.oneOf(List.of(shared, places)) : places;
    }

    /** Open all day, or with a break in between; a break of no minutes makes two windows that touch. */
    private static Arbitrary<List<Window>> windows() {
        var allDay = Arbitraries.just(List.of(new Window(0, HORIZON)));
        var withBreak = Combinators.combine(
                        Arbitraries.integers().between(0, 40),
                        Arbitraries.integers().between(50, 150),
                        Arbitraries.integers().between(0, 40))
                .as((from, pause, minutes) -> List.of(new Window(from, pause), new Window(pause + minutes, HORIZON)));
        return Arbitraries.frequencyOf(Tuple.of(2, allDay), Tuple.of(1, withBreak));
    }

    private static Arbitrary<List<Hands>> hands() {
        var halves = Arbitraries.integers().between(3, 8);
        return Combinators.combine(halves, halves, windows()).as((many, more, windows) -> {
            var hands = new ArrayList<Hands>();
            windows.forEach(window -> hands.add(new Hands(window, hands.isEmpty() ? many : more)));
            return hands;
        });
    }

    private static Arbitrary<List<Changeover>> changeovers() {
        var codes = STAGES.stream().flatMap(s -> IntStream.of(1, 2).mapToObj(n -> s + n));
        // The second station of a stage may not be there, so only the first one is changed over.
        var stations = Arbitraries.of(codes.filter(code -> code.endsWith("1")).toList());
        return Combinators.combine(
                        stations,
                        Arbitraries.of(FAMILIES),
                        Arbitraries.of(FAMILIES),
                        Arbitraries.integers().between(0, 25))
                .as(Changeover::new)
                .list()
                .ofMaxSize(12);
    }

    private static Arbitrary<List<Due>> dues() {
        var minute = Arbitraries.integers().between(20, 250);
        var weight = Arbitraries.integers().between(1, 3);
        return Combinators.combine(minute, weight, minute, weight)
                .as((early, heavy, late, light) ->
                        List.of(new Due("van1", early, heavy), new Due("van2", late, light)));
    }

    static Arbitrary<List<Job>> jobs(int most) {
        return shape().list().ofMinSize(1).ofMaxSize(most).map(AnyFloor::linked);
    }

    /** A job before it has a name; {@code parents} count back from it. */
    private record Shape(
            String family, int release, List<Operation> operations, Map<Integer, Integer> parents, int due) {}

    private static Arbitrary<Shape> shape() {
        return Combinators.combine(
                        Arbitraries.of(FAMILIES),
                        Arbitraries.integers().between(0, 60),
                        operation().list().ofMinSize(1).ofMaxSize(5),
                        Arbitraries.maps(Arbitraries.integers().between(1, 9), waits())
                                .ofMaxSize(2),
                        Arbitraries.integers().between(0, 2))
                .as(Shape::new);
    }

    private static Arbitrary<Integer> waits() {
        return Arbitraries.of(0, 5, 15, 60, Operation.ANY_WAIT);
    }

    private static Arbitrary<Operation> operation() {
        return Combinators.combine(
                        Arbitraries.of(STAGES),
                        Arbitraries.frequencyOf(
                                Tuple.of(9, Arbitraries.integers().between(1, 30)), Tuple.of(1, Arbitraries.just(0))),
                        Arbitraries.integers().between(0, 4),
                        waits(),
                        Arbitraries.longs().between(1, 60))
                .as(Operation::new);
    }

    private static List<Job> linked(List<Shape> shapes) {
        return IntStream.range(0, shapes.size())
                .mapToObj(number -> job(shapes.get(number), number))
                .toList();
    }

    private static Job job(Shape shape, int number) {
        var after = shape.parents.entrySet().stream()
                .filter(parent -> parent.getKey() <= number)
                .map(parent -> new Job.After("B" + (number - parent.getKey()), parent.getValue()))
                .toList();
        List<String> dues = shape.due == 0 ? List.of() : List.of("van" + shape.due);
        int latest = shape.release + 40;
        return new Job("B" + number, shape.family, shape.release, latest, shape.operations, after, dues, List.of());
    }

    /** The same day some time later: what a run had started by then is frozen, and everything else starts no earlier. */
    static FloorDay later(FloorDay day, Run run, int minute) {
        var placed = run.placements().stream().collect(Collectors.groupingBy(Placement::job));
        var jobs = day.jobs().stream()
                .map(job -> frozen(job, placed.getOrDefault(job.id(), List.of()), minute))
                .toList();
        return new FloorDay(day.stations(), day.hands(), day.changeovers(), day.dues(), jobs, day.horizon());
    }

    private static Job frozen(Job job, List<Placement> placements, int minute) {
        var fixed = placements.stream()
                .sorted(Comparator.comparingInt(Placement::operation))
                .takeWhile(placement -> placement.start() < minute)
                .toList();
        return new Job(
                job.id(),
                job.family(),
                Math.max(job.release(), minute),
                job.latestStart(),
                job.operations(),
                job.after(),
                job.dues(),
                fixed);
    }
}

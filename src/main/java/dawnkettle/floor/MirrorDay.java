package dawnkettle.floor;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * A day read from its end to its beginning: what must have ended by then may start from here, what could not start before a
 * release is due at it. Placed as early as can be on this day, a job stands as late as can be on the other.
 */
final class MirrorDay {
    /** Minutes before the true beginning of the day, in which what comes out too late in the mirror still finds room. */
    private static final int BEFORE_THE_DAY = 400;

    private final FloorDay day;
    private final int end;
    private final int[] dueEnds;
    private final Map<String, List<Job.After>> madeFrom = new HashMap<>();

    /**
     * @param end the minute by which all is to have ended
     * @param dueEnds the same for the jobs of each due
     */
    MirrorDay(FloorDay day, int end, int[] dueEnds) {
        this.day = day;
        this.end = end;
        this.dueEnds = dueEnds;
        for (Job job : day.jobs())
            for (Job.After after : job.after())
                madeFrom.computeIfAbsent(after.job(), parent -> new ArrayList<>())
                        .add(new Job.After(job.id(), after.longestWait()));
    }

    FloorDay mirrored() {
        return new FloorDay(
                day.stations().stream().map(this::station).toList(),
                day.hands().stream()
                        .flatMap(hands -> window(hands.window()).map(window -> new Hands(window, hands.halves())))
                        .toList(),
                day.changeovers().stream().map(MirrorDay::changeover).toList(),
                new TreeSet<>(day.jobs().stream().map(Job::release).toList())
                        .stream()
                                .map(release -> new Due(code(release), end - release, 1))
                                .toList(),
                day.jobs().stream().map(this::job).toList(),
                end + BEFORE_THE_DAY);
    }

    private static String code(int release) {
        return "from " + release;
    }

    private Station station(Station station) {
        List<Window> open = station.open().stream().flatMap(this::window).toList();
        return new Station(station.code(), station.stage(), station.places(), station.capacity(), open);
    }

    private Stream<Window> window(Window window) {
        int from = Math.max(0, end - window.untilExclusive());
        int until = window.fromInclusive() == 0 ? end + BEFORE_THE_DAY : end - window.fromInclusive();
        return until > from ? Stream.of(new Window(from, until)) : Stream.empty();
    }

    private static Changeover changeover(Changeover one) {
        return new Changeover(one.station(), one.toFamily(), one.fromFamily(), one.minutes());
    }

    private Job job(Job job) {
        return new Job(
                job.id(),
                job.family(),
                Math.max(0, end - latestEnd(job)),
                Integer.MAX_VALUE,
                backward(job.operations()),
                madeFrom.getOrDefault(job.id(), List.of()),
                List.of(code(job.release())),
                List.of());
    }

    private int latestEnd(Job job) {
        int latest = end;
        for (int due = 0; due < dueEnds.length; due++)
            if (job.dues().contains(day.dues().get(due).code())) latest = Math.min(latest, dueEnds[due]);
        return latest;
    }

    private static List<Operation> backward(List<Operation> operations) {
        var backward = new ArrayList<Operation>();
        int wait = Operation.ANY_WAIT;
        for (int step = operations.size() - 1; step >= 0; step--) {
            Operation one = operations.get(step);
            backward.add(new Operation(one.stage(), one.minutes(), one.halfHands(), wait, one.load()));
            wait = one.longestWait();
        }
        return Collections.unmodifiableList(backward);
    }
}

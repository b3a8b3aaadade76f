package dawnkettle.floor;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The jobs of a day cut where a job may stand for long: each piece finds its place by itself, made from the piece before it.
 * A box machine then need not take the batches in the order in which they were ground.
 */
final class Pieces {
    /** A wait of so many minutes is long enough for something else to come in between. */
    private static final int LONG_WAIT = 45;
    /** Up to so many jobs every position of a whole job can be tried. */
    private static final int FEW_JOBS = 50;
    /** Beyond so many pieces a job on average it is the jobs that make an order long; days of a shop have about two. */
    private static final int MANY_PIECES = 4;

    private final FloorDay day;
    private final List<Job> pieces = new ArrayList<>();
    private final int[] firstOf;
    private int[] jobOf = new int[0];
    private int[] offset = new int[0];

    Pieces(FloorDay day) {
        this.day = day;
        firstOf = new int[day.jobs().size() + 1];
        for (int job = 0; job < day.jobs().size(); job++) {
            cut(job);
            firstOf[job + 1] = pieces.size();
        }
    }

    /** The same day with the pieces for jobs, under names of their own. */
    FloorDay asDay() {
        return new FloorDay(day.stations(), day.hands(), day.changeovers(), day.dues(), pieces, day.horizon());
    }

    private void cut(int job) {
        List<Operation> operations = day.jobs().get(job).operations();
        int from = 0;
        for (int step = 1; step <= operations.size(); step++) {
            if (step < operations.size() && operations.get(step).longestWait() < LONG_WAIT) continue;
            add(job, from, step);
            from = step;
        }
    }

    private void add(int job, int from, int until) {
        Job whole = day.jobs().get(job);
        boolean last = until == whole.operations().size();
        int number = pieces.size();
        jobOf = Arrays.copyOf(jobOf, number + 1);
        offset = Arrays.copyOf(offset, number + 1);
        jobOf[number] = job;
        offset[number] = from;
        pieces.add(new Job(
                name(job, from),
                whole.family(),
                whole.release(),
                from == 0 ? whole.latestStart() : Integer.MAX_VALUE,
                whole.operations().subList(from, until),
                from == 0 ? parents(whole) : List.of(before(job, number)),
                last ? whole.dues() : List.of(),
                fixed(job, from, until)));
    }

    private static String name(int job, int from) {
        return job + "." + from;
    }

    private Job.After before(int job, int number) {
        int wait = day.jobs().get(job).operations().get(offset[number]).longestWait();
        return new Job.After(name(job, offset[number - 1]), wait);
    }

    private List<Job.After> parents(Job whole) {
        return whole.after().stream()
                .map(after -> new Job.After(lastPieceOf(after.job()), after.longestWait()))
                .toList();
    }

    private String lastPieceOf(String id) {
        int job = IntStream.range(0, day.jobs().size())
                .filter(number -> day.jobs().get(number).id().equals(id))
                .findFirst()
                .orElseThrow();
        List<Operation> operations = day.jobs().get(job).operations();
        int from = operations.size() - 1;
        while (from > 0 && operations.get(from).longestWait() < LONG_WAIT) from--;
        return name(job, from);
    }

    private List<Placement> fixed(int job, int from, int until) {
        List<Placement> all = day.jobs().get(job).fixed();
        int fixed = all.size();
        return all.subList(Math.min(from, fixed), Math.min(until, fixed)).stream()
                .map(old -> new Placement(
                        name(job, from), old.operation() - from, old.station(), old.place(), old.start(), old.end()))
                .toList();
    }

    Job whole(int job) {
        return day.jobs().get(job);
    }

    int jobs() {
        return firstOf.length - 1;
    }

    /** True in a published flow shop, whose jobs may stand before every step. */
    boolean areManyOfFewJobs() {
        return jobs() <= FEW_JOBS && size() > MANY_PIECES * jobs();
    }

    int first(int job) {
        return firstOf[job];
    }

    int last(int job) {
        return firstOf[job + 1] - 1;
    }

    int size() {
        return pieces.size();
    }

    int jobOf(int piece) {
        return jobOf[piece];
    }

    /** How many operations of the job lie before the piece. */
    int offset(int piece) {
        return offset[piece];
    }

    /** True where the piece goes on where the one before it ended. */
    boolean goesOn(int piece) {
        return offset[piece] > 0;
    }

    /** The pieces of jobs in the order of the jobs, without those that are over. */
    int[] inOrderOf(int... jobs) {
        return Arrays.stream(jobs)
                .flatMap(job -> IntStream.rangeClosed(first(job), last(job)))
                .filter(piece -> !isOver(pieces.get(piece)))
                .toArray();
    }

    private static boolean isOver(Job piece) {
        return piece.fixed().size() == piece.operations().size();
    }
}

package dawnkettle.floor;

import java.util.Arrays;
import java.util.List;

/** The jobs of a day as arrays: who is made from whom, what waits for whom, and what has happened to them. */
final class JobRows {
    final List<Job> all;
    /** First operation by job, and one more entry at the end. */
    final int[] first;
    /** First operation that is still to be placed. */
    final int[] open;

    final int[] release;
    final int[] latestStart;
    final int[][] parents;
    final int[][] parentWaits;
    final int[][] children;
    final int[][] dues;
    final int[] dueMinute;
    final int[] dueWeight;
    /** Where and when an operation is fixed; -1 where it is not. */
    final int[] fixedStation;

    final Placement[] fixed;

    JobRows(FloorDay day) {
        all = day.jobs();
        int size = all.size();
        first = new int[size + 1];
        for (int job = 0; job < size; job++)
            first[job + 1] = first[job] + all.get(job).operations().size();
        open = new int[size];
        release = all.stream().mapToInt(Job::release).toArray();
        latestStart = all.stream().mapToInt(Job::latestStart).toArray();
        dueMinute = day.dues().stream().mapToInt(Due::minute).toArray();
        dueWeight = day.dues().stream().mapToInt(Due::weight).toArray();
        parents = new int[size][];
        parentWaits = new int[size][];
        children = new int[size][0];
        dues = new int[size][];
        fixed = new Placement[operations()];
        fixedStation = new int[operations()];
        Arrays.fill(fixedStation, -1);
        link(day);
        fix(day);
    }

    private void link(FloorDay day) {
        var ids = new Codes("job");
        all.forEach(job -> ids.addNew(job.id()));
        var codes = new Codes("due");
        day.dues().forEach(due -> codes.addNew(due.code()));
        for (int job = 0; job < size(); job++) {
            Job of = all.get(job);
            String subject = subject(of);
            if (of.operations().isEmpty())
                throw new IllegalArgumentException(subject + " has no operation; give it one or drop it");
            parents[job] = of.after().stream()
                    .mapToInt(after -> ids.number(after.job(), subject))
                    .toArray();
            parentWaits[job] =
                    of.after().stream().mapToInt(Job.After::longestWait).toArray();
            dues[job] = of.dues().stream()
                    .mapToInt(due -> codes.number(due, subject))
                    .toArray();
            for (int parent : parents[job]) children[parent] = with(children[parent], job);
        }
    }

    private static int[] with(int[] numbers, int another) {
        int[] longer = Arrays.copyOf(numbers, numbers.length + 1);
        longer[numbers.length] = another;
        return longer;
    }

    private void fix(FloorDay day) {
        var codes = new Codes("station");
        day.stations().forEach(station -> codes.addNew(station.code()));
        for (int job = 0; job < size(); job++) {
            Job of = all.get(job);
            open[job] = first[job] + of.fixed().size();
            if (open[job] > first[job + 1])
                throw new IllegalArgumentException(
                        subject(of) + " has more fixed placements than operations; drop some");
            for (int step = 0; step < of.fixed().size(); step++) {
                Placement placement = of.fixed().get(step);
                int station = codes.number(placement.station(), subject(of));
                requireFits(placement, of.id(), step, day.stations().get(station));
                fixed[first[job] + step] = placement;
                fixedStation[first[job] + step] = station;
            }
        }
    }

    private static void requireFits(Placement placement, String job, int step, Station station) {
        boolean known = placement.job().equals(job) && placement.operation() == step;
        boolean place = station.isShared() || placement.place() < station.places();
        boolean forward = placement.start() >= 0 && placement.end() >= placement.start();
        if (!known || !place || !forward || placement.place() < 0)
            throw new IllegalArgumentException("job \"" + job + "\" is fixed to \"" + placement
                    + "\"; give its first operations in order, on places that the station has");
    }

    private static String subject(Job job) {
        return "job \"" + job.id() + "\"";
    }

    int size() {
        return all.size();
    }

    int operations() {
        return first[size()];
    }

    int last(int job) {
        return first[job + 1] - 1;
    }

    boolean isFixed(int operation) {
        return fixed[operation] != null;
    }

    boolean hasStarted(int job) {
        return open[job] > first[job];
    }

    boolean isOver(int job) {
        return open[job] > last(job);
    }

    int lastFixedEnd() {
        return Arrays.stream(fixed)
                .filter(placement -> placement != null)
                .mapToInt(Placement::end)
                .max()
                .orElse(0);
    }

    boolean isAwaitedBy(int job, int due) {
        return Arrays.stream(dues[job]).anyMatch(code -> code == due);
    }

    /** True where a due of this minute or an earlier one waits for the job. */
    boolean isAwaitedUntil(int job, int minute) {
        return Arrays.stream(dues[job]).anyMatch(code -> dueMinute[code] <= minute);
    }
}

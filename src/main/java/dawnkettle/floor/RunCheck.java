package dawnkettle.floor;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;

/** Holds a run against the rules of its day, minute by minute, knowing nothing of how it was made. */
public final class RunCheck {
    private final FloorDay day;
    private final Run run;
    private final List<String> broken = new ArrayList<>();
    private final Map<String, Job> jobs = new HashMap<>();
    private final Map<String, Station> stations = new HashMap<>();
    private final Map<String, Map<Integer, Placement>> placed = new HashMap<>();

    private RunCheck(FloorDay day, Run run) {
        this.day = day;
        this.run = run;
        day.jobs().forEach(job -> jobs.put(job.id(), job));
        day.stations().forEach(station -> stations.put(station.code(), station));
    }

    /** Every rule that the run breaks, in words; empty for a sound run. What is fixed has happened and is only counted in. */
    public static List<String> broken(FloorDay day, Run run) {
        var check = new RunCheck(day, run);
        check.collect();
        if (check.broken.isEmpty()) {
            check.day.jobs().forEach(check::checkJob);
            check.broken.addAll(new MinuteCount(day, run.placements()).broken());
            check.checkScore();
        }
        return List.copyOf(check.broken);
    }

    /** Where a placement names what is not there, nothing more can be said. */
    private void collect() {
        for (Placement placement : run.placements()) {
            Job job = jobs.get(placement.job());
            Station station = stations.get(placement.station());
            boolean known = job != null
                    && station != null
                    && placement.operation() >= 0
                    && placement.operation() < job.operations().size();
            if (!known) tell(placement, "names a job, an operation or a station that the day lacks");
            else if (placement.place() < 0 || placement.place() >= Math.max(1, station.places()))
                tell(placement, "names place " + placement.place() + ", which the station lacks");
            else if (placement.start() < 0 || placement.end() < placement.start()) tell(placement, "runs backward");
            else if (placedOf(placement.job()).put(placement.operation(), placement) != null)
                tell(placement, "is placed twice");
        }
        var seen = new HashSet<String>();
        for (String id : run.unplaced())
            if (!jobs.containsKey(id) || !seen.add(id)) broken.add(id + " is unplaced twice, or is no job of the day");
    }

    private Map<Integer, Placement> placedOf(String job) {
        return placed.computeIfAbsent(job, id -> new HashMap<>());
    }

    private void checkJob(Job job) {
        var own = placedOf(job.id());
        for (int step = 0; step < job.fixed().size(); step++)
            if (!job.fixed().get(step).equals(own.get(step))) broken.add(job.id() + " left what was fixed: " + step);
        boolean unplaced = run.unplaced().contains(job.id());
        int due = unplaced ? job.fixed().size() : job.operations().size();
        if (own.size() != due) {
            broken.add(job.id() + " has " + own.size() + " operations placed, not " + due);
            return;
        }
        if (unplaced) return;
        for (int step = job.fixed().size(); step < due; step++) checkOperation(job, step);
        if (job.fixed().size() < due && own.get(job.fixed().size()).start() < job.release())
            tell(own.get(job.fixed().size()), "starts before its release");
        if (job.fixed().isEmpty()) checkBegin(job, own.get(0));
    }

    private void checkOperation(Job job, int step) {
        Operation operation = job.operations().get(step);
        Placement placement = placedOf(job.id()).get(step);
        Station station = stations.get(placement.station());
        if (!station.stage().equals(operation.stage())) tell(placement, "is not work for this station");
        if (placement.end() - placement.start() != operation.minutes())
            tell(placement, "does not last as long as it must");
        if (placement.end() > day.horizon()) tell(placement, "ends after the day's horizon");
        if (!isWithinOneWindow(placement, station)) tell(placement, "is not whole within one window of the station");
        if (step == 0) return;
        int waited = placement.start() - placedOf(job.id()).get(step - 1).end();
        if (waited < 0) tell(placement, "starts before the step before it has ended");
        if (waited > operation.longestWait()) tell(placement, "waits " + waited + " min, more than it may");
    }

    private static boolean isWithinOneWindow(Placement placement, Station station) {
        return station.open().stream()
                .anyMatch(
                        open -> open.fromInclusive() <= placement.start() && placement.end() <= open.untilExclusive());
    }

    private void checkBegin(Job job, Placement begin) {
        for (Job.After after : job.after()) {
            if (run.unplaced().contains(after.job())) {
                tell(begin, "is made from " + after.job() + ", which is unplaced");
                continue;
            }
            int last = jobs.get(after.job()).operations().size() - 1;
            Placement before = placedOf(after.job()).get(last);
            if (before == null) continue; // told of as a job with too few operations
            int waited = begin.start() - before.end();
            if (waited < 0) tell(begin, "starts before " + after.job() + " has ended");
            if (waited > after.longestWait()) tell(begin, "waits " + waited + " min for " + after.job() + ", too long");
        }
    }

    private void checkScore() {
        if (!broken.isEmpty()) return;
        Score counted = new ScoreCount(day, run).score();
        if (!counted.equals(run.score())) broken.add("the run says " + run.score() + " and counts " + counted);
    }

    private void tell(Placement placement, String what) {
        broken.add(placement.job() + " operation " + placement.operation() + " at " + placement.station() + " from "
                + placement.start() + " to " + placement.end() + " " + what);
    }
}

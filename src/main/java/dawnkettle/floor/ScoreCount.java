package dawnkettle.floor;

import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Counts the score of a run anew from its placements. */
final class ScoreCount {
    private final FloorDay day;
    private final Run run;
    private final Map<String, String> families = new HashMap<>();

    ScoreCount(FloorDay day, Run run) {
        this.day = day;
        this.run = run;
        day.jobs().forEach(job -> families.put(job.id(), job.family()));
    }

    Score score() {
        return new Score(run.unplaced().size(), spoilt(), late(), finish(), changeovers());
    }

    private int spoilt() {
        return run.placements().stream()
                .filter(placement -> placement.operation() == 0)
                .mapToInt(placement -> Math.max(0, placement.start() - latestStart(placement.job())))
                .sum();
    }

    private int latestStart(String id) {
        return day.jobs().stream()
                .filter(job -> job.id().equals(id))
                .findFirst()
                .orElseThrow()
                .latestStart();
    }

    private int late() {
        return day.dues().stream().mapToInt(due -> due.weight() * late(due)).sum();
    }

    private int late(Due due) {
        return placedJobs().stream()
                .filter(job -> job.dues().contains(due.code()))
                .mapToInt(job -> of(job, job.operations().size() - 1).end() - due.minute())
                .reduce(0, Math::max);
    }

    private int finish() {
        return run.placements().stream().mapToInt(Placement::end).max().orElse(0);
    }

    private int changeovers() {
        return day.stations().stream()
                .filter(station -> !station.isShared())
                .mapToInt(this::changeovers)
                .sum();
    }

    private int changeovers(Station station) {
        int count = 0;
        var before = new HashMap<Integer, Placement>();
        for (Placement placement : atWork(station)) {
            Placement last = before.put(placement.place(), placement);
            if (last != null && isChange(station, last, placement)) count++;
        }
        return count;
    }

    private List<Placement> atWork(Station station) {
        return run.placements().stream()
                .filter(placement -> placement.station().equals(station.code()) && placement.end() > placement.start())
                .sorted(Comparator.comparingInt(Placement::start).thenComparingInt(Placement::end))
                .toList();
    }

    private boolean isChange(Station station, Placement before, Placement after) {
        String from = families.get(before.job());
        return MinuteCount.changeover(day, station.code(), from, families.get(after.job())) > 0;
    }

    private List<Job> placedJobs() {
        return day.jobs().stream()
                .filter(job -> !run.unplaced().contains(job.id()))
                .toList();
    }

    private Placement of(Job job, int operation) {
        return run.placements().stream()
                .filter(placement -> placement.job().equals(job.id()) && placement.operation() == operation)
                .findFirst()
                .orElseThrow();
    }
}

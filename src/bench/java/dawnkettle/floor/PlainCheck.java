package dawnkettle.floor;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** A second reading of a day's rules on a table of minutes; it shares no code with the engine or its own check. */
final class PlainCheck {
    private final FloorDay day;
    private final Map<String, Placement[]> rows = new HashMap<>();
    private final List<String> broken = new ArrayList<>();

    private PlainCheck(FloorDay day) {
        this.day = day;
    }

    static List<String> broken(FloorDay day, Run run) {
        var check = new PlainCheck(day);
        for (Job job : day.jobs())
            check.rows.put(job.id(), new Placement[job.operations().size()]);
        for (Placement placement : run.placements()) check.rows.get(placement.job())[placement.operation()] = placement;
        for (Job job : day.jobs()) if (!run.unplaced().contains(job.id())) check.job(job);
        for (Station station : day.stations()) check.station(station);
        check.people();
        check.figures(run);
        return check.broken;
    }

    private void expect(boolean holds, String otherwise) {
        if (!holds) broken.add(otherwise);
    }

    private void job(Job job) {
        Placement[] row = rows.get(job.id());
        for (int step = 0; step < row.length; step++) {
            if (row[step] == null) {
                broken.add(job.id() + " lacks step " + step);
                return;
            }
            Operation asked = job.operations().get(step);
            expect(row[step].end() == row[step].start() + asked.minutes(), job.id() + " length of step " + step);
            expect(row[step].end() <= day.horizon(), job.id() + " beyond the day");
            if (step == 0) continue;
            long gap = (long) row[step].start() - row[step - 1].end();
            expect(gap >= 0 && gap <= asked.longestWait(), job.id() + " gap before step " + step);
        }
        expect(row[0].start() >= job.release(), job.id() + " before its release");
        for (Job.After after : job.after()) {
            Placement[] parent = rows.get(after.job());
            long gap = (long) row[0].start() - parent[parent.length - 1].end();
            expect(gap >= 0 && gap <= after.longestWait(), job.id() + " gap behind " + after.job());
        }
    }

    private void station(Station station) {
        long[] taken = new long[day.horizon() + 1];
        var families = new HashMap<Integer, String[]>();
        for (Job job : day.jobs())
            for (int step = 0; step < job.operations().size(); step++) {
                Placement at = rows.get(job.id())[step];
                if (at == null || !at.station().equals(station.code())) continue;
                expect(station.stage().equals(job.operations().get(step).stage()), job.id() + " at the wrong stage");
                expect(isOpen(station, at), job.id() + " outside of the hours of " + station.code());
                for (int minute = at.start(); minute < at.end(); minute++) {
                    taken[minute] +=
                            station.isShared() ? job.operations().get(step).load() : 1;
                    String[] seen = families.computeIfAbsent(at.place(), place -> new String[day.horizon() + 1]);
                    expect(station.isShared() || seen[minute] == null, job.id() + " two on one place");
                    seen[minute] = job.family();
                }
            }
        long has = station.isShared() ? station.capacity() : station.places();
        for (int minute = 0; minute < taken.length; minute++)
            expect(taken[minute] <= has, station.code() + " too full in minute " + minute);
        if (!station.isShared()) families.values().forEach(seen -> gaps(station, seen));
    }

    private static boolean isOpen(Station station, Placement at) {
        for (Window window : station.open())
            if (window.fromInclusive() <= at.start() && at.end() <= window.untilExclusive()) return true;
        return false;
    }

    private void gaps(Station station, String[] seen) {
        String last = null;
        int free = 0;
        for (int minute = 0; minute < seen.length; minute++) {
            if (seen[minute] == null) {
                free++;
                continue;
            }
            if (last != null && !last.equals(seen[minute])) {
                int asked = 0;
                for (Changeover one : day.changeovers())
                    if (one.station().equals(station.code())
                            && one.fromFamily().equals(last)
                            && one.toFamily().equals(seen[minute])) asked = Math.max(asked, one.minutes());
                expect(free >= asked, station.code() + " changed over too fast before minute " + minute);
            }
            last = seen[minute];
            free = 0;
        }
    }

    private void people() {
        for (int minute = 0; minute < day.horizon(); minute++) {
            int there = 0;
            for (Hands hands : day.hands())
                if (hands.window().fromInclusive() <= minute
                        && minute < hands.window().untilExclusive()) there += hands.halves();
            int busy = 0;
            for (Job job : day.jobs())
                for (Placement at : rows.get(job.id()))
                    if (at != null && at.start() <= minute && minute < at.end())
                        busy += job.operations().get(at.operation()).halfHands();
            expect(busy <= there, "too few hands in minute " + minute);
        }
    }

    private void figures(Run run) {
        int finish = 0;
        int late = 0;
        for (Placement placement : run.placements()) finish = Math.max(finish, placement.end());
        for (Due due : day.dues()) {
            int over = 0;
            for (Job job : day.jobs()) {
                Placement[] row = rows.get(job.id());
                Placement last = row[row.length - 1];
                if (job.dues().contains(due.code()) && last != null) over = Math.max(over, last.end() - due.minute());
            }
            late += due.weight() * over;
        }
        expect(
                finish == run.score().finish(),
                "finish is told as " + run.score().finish());
        expect(
                late == run.score().weightedLateness(),
                "lateness is told as " + run.score().weightedLateness());
    }
}

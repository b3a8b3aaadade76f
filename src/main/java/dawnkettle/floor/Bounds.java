package dawnkettle.floor;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.function.IntPredicate;

/** What no run of a day can beat, proved from each stage, the hands and each job alone. */
public final class Bounds {
    private final Floor floor;
    private final JobRows jobs;
    private final Heads heads;
    private final List<Room> rooms = new ArrayList<>();
    private final List<int[]> stationsOfRoom = new ArrayList<>();

    private Bounds(Floor floor) {
        this.floor = floor;
        jobs = floor.jobs;
        heads = new Heads(floor.day);
        var stages = new LinkedHashSet<String>();
        floor.day.stations().forEach(station -> stages.add(station.stage()));
        for (String stage : stages) addStage(stage);
        rooms.add(Room.ofCrew(floor));
        stationsOfRoom.add(new int[0]);
    }

    private void addStage(String stage) {
        int[] stations = floor.stationsOf(stage);
        long shared = Arrays.stream(stations)
                .filter(number -> floor.day.stations().get(number).isShared())
                .count();
        if (shared != 0 && shared != stations.length) return; // places and grams do not add up
        rooms.add(Room.ofStage(floor, stage, stations));
        stationsOfRoom.add(stations);
    }

    /**
     * The bound of a day. It holds for every run that places all jobs which can be placed at all; the finish besides holds
     * whatever the lateness.
     */
    public static Bound of(FloorDay day) {
        return of(new Floor(day));
    }

    static Bound of(Floor floor) {
        var bounds = new Bounds(floor);
        Ending ending = bounds.ending(job -> true);
        return new Bound(bounds.weightedLateness(), ending.minute, ending.binding);
    }

    /** The earliest minute by which some jobs can all have ended, and what proves it. */
    private record Ending(int minute, String binding) {
        Ending orLater(int other, String its) {
            return other > minute ? new Ending(other, its) : this;
        }
    }

    private Ending ending(IntPredicate awaited) {
        var tails = new Tails(floor, job -> awaited.test(job) && heads.canBePlaced(job));
        var ending = new Ending(0, "");
        for (int job = 0; job < jobs.size(); job++)
            if (tails.ofJob(job) != Tails.NONE)
                ending = ending.orLater(
                        heads.earliestEnd(jobs.last(job)) + tails.ofJob(job),
                        jobs.all.get(job).id());
        for (int room = 0; room < rooms.size(); room++)
            ending = ending.orLater(workload(room, tails).endAtLeast(), rooms.get(room).name);
        return ending;
    }

    private Workload workload(int room, Tails tails) {
        var workload = new Workload(rooms.get(room));
        for (int job = 0; job < jobs.size(); job++) {
            if (tails.ofJob(job) == Tails.NONE) continue;
            for (int operation = jobs.open[job]; operation <= jobs.last(job); operation++) {
                long units = units(room, operation);
                if (units > 0 && floor.minutes[operation] > 0)
                    workload.add(new Workload.Want(
                            heads.earliestStart(operation),
                            floor.minutes[operation],
                            units,
                            tails.ofOperation(job, operation),
                            floor.family[operation]));
            }
        }
        return workload;
    }

    private long units(int room, int operation) {
        int[] stations = stationsOfRoom.get(room);
        if (stations.length == 0) return floor.hands[operation];
        return Arrays.equals(stations, floor.stations[operation]) ? floor.unitsAt(operation, stations[0]) : 0;
    }

    /** The greater of what each due alone proves, summed, and what one due proves with all that leave before it. */
    private int weightedLateness() {
        List<Due> dues = floor.day.dues();
        int alone = 0;
        int together = 0;
        for (int due = 0; due < dues.size(); due++) {
            Due of = dues.get(due);
            int number = due;
            alone += of.weight() * late(of, job -> isAwaitedBy(job, number));
            int lightest = dues.stream()
                    .filter(other -> other.minute() <= of.minute())
                    .mapToInt(Due::weight)
                    .min()
                    .orElse(0);
            together = Math.max(together, lightest * late(of, job -> isAwaitedUntil(job, of.minute())));
        }
        return Math.max(alone, together);
    }

    private int late(Due due, IntPredicate awaited) {
        return Math.max(0, ending(awaited).minute - due.minute());
    }

    private boolean isAwaitedBy(int job, int due) {
        return Arrays.stream(jobs.dues[job]).anyMatch(code -> code == due);
    }

    private boolean isAwaitedUntil(int job, int minute) {
        return Arrays.stream(jobs.dues[job]).anyMatch(code -> jobs.dueMinute[code] <= minute);
    }
}

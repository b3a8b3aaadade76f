package dawnkettle.floor;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;

/** The earliest minute by which some jobs of a day can all have ended, proved from each stage, the hands and each job alone. */
final class Endings {
    private final Floor floor;
    private final JobRows jobs;
    private final Heads heads;
    private final List<Room> rooms = new ArrayList<>();
    private final List<int[]> stationsOfRoom = new ArrayList<>();
    private LastMinutes lastMinutes;

    Endings(Floor floor) {
        this.floor = floor;
        jobs = floor.jobs;
        lastMinutes = LastMinutes.notAsked(floor);
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

    /** The earliest minute by which some jobs can all have ended, and what proves it. */
    record Ending(int minute, String binding) {
        Ending orLater(Ending other) {
            return other.minute > minute ? other : this;
        }
    }

    /** What proves most of all. */
    Ending of(IntPredicate awaited) {
        Tails tails = tails(awaited);
        Ending ending = alone(tails);
        for (int room = 0; room < rooms.size(); room++) ending = ending.orLater(in(room, tails));
        for (int room = 0; room < rooms.size(); room++) ending = ending.orLater(byCounts(room, tails, ending.minute()));
        return ending;
    }

    /** As {@link #of}, for runs that keep every due. */
    Ending inTime(IntPredicate awaited) {
        LastMinutes notAsked = lastMinutes;
        lastMinutes = LastMinutes.toKeepDues(floor);
        Ending ending = of(awaited);
        lastMinutes = notAsked;
        return ending;
    }

    /** What proves most among each job alone. */
    Ending alone(IntPredicate awaited) {
        return alone(tails(awaited));
    }

    private Ending alone(Tails tails) {
        var ending = new Ending(0, "");
        for (int job = 0; job < jobs.size(); job++)
            if (tails.ofJob(job) != Tails.NONE) ending = ending.orLater(alone(job, tails));
        return ending;
    }

    private Ending alone(int job, Tails tails) {
        int end = heads.earliestEnd(jobs.last(job)) + tails.ofJob(job);
        return new Ending(end, jobs.all.get(job).id());
    }

    /** What one room proves. */
    Ending in(int room, IntPredicate awaited) {
        return in(room, tails(awaited));
    }

    private Ending in(int room, Tails tails) {
        return new Ending(workload(room, tails).endAtLeast(), rooms.get(room).name);
    }

    /** Orders of jobs that waste least of the place with changeovers that ends last, in time if that can be. */
    List<int[]> ordersByPlace() {
        LastMinutes notAsked = lastMinutes;
        lastMinutes = LastMinutes.toKeepDues(floor);
        List<int[]> orders = ordersOfLatest();
        lastMinutes = notAsked;
        return orders.isEmpty() ? ordersOfLatest() : orders;
    }

    private List<int[]> ordersOfLatest() {
        Tails tails = tails(job -> true);
        return IntStream.range(0, rooms.size())
                .filter(room -> rooms.get(room).changesOver())
                .boxed()
                .max(Comparator.comparingInt(room -> in(room, tails).minute()))
                .map(room -> workload(room, tails).jobsInOrder())
                .orElse(List.of());
    }

    private Ending byCounts(int room, Tails tails, int minute) {
        return new Ending(workload(room, tails).endByCounts(minute), rooms.get(room).name);
    }

    int rooms() {
        return rooms.size();
    }

    /** The awaited jobs that want a room, those first that are the longest on their way and take the most of it. */
    List<Integer> hardestFirst(int room, IntPredicate awaited) {
        Tails tails = tails(awaited);
        return IntStream.range(0, jobs.size())
                .filter(job -> awaited.test(job) && hardness(room, job, tails) > 0)
                .boxed()
                .sorted(Comparator.comparingLong((Integer job) -> -hardness(room, job, tails)))
                .toList();
    }

    private long hardness(int room, int job, Tails tails) {
        long hardest = 0;
        for (int operation = jobs.open[job]; operation <= jobs.last(job); operation++) {
            long work = units(room, operation) * floor.minutes[operation];
            int way = heads.earliestStart(operation) + tails.ofOperation(job, operation);
            if (work > 0) hardest = Math.max(hardest, way + work);
        }
        return hardest;
    }

    private Tails tails(IntPredicate awaited) {
        return new Tails(floor, job -> awaited.test(job) && heads.canBePlaced(job));
    }

    private Workload workload(int room, Tails tails) {
        var workload = new Workload(rooms.get(room), placesBefore(room, tails));
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
                            floor.family[operation],
                            new Workload.Ties(
                                    job,
                                    new Workload.Last(lastMinutes.due(operation), lastMinutes.minute(operation)),
                                    before(job, operation))));
            }
        }
        return workload;
    }

    private Workload.Before before(int job, int operation) {
        return operation == jobs.first[job]
                ? new Workload.Before(0, 0)
                : new Workload.Before(heads.earliestStart(operation - 1), floor.minutes[operation - 1]);
    }

    /** Places of the one stage from which every job comes to a room at once; 0 where there is none, or something is fixed there. */
    private int placesBefore(int room, Tails tails) {
        int[] before = null;
        for (int job = 0; job < jobs.size(); job++) {
            if (tails.ofJob(job) == Tails.NONE) continue;
            for (int operation = jobs.open[job]; operation <= jobs.last(job); operation++) {
                if (units(room, operation) == 0 || floor.minutes[operation] == 0) continue;
                if (operation == jobs.first[job]) return 0;
                if (before == null) before = floor.stations[operation - 1];
                if (!Arrays.equals(before, floor.stations[operation - 1])) return 0;
            }
        }
        return before == null ? 0 : places(before);
    }

    private int places(int[] stations) {
        for (int station : stations)
            if (floor.hasFixed[station] || floor.day.stations().get(station).isShared()) return 0;
        for (int room = 0; room < rooms.size(); room++)
            if (stations.length > 0 && Arrays.equals(stationsOfRoom.get(room), stations))
                return Math.toIntExact(rooms.get(room).most());
        return 0;
    }

    private long units(int room, int operation) {
        int[] stations = stationsOfRoom.get(room);
        if (stations.length == 0) return floor.hands[operation];
        return Arrays.equals(stations, floor.stations[operation]) ? floor.unitsAt(operation, stations[0]) : 0;
    }
}

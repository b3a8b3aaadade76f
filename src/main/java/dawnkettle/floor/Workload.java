package dawnkettle.floor;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The operations that want one room, and how early the last job behind them can end: the subset bound of Carlier (1987) for
 * identical machines, with units instead of machines, and the same counted in the minutes that windows and breaks leave.
 */
final class Workload {
    /** Of the earliest starts as thresholds so many are tried; each alone is a valid bound. */
    private static final int THRESHOLDS = 96;

    /** The same for the orders of families. */
    private static final int ORDERS = 12;

    /** What an operation wants: from when, how long, how many units, and how long the job goes on behind it. */
    record Want(int head, int minutes, long units, int tail, int family, Ties ties) {}

    /** What ties an operation to others: its job, by when it is asked for, and what its job did before. */
    record Ties(int job, Last last, Before before) {}

    /** The operation before it: from when at the earliest, and how long. */
    record Before(int head, int minutes) {}

    /** A last minute, where a due is to be kept, and the due that asks it. */
    record Last(int due, int minute) {}

    private final Room room;
    private final List<Want> wants = new ArrayList<>();
    private final int placesBefore;

    /** @param placesBefore places of the stage that all jobs come from at once; 0 where they don't */
    Workload(Room room, int placesBefore) {
        this.room = room;
        this.placesBefore = placesBefore;
    }

    void add(Want want) {
        wants.add(want);
    }

    int endAtLeast() {
        wants.sort(Comparator.comparingInt(Want::tail).reversed());
        int[] heads = wants.stream().mapToInt(Want::head).distinct().sorted().toArray();
        int step = Math.max(1, heads.length / THRESHOLDS);
        int end = 0;
        for (int at = 0; at < heads.length; at += step) end = Math.max(end, endAtLeast(heads[at]));
        if (room.changesOver()) {
            int leap = Math.max(1, heads.length / ORDERS);
            for (int at = 0; at < heads.length; at += leap) end = Math.max(end, endInBestOrder(heads[at]));
        }
        return end;
    }

    /** The first minute from the given one on that the numbers of jobs done by family do not rule out. */
    int endByCounts(int minute) {
        return room.changesOver() ? room.endByCounts(wants, placesBefore, minute) : minute;
    }

    /** Jobs in orders that waste least of the only place: those that came first, or are asked for first, first in a family. */
    List<int[]> jobsInOrder() {
        if (!room.changesOver()) return List.of();
        int end = endByCounts(endAtLeast());
        var counts = new FamilyCounts(room.setup(), wants, placesBefore);
        Comparator<Want> came = Comparator.comparingInt(Want::head);
        Comparator<Want> asked = Comparator.comparingInt(want -> want.ties.last.minute);
        return Stream.of(
                        came.thenComparing(asked),
                        asked.thenComparing(Comparator.comparingInt(Want::tail).reversed()))
                .map(order -> counts.orderBy(end, order).stream()
                        .mapToInt(want -> want.ties.job)
                        .distinct()
                        .toArray())
                .filter(order -> order.length > 1)
                .toList();
    }

    /** The changeover bound of those that start no earlier than the threshold, where all of them can keep their last minute. */
    private int endInBestOrder(int threshold) {
        var families = new ArrayList<List<FamilyOrder.Part>>();
        for (int family = 0; family < room.families(); family++) {
            int number = family;
            families.add(parts(
                    wants.stream()
                            .filter(want -> want.family() == number && want.head() >= threshold)
                            .toList(),
                    threshold));
        }
        return threshold + room.shortestOrder(families);
    }

    private static List<FamilyOrder.Part> parts(List<Want> family, int threshold) {
        int tail = family.stream().mapToInt(Want::tail).min().orElse(0);
        Map<Integer, List<Want>> byDue = family.stream().collect(Collectors.groupingBy(want -> want.ties.last.due));
        return byDue.values().stream()
                .map(part -> part(part, tail, threshold))
                .sorted(Comparator.comparingInt(FamilyOrder.Part::lastMinute))
                .toList();
    }

    /** What one due asks for counts as due when the last of it is. */
    private static FamilyOrder.Part part(List<Want> wants, int tail, int threshold) {
        int minutes = wants.stream().mapToInt(Want::minutes).sum();
        int last = wants.stream().mapToInt(want -> want.ties.last.minute).max().orElse(0);
        return new FamilyOrder.Part(minutes, tail, last - threshold);
    }

    /** For all sets of operations that start no earlier than the threshold and have at least some tail. */
    private int endAtLeast(int threshold) {
        var subset = new Subset(room);
        int end = 0;
        for (Want want : wants) {
            if (want.head() < threshold) continue;
            subset.add(want);
            end = Math.max(end, subset.endAtLeast());
        }
        return end;
    }
}

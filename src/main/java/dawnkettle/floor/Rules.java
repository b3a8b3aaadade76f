package dawnkettle.floor;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.ToIntFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** The orders in which a foreman might start the jobs: by release, by due, by slack, by work, by family. */
final class Rules {
    private final JobRows jobs;
    private final int[] work;
    private final int[] due;
    private final int[] family;

    Rules(Floor floor) {
        jobs = floor.jobs;
        work = new int[jobs.size()];
        due = new int[jobs.size()];
        family = new int[jobs.size()];
        for (int job = 0; job < jobs.size(); job++) {
            for (int operation = jobs.first[job]; operation <= jobs.last(job); operation++)
                work[job] += floor.minutes[operation];
            family[job] = floor.family[jobs.first[job]];
            due[job] = floor.day.horizon();
            for (int code : jobs.dues[job]) due[job] = Math.min(due[job], jobs.dueMinute[code]);
        }
        for (int round = 0; round < jobs.size() && hurryParents(); round++) continue;
    }

    /** A job is due before its children can be made from it. */
    private boolean hurryParents() {
        boolean changed = false;
        for (int job = 0; job < jobs.size(); job++)
            for (int parent : jobs.parents[job]) {
                if (due[parent] <= due[job] - work[job]) continue;
                due[parent] = due[job] - work[job];
                changed = true;
            }
        return changed;
    }

    /** Every order holds each job that is not over once, those under way first, none before what it is made from. */
    List<int[]> orders() {
        ToIntFunction<Integer> release = job -> jobs.release[job];
        ToIntFunction<Integer> latest = job -> jobs.latestStart[job];
        ToIntFunction<Integer> byDue = job -> due[job];
        ToIntFunction<Integer> slack = job -> due[job] - work[job];
        ToIntFunction<Integer> mostWork = job -> -work[job];
        ToIntFunction<Integer> byFamily = job -> family[job];
        return List.of(
                order(List.of(release)),
                order(List.of(byDue)),
                order(List.of(byDue, mostWork)),
                order(List.of(byDue, byFamily, mostWork)),
                order(List.of(slack)),
                order(List.of(mostWork)),
                order(List.of(byFamily, byDue)),
                order(List.of(latest, byDue)));
    }

    private int[] order(List<ToIntFunction<Integer>> keys) {
        Comparator<Integer> rule = Comparator.comparing(job -> !jobs.hasStarted(job));
        for (ToIntFunction<Integer> key : keys) rule = rule.thenComparingInt(key);
        var sorted = IntStream.range(0, jobs.size())
                .filter(job -> !jobs.isOver(job))
                .boxed()
                .sorted(rule.thenComparing(Comparator.naturalOrder()))
                .toList();
        var order = new ArrayList<Integer>();
        var seen = new boolean[jobs.size()];
        for (int job : sorted) addWithParents(job, seen, order);
        return order.stream().mapToInt(Integer::intValue).toArray();
    }

    /** The jobs of an order with some of them in another, on the places that these had; parents first all the same. */
    int[] with(int[] order, int[] others) {
        var moved = Arrays.stream(others).boxed().collect(Collectors.toSet());
        var next = Arrays.stream(others).iterator();
        var mixed = new ArrayList<Integer>();
        var seen = new boolean[jobs.size()];
        for (int job : order) addWithParents(moved.contains(job) ? next.nextInt() : job, seen, mixed);
        return mixed.stream().mapToInt(Integer::intValue).toArray();
    }

    private void addWithParents(int job, boolean[] seen, List<Integer> order) {
        if (seen[job] || jobs.isOver(job)) return;
        seen[job] = true;
        for (int parent : jobs.parents[job]) addWithParents(parent, seen, order);
        order.add(job);
    }
}

package dawnkettle.floor;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.IntToLongFunction;
import java.util.function.ToLongFunction;

/** Counts a run minute by minute: jobs on each place, load of each shared station, people; and the gaps between families. */
final class MinuteCount {
    private final FloorDay day;
    private final List<Placement> placements;
    private final Set<Placement> fixed = new HashSet<>();
    private final Map<String, Job> jobs = new HashMap<>();
    private final List<String> broken = new ArrayList<>();

    MinuteCount(FloorDay day, List<Placement> placements) {
        this.day = day;
        this.placements = placements;
        for (Job job : day.jobs()) {
            jobs.put(job.id(), job);
            fixed.addAll(job.fixed());
        }
    }

    List<String> broken() {
        day.stations().forEach(this::checkStation);
        checkHands();
        return broken;
    }

    private void checkStation(Station station) {
        var here = placements.stream()
                .filter(placement -> placement.station().equals(station.code()))
                .filter(placement -> placement.end() > placement.start())
                .toList();
        if (station.isShared()) {
            checkSum("load on " + station.code(), here, new Limit(this::load, minute -> station.capacity()));
            return;
        }
        for (int place = 0; place < station.places(); place++) {
            int number = place;
            var onPlace = here.stream().filter(p -> p.place() == number).toList();
            checkSum("jobs on " + station.code() + " place " + place, onPlace, new Limit(p -> 1, minute -> 1));
            checkGaps(station, onPlace);
        }
    }

    private void checkHands() {
        checkSum(
                "half people",
                placements,
                new Limit(placement -> operation(placement).halfHands(), this::halves));
    }

    /** What each placement takes, and how much a minute has. */
    private record Limit(ToLongFunction<Placement> takes, IntToLongFunction has) {}

    /** A minute that is over its limit by what has happened alone is nobody's fault. */
    private void checkSum(String what, List<Placement> users, Limit limit) {
        var taken = new TreeMap<Integer, Long>();
        var planned = new HashSet<Integer>();
        for (Placement user : users) {
            long takes = limit.takes.applyAsLong(user);
            if (takes == 0) continue;
            for (int minute = user.start(); minute < user.end(); minute++) {
                taken.merge(minute, takes, Long::sum);
                if (!fixed.contains(user)) planned.add(minute);
            }
        }
        for (var minute : taken.entrySet()) {
            long has = limit.has.applyAsLong(minute.getKey());
            if (minute.getValue() <= has || !planned.contains(minute.getKey())) continue;
            broken.add(
                    "minute " + minute.getKey() + ": " + what + " are " + minute.getValue() + ", not at most " + has);
            return;
        }
    }

    private void checkGaps(Station station, List<Placement> onPlace) {
        var ordered = new ArrayList<>(onPlace);
        ordered.sort(Comparator.comparingInt(Placement::start).thenComparingInt(Placement::end));
        for (int number = 1; number < ordered.size(); number++) {
            Placement before = ordered.get(number - 1);
            Placement after = ordered.get(number);
            if (fixed.contains(before) && fixed.contains(after)) continue;
            int needed = changeover(day, station.code(), family(before), family(after));
            if (after.start() - before.end() < needed)
                broken.add(station.code() + " place " + after.place() + " is not changed over from " + before.job()
                        + " to " + after.job() + " at " + after.start() + ": it takes " + needed + " min");
        }
    }

    static int changeover(FloorDay day, String station, String fromFamily, String toFamily) {
        return day.changeovers().stream()
                .filter(c -> c.station().equals(station))
                .filter(c -> c.fromFamily().equals(fromFamily) && c.toFamily().equals(toFamily))
                .mapToInt(Changeover::minutes)
                .max()
                .orElse(0);
    }

    private long halves(int minute) {
        return day.hands().stream()
                .filter(hands -> hands.window().fromInclusive() <= minute
                        && minute < hands.window().untilExclusive())
                .mapToLong(Hands::halves)
                .sum();
    }

    private long load(Placement placement) {
        return operation(placement).load();
    }

    private Operation operation(Placement placement) {
        return jobs.get(placement.job()).operations().get(placement.operation());
    }

    private String family(Placement placement) {
        return jobs.get(placement.job()).family();
    }
}

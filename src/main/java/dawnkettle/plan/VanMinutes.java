package dawnkettle.plan;

import dawnkettle.floor.Placement;
import java.util.HashMap;
import java.util.Map;
import java.util.TreeMap;

/** By how many minutes each van is packed late in a run, as far as it is late. */
final class VanMinutes {
    private VanMinutes() {}

    static Map<String, Integer> late(Wants wants, Attempt.Outcome outcome) {
        Map<String, Integer> ends = new HashMap<>();
        for (Placement placement : outcome.run().placements()) ends.merge(placement.job(), placement.end(), Math::max);
        Map<String, Integer> late = new TreeMap<>();
        for (OpenLine line : wants.lines) {
            Van van = wants.vans.get(line.due);
            if (van == null) continue;
            line.gifts.stream()
                    .flatMap(gift -> gift.brew().stream())
                    .mapToInt(brew -> ends.getOrDefault(brew.name, 0) - van.packByMinute())
                    .filter(minutes -> minutes > 0)
                    .forEach(minutes -> late.merge(van.due(), minutes, Math::max));
        }
        return late;
    }
}

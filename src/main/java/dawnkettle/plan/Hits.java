package dawnkettle.plan;

import dawnkettle.floor.Hands;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Which batches of the sheet on the wall a disruption touches: those at a station that stands, those that lack hands. */
final class Hits {
    private final DayPlan before;
    private final Evening evening;
    private final DayClock clock;
    private final List<Hands> there;
    private final Set<String> hit = new LinkedHashSet<>();

    /** @param there hands that are there, without who is missing */
    Hits(DayPlan before, Evening evening, DayClock clock, List<Hands> there) {
        this.before = before;
        this.evening = evening;
        this.clock = clock;
        this.there = there;
    }

    void add(String batch) {
        hit.add(batch);
    }

    /** The batches of {@code kept} that can't stay, with all that is made from them. */
    Set<String> of(Collection<Brew> kept) {
        Set<String> own = new LinkedHashSet<>();
        kept.forEach(brew -> own.add(brew.name));
        before.operations().stream()
                .filter(step -> own.contains(step.batch()) && !isBegun(step) && stands(step))
                .forEach(step -> hit.add(step.batch()));
        if (!evening.committed().disruption().hands().isEmpty()) lackHands(own);
        int known;
        do {
            known = hit.size();
            for (PlannedBatch batch : before.batches())
                if (hit.contains(batch.id())) batch.feeds().forEach(feed -> hit.add(feed.batch()));
        } while (hit.size() > known);
        hit.retainAll(own);
        return hit;
    }

    private boolean isBegun(PlannedOperation step) {
        return step.start().isBefore(evening.now());
    }

    private boolean stands(PlannedOperation step) {
        return evening.committed().disruption().stations().stream()
                .anyMatch(down -> down.station().equals(step.station())
                        && step.start().isBefore(down.span().until())
                        && down.span().from().isBefore(step.end()));
    }

    /** Who began keeps the hands, then who is to begin first; the others are hit. */
    private void lackHands(Set<String> own) {
        Map<Integer, Integer> bound = new HashMap<>();
        List<PlannedOperation> ahead = new ArrayList<>();
        for (PlannedOperation step : before.operations()) {
            if (!own.contains(step.batch()) || step.halfHands() == 0) continue;
            if (isBegun(step)) bind(bound, step, 1);
            else ahead.add(step);
        }
        Map<String, Instant> begins = new HashMap<>();
        before.operations().forEach(step -> begins.merge(step.batch(), step.start(), (a, b) -> a.isBefore(b) ? a : b));
        ahead.sort(Comparator.comparing((PlannedOperation step) -> begins.get(step.batch()))
                .thenComparing(PlannedOperation::batch)
                .thenComparing(PlannedOperation::seq));
        for (PlannedOperation step : ahead) {
            bind(bound, step, 1);
            if (isOver(bound, step)) {
                bind(bound, step, -1);
                hit.add(step.batch());
            }
        }
    }

    private void bind(Map<Integer, Integer> bound, PlannedOperation step, int sign) {
        for (int minute = clock.minute(step.start()); minute < clock.minute(step.end()); minute++)
            bound.merge(minute, sign * step.halfHands(), Integer::sum);
    }

    private boolean isOver(Map<Integer, Integer> bound, PlannedOperation step) {
        for (int minute = clock.minute(step.start()); minute < clock.minute(step.end()); minute++)
            if (bound.get(minute) > there(minute)) return true;
        return false;
    }

    private int there(int minute) {
        return there.stream()
                .filter(hands -> hands.window().fromInclusive() <= minute
                        && minute < hands.window().untilExclusive())
                .mapToInt(Hands::halves)
                .sum();
    }
}

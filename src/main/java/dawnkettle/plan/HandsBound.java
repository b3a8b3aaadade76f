package dawnkettle.plan;

import dawnkettle.plan.DayFloor.DayHands;
import dawnkettle.plan.DayFloor.Span;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;

/** How many half people a plan binds, between the instants at which that changes. */
final class HandsBound {
    private final DayPlan plan;

    HandsBound(DayPlan plan) {
        this.plan = plan;
    }

    /** From the first until the last instant within {@code within} at which fewer than {@code spare} half people are free. */
    Optional<Span> beyond(int spare, Span within) {
        TreeSet<Instant> edges = new TreeSet<>(List.of(within.from(), within.until()));
        for (PlannedOperation step : plan.operations()) edges.addAll(List.of(step.start(), step.end()));
        for (DayHands hands : plan.floor().hands())
            edges.addAll(List.of(hands.span().from(), hands.span().until()));
        List<Instant> tight = edges.subSet(within.from(), within.until()).stream()
                .filter(at -> bound(at) > 0 && there(at) - bound(at) < spare)
                .toList();
        return tight.stream()
                .min(Comparator.naturalOrder())
                .map(first -> new Span(first, edges.higher(tight.get(tight.size() - 1))));
    }

    private int bound(Instant at) {
        return plan.operations().stream()
                .filter(step -> !step.start().isAfter(at) && at.isBefore(step.end()))
                .mapToInt(PlannedOperation::halfHands)
                .sum();
    }

    private int there(Instant at) {
        return plan.floor().hands().stream()
                .filter(hands -> !hands.span().from().isAfter(at)
                        && at.isBefore(hands.span().until()))
                .mapToInt(DayHands::halfHands)
                .sum();
    }
}

package dawnkettle.plan;

import dawnkettle.floor.Budget;
import dawnkettle.floor.Run;
import dawnkettle.floor.Station;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;

/** How far a run is, at most, from the best possible. */
final class RunQuality {
    private final DayClock clock;

    RunQuality(DayClock clock) {
        this.clock = clock;
    }

    Quality of(Attempt.Outcome outcome, Budget budget, List<PlannedRoute> routes) {
        Run run = outcome.run();
        int first = firstPossibleStart(outcome);
        int bound = Math.max(run.bound().finish(), first + 1);
        int finish = Math.max(run.score().finish(), bound);
        BigDecimal gap = BigDecimal.valueOf(finish - bound)
                .multiply(BigDecimal.valueOf(100))
                .divide(BigDecimal.valueOf(bound - first), 1, RoundingMode.UP);
        return new Quality(
                routes.stream().mapToInt(PlannedRoute::lateMinutes).sum(),
                clock.instant(run.score().finish()),
                clock.instant(Math.min(bound, run.score().finish())),
                gap,
                outcome.decodes(),
                budget.decodes(),
                run.stoppedEarly());
    }

    /** The first minute at which any batch could have been begun: its beans ready and a station of its first step open. */
    private static int firstPossibleStart(Attempt.Outcome outcome) {
        int first = Integer.MAX_VALUE;
        for (Brew brew : outcome.brews()) {
            if (!brew.parents.isEmpty()) continue;
            int ready = brew.soaks.stream()
                    .mapToInt(share -> share.tub().ready)
                    .max()
                    .orElse(0);
            String stage = brew.recipe.steps().get(0).stage();
            for (Station station : outcome.floor().stations())
                if (station.stage().equals(stage))
                    for (var window : station.open())
                        if (window.untilExclusive() > ready)
                            first = Math.min(first, Math.max(window.fromInclusive(), ready));
        }
        return first == Integer.MAX_VALUE ? 0 : first;
    }
}

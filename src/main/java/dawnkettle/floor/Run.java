package dawnkettle.floor;

import java.util.List;

/**
 * A run of the day that breaks no rule.
 *
 * @param placements by start, then job, then operation
 * @param unplaced ids of jobs that the day had no room for (and of jobs made from them)
 * @param first the score of the first plan, before any search
 * @param stoppedEarly true where the guard ended the search, so that another try may differ
 */
public record Run(
        List<Placement> placements,
        List<String> unplaced,
        Score score,
        Score first,
        Bound bound,
        long decodes,
        boolean stoppedEarly) {
    public Run {
        placements = List.copyOf(placements);
        unplaced = List.copyOf(unplaced);
    }
}

package dawnkettle.floor;

import java.util.Comparator;

/**
 * How good a run is; the lesser is the better, in this order.
 *
 * @param unplaced jobs for which the day had no room
 * @param spoiltMinutes minutes by which first operations start after their latest start, summed, fixed ones too
 * @param weightedLateness minutes late of each due's last job, times the due's weight, summed
 * @param finish minute at which the last operation ends
 */
public record Score(int unplaced, int spoiltMinutes, int weightedLateness, int finish, int changeovers)
        implements Comparable<Score> {
    private static final Comparator<Score> ORDER = Comparator.comparingInt(Score::unplaced)
            .thenComparingInt(Score::spoiltMinutes)
            .thenComparingInt(Score::weightedLateness)
            .thenComparingInt(Score::finish)
            .thenComparingInt(Score::changeovers);

    @Override
    public int compareTo(Score other) {
        return ORDER.compare(this, other);
    }
}

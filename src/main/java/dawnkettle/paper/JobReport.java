package dawnkettle.paper;

import java.util.OptionalInt;

/**
 * What the queue says of a job.
 *
 * @param impressions sides of paper that are printed, where it counts them (RFC 8011, 5.3.18.2)
 */
record JobReport(JobState state, OptionalInt impressions) {
    static final JobReport NONE = new JobReport(JobState.UNKNOWN, OptionalInt.empty());

    /** A count that cannot be right: some sides, but not even one copy of every page. Nought is a queue that does not count. */
    boolean isShortOf(int pages, boolean onTwoSides) {
        int least = onTwoSides ? (pages + 1) / 2 : pages; // some count leaves
        return impressions.isPresent() && impressions.getAsInt() > 0 && impressions.getAsInt() < least;
    }

    boolean counted(int pages) {
        return impressions.orElse(0) >= pages;
    }
}

package dawnkettle.paper;

import java.util.OptionalInt;

/**
 * What the queue says of a job.
 *
 * @param impressions sides of paper that are printed, where it counts them (RFC 8011, 5.3.18.2)
 */
record JobReport(JobState state, OptionalInt impressions) {
    static final JobReport NONE = new JobReport(JobState.UNKNOWN, OptionalInt.empty());

    /**
     * A count that cannot be right: some sides, but not even one copy of every page. Nought is a queue that does not
     * count, and no more than the copies is one that counts documents (both seen of CUPS 2.4.2 and its test printer).
     */
    boolean isShortOf(JobTicket ticket) {
        boolean onTwoSides =
                ticket.sides().filter(sides -> !sides.equals("one-sided")).isPresent();
        int least = onTwoSides ? (ticket.pages() + 1) / 2 : ticket.pages(); // some count leaves
        return impressions.orElse(0) > ticket.copies() && impressions.getAsInt() < least;
    }

    boolean counted(int pages) {
        return impressions.orElse(0) >= pages;
    }
}

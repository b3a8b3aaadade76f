package dawnkettle.floor;

import java.util.List;

/**
 * One batch as the floor sees it.
 *
 * @param family what changeovers go by
 * @param release first minute its first operation may start, or the first that is not fixed
 * @param latestStart last minute its first operation may start before what it is made from spoils
 * @param after jobs it is made from
 * @param dues codes of the dues that wait for it
 * @param fixed placements that have happened or are frozen: its first operations, in order
 */
public record Job(
        String id,
        String family,
        int release,
        int latestStart,
        List<Operation> operations,
        List<After> after,
        List<String> dues,
        List<Placement> fixed) {
    public Job {
        operations = List.copyOf(operations);
        after = List.copyOf(after);
        dues = List.copyOf(dues);
        fixed = List.copyOf(fixed);
    }

    /** A job that must have ended before this one starts, and how long this one may then wait at most. */
    public record After(String job, int longestWait) {}
}

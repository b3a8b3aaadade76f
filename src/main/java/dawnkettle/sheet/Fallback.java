package dawnkettle.sheet;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * What is made when no plan comes: the same weekday of last week, and the standing orders.
 *
 * @param forDay the production day it would stand in for
 * @param lastWeek the production day it is taken from
 * @param madeAt the planning clock
 */
public record Fallback(LocalDate forDay, LocalDate lastWeek, Instant madeAt, List<Line> lines) {
    public Fallback {
        lines = List.copyOf(lines);
    }

    /** What of it goes out to whom. */
    List<Given> given() {
        return lines.stream()
                .map(line -> new Given(line.route(), line.customer(), line.product(), line.packs(), Optional.empty()))
                .toList();
    }

    /**
     * One product for one customer.
     *
     * @param lastWeekPacks what they were given a week before
     * @param standingPacks what their standing order says
     */
    public record Line(String route, String customer, String product, int lastWeekPacks, int standingPacks) {
        /** The larger of both: last week's lines hold the standing orders already. */
        public int packs() {
            return Math.max(lastWeekPacks, standingPacks);
        }
    }
}

package dawnkettle.plan;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.OptionalInt;

/**
 * Which plan this is.
 *
 * @param revision counted from 1 within the production date
 * @param revisionOf the revision it replaces
 * @param computedAt the planning clock
 * @param seed what the search was seeded with
 */
public record Heading(
        LocalDate productionDate,
        int revision,
        OptionalInt revisionOf,
        Instant computedAt,
        ZoneId zone,
        long seed,
        Mode mode,
        List<Frozen> frozen) {
    public Heading {
        frozen = List.copyOf(frozen);
    }

    /** How much of the computation could be had, best first. */
    public enum Mode {
        FULL("full"),
        NO_SEARCH("no-search"),
        ORDERS_ONLY("orders-only"),
        LAST_WEEK("last-week");

        private final String word;

        Mode(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    /**
     * Something that had happened when the plan was made, and that it does not change.
     *
     * @param kind what sort of fact
     * @param id the tub, batch, lot or route
     */
    public record Frozen(Kind kind, String id, Instant at) {
        /** What sorts of facts there are. */
        public enum Kind {
            TUB_FILLED,
            BATCH_STARTED,
            LOT_LABELLED,
            ROUTE_GONE,
            /** Nothing of a batch that was started can be used. */
            BATCH_LOST;

            public String word() {
                return name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
            }
        }
    }
}

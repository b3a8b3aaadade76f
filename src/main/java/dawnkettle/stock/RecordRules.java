package dawnkettle.stock;

import java.util.List;
import java.util.Set;

/**
 * Which records the shop wants of every batch, and how long it waits for them.
 *
 * @param required records that fall due; of the others none does
 * @param graceMinutes after a record fell due until it is overdue
 */
public record RecordRules(Set<Wanted> required, int graceMinutes) {
    /** Nothing falls due: what is measured out of limits is held all the same. */
    public static final RecordRules NONE = new RecordRules(Set.of(), 120);

    /** A record that can be required of a batch. */
    public enum Wanted {
        COOKED,
        COOLED,
        YIELD;

        public static final List<Wanted> ALL = List.of(values());
    }

    public RecordRules {
        required = Set.copyOf(required);
    }
}

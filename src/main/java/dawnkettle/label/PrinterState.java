package dawnkettle.label;

import java.util.EnumSet;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/**
 * What a printer said of itself.
 *
 * @param remaining labels it still has to bring out, the one under the head among them; empty where it does not say
 */
public record PrinterState(Set<Condition> conditions, OptionalInt remaining) {
    public PrinterState {
        conditions = conditions.isEmpty() ? Set.of() : Set.copyOf(EnumSet.copyOf(conditions));
    }

    PrinterState and(Set<Condition> more) {
        Set<Condition> all = EnumSet.noneOf(Condition.class);
        all.addAll(conditions);
        all.addAll(more);
        return new PrinterState(all, remaining);
    }

    /** The condition that keeps it from printing, the most telling first. */
    public Optional<Condition> stop() {
        return conditions.stream().filter(Condition::stops).min(java.util.Comparator.naturalOrder());
    }

    public boolean isBusy() {
        return conditions.contains(Condition.BUSY) || remaining.orElse(0) > 0;
    }
}

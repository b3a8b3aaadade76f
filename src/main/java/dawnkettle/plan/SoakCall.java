package dawnkettle.plan;

import dawnkettle.measure.Mass;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;

/**
 * The first decision: beans that must be put to soak before the book closes. Once a tub is filled it is not taken back.
 *
 * @param decidedAt when it was decided
 * @param tubs the tubs to fill, in the order of filling; {@code batches} is empty, nothing is decided of them yet
 * @param notes what the evening hand and the owner should know
 */
public record SoakCall(
        LocalDate productionDate,
        Instant decidedAt,
        List<PlannedSoak> tubs,
        List<GroupMass> groups,
        List<String> notes) {
    public SoakCall {
        tubs = List.copyOf(tubs);
        groups = List.copyOf(groups);
        notes = List.copyOf(notes);
    }

    /** Dry beans of one soak group. */
    public record GroupMass(String soakGroup, Mass beans) {}

    public boolean isEmpty() {
        return tubs.isEmpty();
    }
}

package dawnkettle.plan;

import dawnkettle.plan.DayFloor.Span;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/**
 * What goes otherwise than the shop is written down: batches that are lost, hands that are missing, stations that stand.
 *
 * @param hands half people fewer than planned; stretches may overlap
 */
public record Disruption(List<LostBatch> batches, List<FewerHands> hands, List<StationDown> stations) {
    public static final Disruption NONE = new Disruption(List.of(), List.of(), List.of());

    public Disruption {
        batches = List.copyOf(batches);
        hands = List.copyOf(hands);
        stations = List.copyOf(stations);
    }

    /** A batch of the plan before of which nothing can be used; not begun yet, it is given up and its beans are free. */
    public record LostBatch(String batch, Instant at) {}

    /** Half people missing in a stretch. */
    public record FewerHands(Span span, int halfHands) {}

    /** A station at which nothing is done in a stretch. */
    public record StationDown(String station, Span span) {}

    public static Disruption lost(String batch, Instant at) {
        return new Disruption(List.of(new LostBatch(batch, at)), List.of(), List.of());
    }

    public static Disruption fewer(int halfHands, Span span) {
        return new Disruption(List.of(), List.of(new FewerHands(span, halfHands)), List.of());
    }

    public static Disruption down(String station, Span span) {
        return new Disruption(List.of(), List.of(), List.of(new StationDown(station, span)));
    }

    /** Both together. */
    public Disruption and(Disruption other) {
        return new Disruption(
                joined(batches, other.batches), joined(hands, other.hands), joined(stations, other.stations));
    }

    private static <T> List<T> joined(List<T> one, List<T> other) {
        List<T> all = new ArrayList<>(one);
        all.addAll(other);
        return all;
    }

    /** What of it is of the workroom. */
    Disruption ofRoom() {
        return new Disruption(List.of(), hands, stations);
    }

    public boolean isNone() {
        return batches.isEmpty() && hands.isEmpty() && stations.isEmpty();
    }
}

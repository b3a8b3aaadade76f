package dawnkettle.plan;

import dawnkettle.shop.Recipe;
import dawnkettle.shop.Tub;
import java.time.Instant;
import java.util.List;

/**
 * The workroom as it was counted with on the day, so that anyone can check the plan by itself.
 *
 * @param missing who is away and what is down; the windows and hands are those that are left
 */
public record DayFloor(
        List<Recipe> recipes,
        List<Tub> tubs,
        List<Span> presence,
        List<DayStation> stations,
        List<DayHands> hands,
        List<DayChangeover> changeovers,
        Disruption missing) {
    /** A workroom in which all are there and everything works. */
    public DayFloor(
            List<Recipe> recipes,
            List<Tub> tubs,
            List<Span> presence,
            List<DayStation> stations,
            List<DayHands> hands,
            List<DayChangeover> changeovers) {
        this(recipes, tubs, presence, stations, hands, changeovers, Disruption.NONE);
    }

    public DayFloor {
        recipes = List.copyOf(recipes);
        tubs = List.copyOf(tubs);
        presence = List.copyOf(presence);
        stations = List.copyOf(stations);
        hands = List.copyOf(hands);
        changeovers = List.copyOf(changeovers);
    }

    /** A stretch of time, half open. */
    public record Span(Instant from, Instant until) {}

    /**
     * A station that day.
     *
     * @param places batches at once; 0 where {@code capacityGrams} rules
     */
    public record DayStation(String station, String stage, int places, long capacityGrams, List<Span> windows) {
        public DayStation {
            windows = List.copyOf(windows);
        }
    }

    /** Half people in a stretch. */
    public record DayHands(Span span, int halfHands) {}

    /** Minutes between two recipes at a station; pairs that need none are left out. */
    public record DayChangeover(String station, String fromRecipe, String toRecipe, int minutes) {}
}

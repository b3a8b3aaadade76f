package dawnkettle.floor;

import java.util.List;

/**
 * A day's floor: what there is to work with, and what there is to do.
 *
 * @param horizon minutes after which nothing is planned
 */
public record FloorDay(
        List<Station> stations,
        List<Hands> hands,
        List<Changeover> changeovers,
        List<Due> dues,
        List<Job> jobs,
        int horizon) {
    public FloorDay {
        stations = List.copyOf(stations);
        hands = List.copyOf(hands);
        changeovers = List.copyOf(changeovers);
        dues = List.copyOf(dues);
        jobs = List.copyOf(jobs);
    }
}

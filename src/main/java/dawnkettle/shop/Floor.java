package dawnkettle.shop;

import java.util.List;

/** The workroom: stations, tubs, who is there, and what changing over takes. */
public record Floor(
        List<WorkStation> stations,
        List<Tub> tubs,
        List<Crew> crews,
        List<Presence> presence,
        List<ChangeoverRule> changeovers) {
    public Floor {
        stations = List.copyOf(stations);
        tubs = List.copyOf(tubs);
        crews = List.copyOf(crews);
        presence = List.copyOf(presence);
        changeovers = List.copyOf(changeovers);
    }
}

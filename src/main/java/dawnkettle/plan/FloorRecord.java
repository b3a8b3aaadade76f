package dawnkettle.plan;

import dawnkettle.floor.Window;
import dawnkettle.plan.DayFloor.Span;
import dawnkettle.shop.Shop;
import java.util.List;

/** The workroom of the day as the plan's reader needs it to check the plan. */
final class FloorRecord {
    private final Shop shop;
    private final DayClock clock;
    private final Disruption disruption;

    FloorRecord(Shop shop, DayClock clock, Disruption disruption) {
        this.shop = shop;
        this.clock = clock;
        this.disruption = disruption;
    }

    DayFloor floor() {
        FloorOfDay floor = new FloorOfDay(shop, clock, clock.instant(0), disruption);
        return new DayFloor(
                shop.recipes(),
                shop.floor().tubs(),
                TubTimes.presence(shop.floor(), shop.calendar(), clock),
                floor.stations().stream()
                        .map(station -> new DayFloor.DayStation(
                                station.code(),
                                station.stage(),
                                station.places(),
                                station.capacity(),
                                station.open().stream().map(this::span).toList()))
                        .toList(),
                floor.hands().stream()
                        .map(hands -> new DayFloor.DayHands(span(hands.window()), hands.halves()))
                        .toList(),
                changeovers(floor),
                disruption.ofRoom());
    }

    private static List<DayFloor.DayChangeover> changeovers(FloorOfDay floor) {
        return floor.changeovers().stream()
                .map(one -> new DayFloor.DayChangeover(one.station(), one.fromFamily(), one.toFamily(), one.minutes()))
                .toList();
    }

    private Span span(Window window) {
        return new Span(clock.instant(window.fromInclusive()), clock.instant(window.untilExclusive()));
    }
}

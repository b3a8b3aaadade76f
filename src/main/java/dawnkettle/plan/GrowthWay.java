package dawnkettle.plan;

import dawnkettle.shop.Crew;
import dawnkettle.shop.Floor;
import dawnkettle.shop.Opening;
import dawnkettle.shop.Route;
import dawnkettle.shop.Shop;
import dawnkettle.shop.Tub;
import dawnkettle.shop.WorkStation;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;

/**
 * A way to make more: what the shop would be like with it.
 *
 * @param name in the shop's words
 */
public record GrowthWay(String name, UnaryOperator<Shop> shop) {
    public static final GrowthWay AS_IT_IS = new GrowthWay("as it is", shop -> shop);

    /** One station more of a stage, like its first one. */
    public static GrowthWay oneMore(String stage) {
        return new GrowthWay("one more to " + stage, shop -> {
            List<WorkStation> stations = new ArrayList<>(shop.floor().stations());
            shop.floor().stations().stream()
                    .filter(station -> station.stage().equals(stage))
                    .findFirst()
                    .ifPresent(station -> stations.add(new WorkStation(
                            station.code() + "+",
                            station.name(),
                            station.stage(),
                            station.group(),
                            station.places(),
                            station.capacity(),
                            station.openings())));
            return shop.withFloor(floor(
                    shop.floor(), stations, shop.floor().tubs(), shop.floor().crews()));
        });
    }

    /** Stations and people start so much earlier; tubs are filled when they are filled now. */
    public static GrowthWay startEarlier(int minutes) {
        return new GrowthWay("start " + minutes + " min earlier", shop -> {
            LocalTime first = shop.floor().stations().stream()
                    .flatMap(station -> station.openings().stream())
                    .map(Opening::from)
                    .min(LocalTime::compareTo)
                    .orElse(LocalTime.MIDNIGHT);
            List<WorkStation> stations = new ArrayList<>();
            for (WorkStation one : shop.floor().stations())
                stations.add(new WorkStation(
                        one.code(),
                        one.name(),
                        one.stage(),
                        one.group(),
                        one.places(),
                        one.capacity(),
                        one.openings().stream()
                                .map(opening -> earlier(opening, first, minutes))
                                .toList()));
            List<Crew> crews = shop.floor().crews().stream()
                    .map(crew -> new Crew(earlier(crew.opening(), first, minutes), crew.halfHands()))
                    .toList();
            return shop.withFloor(floor(shop.floor(), stations, shop.floor().tubs(), crews));
        });
    }

    /** One person more as long as anybody is there. */
    static GrowthWay oneHandMore() {
        return oneHandMore(opening -> true);
    }

    /** One hand more in some of the stretches in which anybody is there. */
    static GrowthWay oneHandMore(Predicate<Opening> when) {
        return new GrowthWay("one hand more", shop -> {
            List<Crew> crews = shop.floor().crews().stream()
                    .map(crew ->
                            when.test(crew.opening()) ? new Crew(crew.opening(), crew.halfHands() + Losses.HAND) : crew)
                    .toList();
            return shop.withFloor(
                    floor(shop.floor(), shop.floor().stations(), shop.floor().tubs(), crews));
        });
    }

    /** A van that leaves later. */
    static GrowthWay laterVan(String code, int minutes) {
        return new GrowthWay(code + " " + minutes + " min later", shop -> {
            List<Route> routes = shop.routes().stream()
                    .map(route -> route.code().equals(code) ? later(route, minutes) : route)
                    .toList();
            return shop.withRoutes(routes);
        });
    }

    /** Not past midnight. */
    private static Route later(Route route, int minutes) {
        int departs = Math.min(24 * 60 - 1, route.departs().toSecondOfDay() / 60 + minutes);
        return new Route(
                route.code(),
                route.name(),
                route.days(),
                LocalTime.ofSecondOfDay(60L * departs),
                route.loadMinutes(),
                route.cases(),
                route.weight(),
                route.madeSameDay());
    }

    /** More tubs like the largest one. */
    public static GrowthWay moreTubs(int count) {
        return new GrowthWay(count + " more tubs", shop -> {
            List<Tub> tubs = new ArrayList<>(shop.floor().tubs());
            shop.floor().tubs().stream()
                    .max((a, b) -> a.mostBeans().compareTo(b.mostBeans()))
                    .ifPresent(largest -> {
                        for (int i = 1; i <= count; i++)
                            tubs.add(new Tub(
                                    largest.code() + "+" + i,
                                    largest.volume(),
                                    largest.mostBeans(),
                                    largest.hoursToRoomTenths()));
                    });
            return shop.withFloor(floor(
                    shop.floor(), shop.floor().stations(), tubs, shop.floor().crews()));
        });
    }

    /** Two ways at once. */
    public GrowthWay and(GrowthWay other) {
        return new GrowthWay(name + ", " + other.name, one -> other.shop.apply(shop.apply(one)));
    }

    /** What opens with the first opens earlier; nothing opens on the evening before. */
    private static Opening earlier(Opening opening, LocalTime first, int minutes) {
        if (!opening.from().equals(first)) return opening;
        int from = Math.max(0, first.toSecondOfDay() / 60 - minutes);
        return new Opening(LocalTime.ofSecondOfDay(60L * from), opening.until());
    }

    private static Floor floor(Floor floor, List<WorkStation> stations, List<Tub> tubs, List<Crew> crews) {
        return new Floor(stations, tubs, crews, floor.presence(), floor.changeovers());
    }
}

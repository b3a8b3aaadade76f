package dawnkettle.plan;

import dawnkettle.book.BookLine;
import dawnkettle.book.ClosedBook;
import dawnkettle.floor.Budget;
import dawnkettle.shop.Route;
import dawnkettle.shop.Shop;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/**
 * The owner's large question: orders grow; when does it no longer go, what runs out, and what would help? Past days are
 * planned with more and more of their orders, as if all were known at the soak call, with nothing in stock. Vans are taken
 * to hold everything; when each is full is counted beside it.
 */
public final class Growth {
    /** More cases than any van ever holds. */
    private static final int NO_LIMIT = 1_000_000;

    private final Shop shop;
    private final Budget budget;
    private final Watch watch;
    private int planned;

    /** Hears of each plan that is computed. */
    public interface Watch {
        void planned(int count, String way, Day day, int percent);
    }

    /**
     * A past day.
     *
     * @param call when its beans would have been called for
     */
    public record Day(ClosedBook book, Instant call, Temperatures temperatures) {}

    /**
     * How far a way carries a day.
     *
     * @param points from the first percentage on, up to the first that does not hold or to the end
     */
    public record Answer(GrowthWay way, Day day, List<GrowthPoint> points) {
        /** The most that holds with all below it; empty where not even the first does. */
        public Optional<GrowthPoint> last() {
            GrowthPoint last = null;
            for (GrowthPoint point : points) {
                if (!point.holds()) break;
                last = point;
            }
            return Optional.ofNullable(last);
        }

        /** The first that does not hold. */
        public Optional<GrowthPoint> broken() {
            return points.stream().filter(point -> !point.holds()).findFirst();
        }
    }

    /** @param budget of one plan; small, for there are dozens */
    public Growth(Shop shop, Budget budget, Watch watch) {
        this.shop = withRoomyVans(shop);
        this.budget = budget;
        this.watch = watch;
    }

    /** All percentages, whether they hold or not. */
    public Answer whole(Day day, List<Integer> percents) {
        return answer(GrowthWay.AS_IT_IS, day, percents, false);
    }

    /** Until the first that does not hold. */
    public Answer untilBroken(GrowthWay way, Day day, List<Integer> percents) {
        return answer(way, day, percents, true);
    }

    private Answer answer(GrowthWay way, Day day, List<Integer> percents, boolean stops) {
        Shop larger = way.shop().apply(shop);
        List<GrowthPoint> points = new ArrayList<>();
        for (int percent : percents) {
            GrowthPoint point = GrowthPoint.of(percent, PlanDay.of(larger, evening(day, percent)));
            points.add(point);
            watch.planned(++planned, way.name(), day, percent);
            if (stops && !point.holds()) break;
        }
        return new Answer(way, day, points);
    }

    private Evening evening(Day day, int percent) {
        return new Evening(
                scaled(day.book(), percent),
                Evening.Outlook.NONE,
                Evening.Larder.EMPTY,
                new Evening.SoakRoom(day.temperatures(), Optional.empty(), List.of()),
                Evening.Committed.NOTHING,
                day.call(),
                budget);
    }

    /** Every line with so many percent of its packs, at least one. */
    static ClosedBook scaled(ClosedBook book, int percent) {
        List<BookLine> lines = new ArrayList<>();
        for (BookLine line : book.lines())
            lines.add(new BookLine(
                    line.order(),
                    line.line(),
                    line.customer(),
                    line.route(),
                    line.product(),
                    Math.max(1, (line.packs() * percent + 50) / 100),
                    line.deliveryDate(),
                    line.makingDate(),
                    line.source(),
                    line.late()));
        return new ClosedBook(book.productionDate(), book.closedAt(), lines);
    }

    /** The percentage of a day's orders from which on each van is full; vans that are not, with the last one, are left out. */
    public static Map<String, Integer> fullVans(Shop shop, Day day, List<Integer> percents) {
        Map<String, Integer> full = new TreeMap<>();
        for (int percent : percents) {
            Map<String, Integer> cases = new HashMap<>();
            for (BookLine line : scaled(day.book(), percent).lines()) {
                int packsInCase = shop.product(line.product()).packsInCase();
                cases.merge(
                        Van.due(line.route(), line.deliveryDate()),
                        (line.packs() + packsInCase - 1) / packsInCase,
                        Integer::sum);
            }
            cases.forEach((van, count) -> {
                String route = van.split(" ")[0];
                if (count > shop.route(route).cases()) full.putIfAbsent(route, percent);
            });
        }
        return full;
    }

    private static Shop withRoomyVans(Shop shop) {
        List<Route> routes = shop.routes().stream()
                .map(route -> new Route(
                        route.code(),
                        route.name(),
                        route.days(),
                        route.departs(),
                        route.loadMinutes(),
                        NO_LIMIT,
                        route.weight(),
                        route.madeSameDay()))
                .toList();
        return shop.withRoutes(routes);
    }

    /** Stages that are worth one more: where milk is boiled, and the most used that has places of its own. */
    public static List<String> stagesToWiden(Shop shop, GrowthPoint tight) {
        Set<String> withPlaces = new HashSet<>();
        shop.floor().stations().stream()
                .filter(station -> station.places() > 0)
                .forEach(station -> withPlaces.add(station.stage()));
        List<String> stages = new ArrayList<>();
        shop.recipes().stream()
                .flatMap(recipe -> recipe.steps().stream())
                .filter(step ->
                        step.target().filter(target -> target.degrees() >= 95).isPresent())
                .map(step -> step.stage())
                .filter(withPlaces::contains)
                .findFirst()
                .ifPresent(stages::add);
        tight.loads().stream()
                .map(GrowthPoint.Load::what)
                .filter(what -> withPlaces.contains(what) && !stages.contains(what))
                .findFirst()
                .ifPresent(stages::add);
        return stages;
    }
}

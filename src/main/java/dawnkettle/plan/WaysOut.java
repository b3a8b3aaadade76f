package dawnkettle.plan;

import dawnkettle.floor.Budget;
import dawnkettle.plan.Evening.Larder;
import dawnkettle.shop.Crew;
import dawnkettle.shop.Opening;
import dawnkettle.shop.Product;
import dawnkettle.shop.Route;
import dawnkettle.shop.Shop;
import dawnkettle.stock.LotCode;
import dawnkettle.stock.StockLot;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What would help a day on which packs are short or vans late: each way is a day that was planned again, quickly, and is told
 * with what it gave. A way that gave nothing is named as tried, not as useless.
 */
public final class WaysOut {
    /** Tries of the search for each way; fewer than for the plan, so a way may give more than is told. */
    private static final long DECODES = 500;

    /** What a van is asked to wait. */
    private static final int WAIT_MINUTES = 30;

    private final Shop shop;
    private final Evening evening;
    private final DayPlan plan;
    private final Effect now;
    private final List<String> helps = new ArrayList<>();
    private final List<String> tried = new ArrayList<>();

    private WaysOut(Shop shop, Evening evening, DayPlan plan) {
        this.shop = shop;
        this.evening = evening;
        this.plan = plan;
        this.now = Effect.of(plan);
    }

    /** Lines of advice for a first plan; none for a day on which all is well, nor for one that has begun. */
    public static List<String> of(Shop shop, Evening evening, DayPlan plan) {
        if (Effect.of(plan).isWell() || evening.committed().before().isPresent()) return List.of();
        return new WaysOut(shop, evening, plan).lines();
    }

    /** Minutes late and packs short of a day. */
    private record Effect(int late, int packs) {
        static Effect of(DayPlan plan) {
            return new Effect(
                    plan.routes().stream().mapToInt(PlannedRoute::lateMinutes).sum(),
                    plan.orders().stream().mapToInt(PlannedOrder::declinedPacks).sum());
        }

        boolean isWell() {
            return late == 0 && packs == 0;
        }

        /** What is better than {@code before}, in words; empty where nothing is, or where one is paid for with the other. */
        Optional<String> against(Effect before) {
            if (late > before.late || packs > before.packs || equals(before)) return Optional.empty();
            List<String> words = new ArrayList<>();
            if (late < before.late)
                words.add(
                        late == 0 ? "no van late" : "helps " + (before.late - late) + " minutes, " + late + " remain");
            if (packs < before.packs)
                words.add(
                        packs == 0
                                ? "nothing short"
                                : (before.packs - packs) + " packs more, " + packs + " stay short");
            return Optional.of(String.join("; ", words));
        }
    }

    private List<String> lines() {
        for (int minutes : new int[] {30, 60})
            tried("a start " + minutes + " minutes earlier", GrowthWay.startEarlier(minutes));
        handMore();
        movable().ifPresent(this::theDayBefore);
        waiting().ifPresent(this::waits);
        List<String> lines = new ArrayList<>(helps);
        if (!tried.isEmpty())
            lines.add("Also planned again, and no better was found: " + String.join(", ", tried) + ".");
        return lines;
    }

    /** All day; where one stretch of it alone gives as much, that stretch. */
    private void handMore() {
        List<Opening> stretches =
                shop.floor().crews().stream().map(Crew::opening).toList();
        Effect allDay = effect(GrowthWay.oneHandMore());
        Optional<Opening> enough = allDay.against(now).isEmpty()
                ? Optional.empty()
                : stretches.stream()
                        .filter(one ->
                                effect(GrowthWay.oneHandMore(one::equals)).equals(allDay))
                        .findFirst();
        Opening told = enough.orElseGet(() -> new Opening(
                stretches.get(0).from(), stretches.get(stretches.size() - 1).until()));
        tell("one hand more from " + told.from() + " to " + told.until(), allDay);
    }

    private void tried(String name, GrowthWay way) {
        tell(name, effect(way));
    }

    private Effect effect(GrowthWay way) {
        return Effect.of(PlanDay.of(way.shop().apply(shop), quick(evening.larder())));
    }

    private void tell(String name, Effect then) {
        then.against(now)
                .ifPresentOrElse(
                        effect -> helps.add(
                                Character.toUpperCase(name.charAt(0)) + name.substring(1) + ": " + effect + "."),
                        () -> tried.add(name));
    }

    private Evening quick(Larder larder) {
        Budget whole = evening.budget();
        Budget budget = whole.within(Math.min(DECODES, whole.decodes()), whole.guardMillis());
        return new Evening(
                evening.book(),
                evening.outlook(),
                larder,
                evening.soakRoom(),
                evening.committed(),
                evening.now(),
                budget);
    }

    /** The batch of the latest van that could have been made a day before: nothing is made from it and all of it still keeps. */
    private Optional<PlannedBatch> movable() {
        return plan.batches().stream()
                .filter(batch -> batch.feeds().isEmpty() && !batch.packs().isEmpty() && keeps(batch))
                .max(Comparator.comparingInt(this::lateness)
                        .thenComparing(Comparator.comparing(PlannedBatch::id).reversed()));
    }

    private LocalDate dayBefore() {
        return shop.calendar().previous(plan.heading().productionDate());
    }

    private boolean keeps(PlannedBatch batch) {
        return plan.allocation().stream()
                .filter(one -> one.lot().equals(batch.lot()))
                .allMatch(one -> !shop.product(one.product())
                        .keeping()
                        .lastDelivery(dayBefore())
                        .isBefore(one.deliveryDate()));
    }

    private int lateness(PlannedBatch batch) {
        return plan.routes().stream()
                .filter(van -> plan.allocation().stream()
                        .anyMatch(one ->
                                one.lot().equals(batch.lot()) && one.route().equals(van.route())))
                .mapToInt(PlannedRoute::lateMinutes)
                .max()
                .orElse(0);
    }

    /** As if its packs lay in the cold room; whether the day before has room for it is not asked. */
    private void theDayBefore(PlannedBatch batch) {
        List<StockLot> stock = new ArrayList<>(evening.larder().stock());
        for (PlannedBatch.Filled filled : batch.packs()) {
            Product product = shop.product(filled.product());
            stock.add(new StockLot(
                    LotCode.of(dayBefore(), shop.recipe(batch.recipe()).mark(), LAST),
                    product.code(),
                    filled.packs(),
                    dayBefore(),
                    product.keeping().bestBefore(dayBefore()),
                    true));
        }
        Larder with =
                new Larder(stock, evening.larder().beans(), evening.larder().held());
        tell(
                "batch " + batch.id() + " made the day before, if that day has room for it",
                Effect.of(PlanDay.of(shop, quick(with))));
    }

    /** A number that no batch of that day has. */
    private static final int LAST = 99;

    /** The late van whose minutes weigh least. */
    private Optional<Route> waiting() {
        return plan.routes().stream()
                .filter(van -> van.lateMinutes() > 0)
                .map(van -> shop.route(van.route()))
                .min(Comparator.comparingInt(Route::weight).thenComparing(Route::code));
    }

    /** Half an hour that is granted is not counted as late. */
    private void waits(Route van) {
        Shop later = GrowthWay.laterVan(van.code(), WAIT_MINUTES).shop().apply(shop);
        tell(
                "van " + van.code() + " leaving " + WAIT_MINUTES + " minutes later",
                Effect.of(PlanDay.of(later, quick(evening.larder()))));
    }
}

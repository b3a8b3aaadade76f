package dawnkettle.mail;

import dawnkettle.mail.Letter.Bullets;
import dawnkettle.mail.Letter.Column;
import dawnkettle.mail.Letter.Grid;
import dawnkettle.mail.Letter.Section;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.PlannedOrder;
import dawnkettle.plan.PlannedRoute;
import dawnkettle.shop.Customer;
import dawnkettle.shop.Product;
import dawnkettle.shop.Shop;
import dawnkettle.stock.StockLot;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** What the morning summary says of what leaves: routes, what can't be had, lots near their end. */
final class TradeSections {
    /** Days before a lot can no longer be delivered at which it is named: common practice, no source. */
    private static final long NEAR_END_DAYS = 2;

    private static final int CUSTOMERS_NAMED = 25;

    private final DayPlan plan;
    private final Shop shop;
    private final Figures figures;

    TradeSections(DayPlan plan, Shop shop, Figures figures) {
        this.plan = plan;
        this.shop = shop;
        this.figures = figures;
    }

    Section routes() {
        List<List<String>> rows = plan.routes().stream()
                .sorted(Comparator.comparing(PlannedRoute::departs).thenComparing(PlannedRoute::route))
                .map(route -> List.of(
                        shop.route(route.route()).name(),
                        figures.time(route.packedBy()),
                        figures.time(route.departs()),
                        Lead.spare(route)))
                .toList();
        return new Section(
                "Vans",
                new Grid(
                        "Packed and cold, leaving, and time in hand",
                        List.of(
                                Column.words("Route"),
                                Column.figures("Packed"),
                                Column.figures("Leaves"),
                                Column.figures("In hand")),
                        rows));
    }

    Section shortages() {
        List<List<String>> rows = plan.shortages().stream()
                .map(shortage -> List.of(name(shortage.product()), String.valueOf(shortage.packs()), shortage.reason()))
                .toList();
        Grid grid = new Grid(
                "What can't be had, and why",
                List.of(Column.words("Product"), Column.figures("Packs"), Column.words("Why")),
                rows);
        return new Section("Short", grid, new Bullets(plan.advice()), new Bullets(customers()));
    }

    private List<String> customers() {
        List<String> all = plan.orders().stream()
                .filter(order -> order.declinedPacks() > 0)
                .map(this::customer)
                .toList();
        if (all.size() <= CUSTOMERS_NAMED) return all;
        List<String> some = new ArrayList<>(all.subList(0, CUSTOMERS_NAMED));
        some.add("and " + (all.size() - CUSTOMERS_NAMED) + " more lines, as the pick sheet shows");
        return some;
    }

    private String customer(PlannedOrder order) {
        String who = shop.findCustomer(order.line().customer())
                .map(Customer::name)
                .orElse(order.line().customer());
        String why = order.reason().isBlank() ? "" : " (" + order.reason() + ")";
        return who + ": " + order.plannedPacks() + " of " + order.line().packs() + " "
                + name(order.line().product()) + " for "
                + Figures.day(order.line().deliveryDate()) + why;
    }

    Section nearEnd() {
        LocalDate today = plan.heading().productionDate();
        List<List<String>> rows = plan.stock().stream()
                .filter(lot -> lot.packs() > 0 && daysToDeliver(lot, today) <= NEAR_END_DAYS)
                .sorted(Comparator.comparing(StockLot::bestBefore).thenComparing(StockLot::lot))
                .map(lot -> List.of(
                        lot.lot().text(),
                        name(lot.product()) + (lot.expected() ? " (not counted)" : ""),
                        String.valueOf(lot.packs()),
                        Figures.day(lot.bestBefore())))
                .toList();
        return new Section(
                "Lots near their end",
                new Grid(
                        "Unpromised packs that can be delivered for two more days or fewer",
                        List.of(
                                Column.words("Lot"),
                                Column.words("Product"),
                                Column.figures("Packs"),
                                Column.figures("Best before")),
                        rows));
    }

    private long daysToDeliver(StockLot lot, LocalDate today) {
        int least = shop.findProduct(lot.product())
                .map(product -> product.keeping().leastDaysLeft())
                .orElse(0);
        return ChronoUnit.DAYS.between(today, lot.bestBefore()) - least;
    }

    private String name(String product) {
        return shop.findProduct(product).map(Product::name).orElse(product);
    }
}

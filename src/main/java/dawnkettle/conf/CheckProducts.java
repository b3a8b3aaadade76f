package dawnkettle.conf;

import dawnkettle.book.MakingDates;
import dawnkettle.shop.Allergen;
import dawnkettle.shop.Customer;
import dawnkettle.shop.Product;
import dawnkettle.shop.Recipe;
import dawnkettle.shop.Route;
import dawnkettle.shop.ShopCalendar;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Whether every product names its allergens and reaches its customers with the days that must be left. */
final class CheckProducts {
    /** Any week serves: the check is against the regular week, closed days are for the night to see. */
    private static final LocalDate A_WEEK = LocalDate.of(2026, 1, 4);

    private final List<Placed<Product>> products;
    private final List<Placed<Recipe>> recipes;
    private final Problems problems;

    CheckProducts(List<Placed<Product>> products, List<Placed<Recipe>> recipes, Problems problems) {
        this.products = products;
        this.recipes = recipes;
        this.problems = problems;
    }

    /** A product contains at least what its recipe contains. */
    void allergens() {
        for (Placed<Product> product : products)
            for (Placed<Recipe> recipe : recipes)
                if (recipe.value().code().equals(product.value().recipe())) contains(product, recipe.value());
    }

    private void contains(Placed<Product> product, Recipe recipe) {
        for (Allergen allergen : recipe.allergens())
            if (!product.value().wording().contains().contains(allergen))
                problems.add(
                        product.place(),
                        "product \"" + product.value().code() + "\" does not say that it contains \"" + allergen.word()
                                + "\", which recipe \"" + recipe.code() + "\" has",
                        "add it to contains and look at ingredients");
    }

    /** On every weekday of every route that serves somebody. */
    void reach(List<Placed<Customer>> customers, List<Route> routes, Set<DayOfWeek> workDays) {
        MakingDates dates = new MakingDates(new ShopCalendar(workDays, Map.of()));
        for (Placed<Product> product : products)
            for (Route route : routes)
                if (customers.stream().anyMatch(c -> c.value().route().equals(route.code())))
                    reaches(product, route, dates);
    }

    private void reaches(Placed<Product> placed, Route route, MakingDates dates) {
        Product product = placed.value();
        for (DayOfWeek day : DayOfWeek.values()) {
            LocalDate delivery = A_WEEK.with(TemporalAdjusters.next(day));
            if (!route.days().contains(day)
                    || dates.makingDate(delivery, route, product).isPresent()) continue;
            problems.add(
                    placed.place(),
                    "product \"" + product.code() + "\" does not reach route \"" + route.code() + "\" on "
                            + Written.shortName(day) + " with "
                            + product.keeping().leastDaysLeft() + " of its "
                            + product.keeping().shelfLifeDays() + " days left",
                    "lower least_days_left or take the day off the route; a longer life only where it is validated");
        }
    }
}

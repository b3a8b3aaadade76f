package dawnkettle.book;

import static java.time.DayOfWeek.FRIDAY;
import static java.time.DayOfWeek.MONDAY;
import static java.time.DayOfWeek.SATURDAY;
import static java.time.DayOfWeek.THURSDAY;
import static java.time.DayOfWeek.TUESDAY;
import static java.time.DayOfWeek.WEDNESDAY;

import dawnkettle.measure.Celsius;
import dawnkettle.measure.Mass;
import dawnkettle.measure.Money;
import dawnkettle.measure.Share;
import dawnkettle.shop.Allergen;
import dawnkettle.shop.Climate;
import dawnkettle.shop.Costs;
import dawnkettle.shop.Customer;
import dawnkettle.shop.Floor;
import dawnkettle.shop.House;
import dawnkettle.shop.Keeping;
import dawnkettle.shop.Kettle;
import dawnkettle.shop.Pack;
import dawnkettle.shop.Packing;
import dawnkettle.shop.Product;
import dawnkettle.shop.Recipe;
import dawnkettle.shop.Route;
import dawnkettle.shop.Sealing;
import dawnkettle.shop.Shop;
import dawnkettle.shop.ShopCalendar;
import dawnkettle.shop.Wording;
import dawnkettle.shop.Yield;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.Collections;
import java.util.Currency;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** A shop of three products and three customers that works Monday to Saturday; all of it invented. */
public final class SmallShop {
    public static final Currency DOLLARS = Currency.getInstance("USD");
    public static final Set<DayOfWeek> WORK_DAYS = EnumSet.of(MONDAY, TUESDAY, WEDNESDAY, THURSDAY, FRIDAY, SATURDAY);

    /** Firm keeps 9 days and wants 5 at delivery; soft keeps 4 and wants 3; fried is made a work day ahead. */
    public static final List<Product> PRODUCTS =
            List.of(product("FIRM-12", 9, 5, 0), product("SOFT-6", 4, 3, 0), product("FRIED-8", 9, 3, 1));

    /** Early leaves before anything is made that day, on every day but Sunday; late carries the day's own making. */
    public static final Route EARLY = new Route("early", "Early van", WORK_DAYS, LocalTime.of(5, 0), 30, 60, 2, false);

    public static final Route LATE =
            new Route("late", "Late van", EnumSet.of(TUESDAY, FRIDAY), LocalTime.of(13, 0), 30, 60, 1, true);

    public static final List<Customer> CUSTOMERS = List.of(
            customer("HARB", "early", List.of("the harbour")),
            customer("MILL", "late", List.of("mill lane")),
            customer("QUAY", "early", List.of()));

    private SmallShop() {}

    public static Shop open() {
        return closedOn(Map.of());
    }

    public static Shop closedOn(Map<LocalDate, String> closed) {
        return with(PRODUCTS, closed);
    }

    public static Shop with(List<Product> products, Map<LocalDate, String> closed) {
        return new Shop(
                new House(
                        "Small Works",
                        List.of("Quillhaven"),
                        ZoneId.of("America/New_York"),
                        "en-US",
                        DOLLARS,
                        House.Units.METRIC,
                        House.Paper.LETTER,
                        "us"),
                products,
                List.of(recipe()),
                new Floor(List.of(), List.of(), List.of(), List.of(), List.of()),
                List.of(EARLY, LATE),
                CUSTOMERS,
                new ShopCalendar(WORK_DAYS, closed),
                List.of(),
                List.of(),
                climate(),
                costs());
    }

    public static Climate climate() {
        return new Climate(Collections.nCopies(12, Celsius.degrees(18)), Collections.nCopies(12, Celsius.degrees(11)));
    }

    public static Product product(String code, int shelfLife, int leastDaysLeft, int leadDays) {
        return new Product(
                code,
                "Tofu " + code,
                "firm",
                new Packing(Pack.BLOCK, Mass.grams(340), Optional.empty(), 12, Optional.empty(), Money.zero(DOLLARS)),
                new Keeping(shelfLife, "the owner", LocalDate.of(2026, 1, 5), Sealing.WATER_PACK, true, leastDaysLeft),
                new Wording("soybeans, water", List.of(Allergen.SOY), "Keep at 4 °C", "case", Optional.empty()),
                Money.minor(210, DOLLARS),
                leadDays,
                0);
    }

    private static Recipe recipe() {
        return new Recipe(
                "firm",
                "Firm",
                "FI",
                Optional.of("plain"),
                Optional.empty(),
                new Kettle(Mass.kilograms(6), Mass.kilograms(12), Mass.kilograms(1)),
                Share.of("7"),
                Optional.empty(),
                new Yield(Share.of("2.4"), Share.of("0.1"), Share.of("0.02")),
                List.of(),
                List.of(Allergen.SOY),
                false,
                List.of());
    }

    private static Customer customer(String code, String route, List<String> aliases) {
        return new Customer(code, "Shop of " + code, aliases, List.of(), "trade", route, 1, 2, false, "Quillhaven");
    }

    private static Costs costs() {
        Money none = Money.zero(DOLLARS);
        return new Costs(none, none, Share.WHOLE, none, none, none, none);
    }
}

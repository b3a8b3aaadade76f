package dawnkettle.conf;

import dawnkettle.book.StandingOrder;
import dawnkettle.shop.Customer;
import dawnkettle.shop.Floor;
import dawnkettle.shop.House;
import dawnkettle.shop.ListPrice;
import dawnkettle.shop.Material;
import dawnkettle.shop.PackUse;
import dawnkettle.shop.Product;
import dawnkettle.shop.Rate;
import dawnkettle.shop.Recipe;
import dawnkettle.shop.Route;
import dawnkettle.shop.Shop;
import dawnkettle.shop.ShopCalendar;
import java.time.DayOfWeek;
import java.util.Currency;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/** Reads the files behind {@code shop.toml}, each after those that it refers to, and checks them against each other. */
final class ReadShop {
    /** Stands in where the weekdays could not be read. */
    private static final Set<DayOfWeek> EVERY_DAY = EnumSet.allOf(DayOfWeek.class);

    private final ConfFolder folder;
    private final ReadHouse house;
    private final String design;
    private final Known known = new Known();
    private List<StandingOrder> standing = List.of();

    ReadShop(ConfFolder folder, ReadHouse house, String design) {
        this.folder = folder;
        this.house = house;
        this.design = design;
    }

    Shop shop(House itself) {
        Currency currency = house.currency();
        List<Material> materials =
                new ReadMaterials(known, currency).read(folder.csvWithRows(ReadMaterials.FILE, ReadMaterials.COLUMNS));
        Floor floor = floor();
        List<Placed<Recipe>> recipes = recipes();
        List<Placed<Product>> products = new ReadProducts(known, currency, design)
                .read(folder.csvWithRows(ReadProducts.FILE, ReadProducts.COLUMNS));
        List<Route> routes = new ReadRoutes(known).read(folder.csvWithRows(ReadRoutes.FILE, ReadRoutes.COLUMNS));
        List<ListPrice> prices = new ReadPrices(known, currency).read(folder.csv(ReadPrices.FILE, ReadPrices.COLUMNS));
        List<Rate> rates = new ReadRates(currency).read(folder.csvWhereThere(ReadRates.FILE, ReadRates.COLUMNS));
        List<PackUse> packing =
                new ReadPackaging(known).read(folder.csvWhereThere(ReadPackaging.FILE, ReadPackaging.COLUMNS));
        List<Placed<Customer>> customers =
                new ReadCustomers(known).read(folder.csvWithRows(ReadCustomers.FILE, ReadCustomers.COLUMNS));
        standing = new ReadStanding(known, customers, routes).read(folder.csv(ReadStanding.FILE, ReadStanding.COLUMNS));
        ShopCalendar calendar = new ReadCalendar(house.workDays().orElse(EVERY_DAY))
                .read(folder.csv(ReadCalendar.FILE, ReadCalendar.COLUMNS));
        new CheckRecipes(recipes, floor, folder.problems()).check(materials);
        CheckProducts check = new CheckProducts(products, recipes, folder.problems());
        check.allergens();
        house.workDays().ifPresent(days -> check.reach(customers, routes, days));
        return new Shop(
                itself,
                values(products),
                values(recipes),
                floor,
                routes,
                values(customers),
                calendar,
                materials,
                prices,
                house.climate(),
                house.costs(rates, packing));
    }

    /** Standing orders, once the shop was read. */
    List<StandingOrder> standing() {
        return standing;
    }

    private Floor floor() {
        return folder.toml(ReadStations.FILE)
                .map(file -> new ReadStations(known).read(file))
                .orElseGet(() -> {
                    known.stages.notWhole();
                    return new Floor(List.of(), List.of(), List.of(), List.of(), List.of());
                });
    }

    private List<Placed<Recipe>> recipes() {
        return folder.toml(ReadRecipes.FILE)
                .map(file -> new ReadRecipes(known).read(file))
                .orElseGet(() -> {
                    known.recipes.notWhole();
                    return List.of();
                });
    }

    private static <T> List<T> values(List<Placed<T>> placed) {
        return placed.stream().map(Placed::value).toList();
    }
}

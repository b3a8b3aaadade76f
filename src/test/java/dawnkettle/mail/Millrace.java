package dawnkettle.mail;

import dawnkettle.measure.Celsius;
import dawnkettle.measure.Mass;
import dawnkettle.measure.Money;
import dawnkettle.measure.Share;
import dawnkettle.measure.Volume;
import dawnkettle.shop.Allergen;
import dawnkettle.shop.BlockSize;
import dawnkettle.shop.Climate;
import dawnkettle.shop.Coagulant;
import dawnkettle.shop.Costs;
import dawnkettle.shop.Customer;
import dawnkettle.shop.Floor;
import dawnkettle.shop.House;
import dawnkettle.shop.Ingredient;
import dawnkettle.shop.Keeping;
import dawnkettle.shop.Kettle;
import dawnkettle.shop.Material;
import dawnkettle.shop.Pack;
import dawnkettle.shop.Packing;
import dawnkettle.shop.Product;
import dawnkettle.shop.Recipe;
import dawnkettle.shop.Route;
import dawnkettle.shop.Sealing;
import dawnkettle.shop.Shop;
import dawnkettle.shop.ShopCalendar;
import dawnkettle.shop.Step;
import dawnkettle.shop.Wording;
import dawnkettle.shop.Yield;
import java.math.BigDecimal;
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
import java.util.OptionalInt;

/** A small Millrace Tofu Works of the invented town of Quillhaven, for what is mailed. */
public final class Millrace {
    public static final Currency USD = Currency.getInstance("USD");
    private static final Share NONE = Share.NONE;

    private Millrace() {}

    public static Shop shop() {
        return shop(House.Units.METRIC, List.of());
    }

    /** @param more products besides the usual four */
    public static Shop shop(House.Units units, List<Product> more) {
        List<Product> products = new java.util.ArrayList<>(products());
        products.addAll(more);
        return new Shop(
                house(units),
                products,
                recipes(),
                new Floor(List.of(), List.of(), List.of(), List.of(), List.of()),
                routes(),
                customers(),
                new ShopCalendar(EnumSet.range(DayOfWeek.MONDAY, DayOfWeek.SATURDAY), Map.of()),
                materials(),
                List.of(),
                new Climate(Collections.nCopies(12, Celsius.degrees(18)), Collections.nCopies(12, Celsius.degrees(11))),
                costs());
    }

    private static House house(House.Units units) {
        return new House(
                "Millrace Tofu Works",
                List.of("4 Sluice Street", "Quillhaven"),
                ZoneId.of("America/New_York"),
                "en",
                USD,
                units,
                House.Paper.LETTER,
                "us");
    }

    static Money usd(String amount) {
        return Money.of(new BigDecimal(amount), USD);
    }

    private static Costs costs() {
        return new Costs(
                usd("21.50"), usd("0.11"), Share.percent(50), usd("4.20"), usd("310.00"), usd("58.00"), usd("0.04"));
    }

    private static List<Recipe> recipes() {
        return List.of(
                recipe("milk", "Plain soy milk", "SM", Optional.of("yellow"), Optional.empty(), "7.5", List.of()),
                recipe("firm", "Firm", "FI", Optional.of("yellow"), Optional.empty(), "2.65", List.of()),
                recipe("thin", "Thin firm", "TF", Optional.of("yellow"), Optional.empty(), "2.4", List.of()),
                recipe(
                        "fried",
                        "Fried pouch",
                        "FP",
                        Optional.empty(),
                        Optional.of("thin"),
                        "0.48",
                        List.of(new Ingredient("OIL", Share.of("0.115")))));
    }

    private static Recipe recipe(
            String code,
            String name,
            String mark,
            Optional<String> group,
            Optional<String> from,
            String yield,
            List<Ingredient> ingredients) {
        Step step = new Step(
                from.isPresent() ? "fry" : "grind",
                from.isPresent() ? "fry" : "grind",
                12,
                2,
                OptionalInt.empty(),
                Optional.empty());
        return new Recipe(
                code,
                name,
                mark,
                group,
                from,
                new Kettle(Mass.kilograms(10), Mass.kilograms(50), Mass.grams(500)),
                Share.of("7"),
                code.equals("milk") || from.isPresent()
                        ? Optional.empty()
                        : Optional.of(new Coagulant("NIGARI", Share.of("0.003"))),
                new Yield(Share.of(yield), Share.of("0.05"), Share.of("0.02")),
                ingredients,
                List.of(Allergen.SOY),
                false,
                List.of(step));
    }

    private static List<Product> products() {
        return List.of(
                product(
                        "FIRM-12",
                        "Firm block 350 g",
                        "firm",
                        packing(Pack.BLOCK, 350, 12),
                        Sealing.WATER_PACK,
                        "1.95"),
                product(
                        "FIRM-BK",
                        "Firm bucket 5 kg",
                        "firm",
                        packing(Pack.BUCKET, 5000, 1),
                        Sealing.OPEN_BUCKET,
                        "21.00"),
                product("POUCH-10", "Fried pouches 200 g", "fried", packing(Pack.POUCH, 200, 10), Sealing.TRAY, "2.90"),
                product(
                        "MILK-1",
                        "Soy milk 1 l",
                        "milk",
                        packing(Pack.BOTTLE, 1030, 6),
                        Sealing.CAPPED_BOTTLE,
                        "2.10"));
    }

    private static Packing packing(Pack pack, int grams, int inCase) {
        Optional<BlockSize> block = pack == Pack.BOTTLE ? Optional.empty() : Optional.of(new BlockSize(120, 80, 40));
        Optional<Volume> volume = pack == Pack.BOTTLE ? Optional.of(Volume.litres(1)) : Optional.empty();
        return new Packing(pack, Mass.grams(grams), volume, inCase, block, usd("0.00"));
    }

    static Product product(String code, String name, String recipe, Packing packing, Sealing sealing, String price) {
        return new Product(
                code,
                name,
                recipe,
                packing,
                new Keeping(10, "R. Ostrander", LocalDate.of(2026, 3, 2), sealing, false, 4),
                new Wording(
                        "Water, soybeans", List.of(Allergen.SOY), "Keep at 0 to 5 °C", "case-100x70", Optional.empty()),
                usd(price),
                0,
                0);
    }

    static Product named(String code, String name) {
        return product(code, name, "firm", packing(Pack.BLOCK, 350, 12), Sealing.TRAY, "1.95");
    }

    private static List<Route> routes() {
        return List.of(
                route("MIL", "Mill Lane", "10:30"),
                route("HAR", "Harbour", "11:45"),
                route("HIL", "Hill villages", "13:15"));
    }

    private static Route route(String code, String name, String departs) {
        return new Route(
                code,
                name,
                EnumSet.range(DayOfWeek.MONDAY, DayOfWeek.SATURDAY),
                LocalTime.parse(departs),
                30,
                60,
                1,
                true);
    }

    private static List<Customer> customers() {
        return List.of(
                customer("HERON", "Heron & Reed Grocers", "MIL", 1),
                customer("SOUP", "The Copper Ladle", "HAR", 2),
                customer("NOODLE", "Nine Bowls <Kitchen>", "HIL", 3));
    }

    private static Customer customer(String code, String name, String route, int priority) {
        return new Customer(code, name, List.of(), List.of(), "everyday", route, 1, priority, true, "Quillhaven");
    }

    private static List<Material> materials() {
        return List.of(
                new Material(
                        "SOY",
                        "Yellow soybeans",
                        Material.Kind.BEANS,
                        "yellow",
                        Material.Unit.KILOGRAM,
                        25,
                        7,
                        600,
                        usd("38.50")),
                new Material(
                        "NIGARI",
                        "Magnesium chloride hexahydrate",
                        Material.Kind.COAGULANT,
                        "",
                        Material.Unit.KILOGRAM,
                        20,
                        14,
                        20,
                        usd("46.00")),
                new Material(
                        "OIL", "Rapeseed oil", Material.Kind.OIL, "", Material.Unit.LITRE, 20, 7, 40, usd("37.00")));
    }
}

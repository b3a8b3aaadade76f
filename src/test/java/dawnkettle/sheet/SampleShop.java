package dawnkettle.sheet;

import dawnkettle.measure.Celsius;
import dawnkettle.measure.Mass;
import dawnkettle.measure.Money;
import dawnkettle.measure.Share;
import dawnkettle.measure.Volume;
import dawnkettle.shop.Allergen;
import dawnkettle.shop.BlockSize;
import dawnkettle.shop.ChangeoverRule;
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
import dawnkettle.shop.Opening;
import dawnkettle.shop.Pack;
import dawnkettle.shop.Packing;
import dawnkettle.shop.Product;
import dawnkettle.shop.Recipe;
import dawnkettle.shop.Route;
import dawnkettle.shop.Sealing;
import dawnkettle.shop.Shop;
import dawnkettle.shop.ShopCalendar;
import dawnkettle.shop.Step;
import dawnkettle.shop.Tub;
import dawnkettle.shop.Wording;
import dawnkettle.shop.WorkStation;
import dawnkettle.shop.Yield;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Currency;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/** A small invented shop to write sheets for: the Millrace Tofu Works of Quillhaven. */
final class SampleShop {
    static final ZoneId ZONE = ZoneId.of("America/New_York");
    static final Currency DOLLAR = Currency.getInstance("USD");
    static final String LONG_NAME = "Saint Brannoc's Riverside Kitchen & Community Canteen (north)";

    private SampleShop() {}

    static Shop of(House.Units units, int products, int customers) {
        House house = new House(
                "Millrace Tofu Works",
                List.of("3 Sluice Lane", "Quillhaven"),
                ZONE,
                "en-US",
                DOLLAR,
                units,
                House.Paper.A4,
                "us");
        return new Shop(
                house,
                products(products),
                recipes(),
                floor(),
                routes(),
                customers(customers),
                new ShopCalendar(EnumSet.complementOf(EnumSet.of(DayOfWeek.SUNDAY)), Map.of()),
                materials(),
                List.of(),
                new Climate(Collections.nCopies(12, Celsius.degrees(18)), Collections.nCopies(12, Celsius.degrees(12))),
                costs());
    }

    private static Costs costs() {
        Money some = Money.minor(100, DOLLAR);
        return new Costs(some, some, Share.percent(50), some, some, some, some);
    }

    private static final String[] SORTS = {"firm", "medium", "extra", "sesame", "pouch", "milk"};

    private static List<Product> products(int count) {
        List<Product> products = new ArrayList<>();
        for (int i = 0; i < count; i++) products.add(product(i));
        return products;
    }

    private static Product product(int i) {
        String recipe = SORTS[i % SORTS.length];
        int size = i / SORTS.length;
        boolean bucket = size % 2 == 1;
        String code = recipe.toUpperCase(java.util.Locale.ROOT) + "-" + (size + 1);
        String name = i == 7
                ? "有机卤水老豆腐（大盒装，每箱十二盒）350 克"
                : i == 9
                        ? "ごま入り木綿豆腐 業務用 四キログラム入りバケツ"
                        : Character.toUpperCase(recipe.charAt(0))
                                + recipe.substring(1)
                                + (recipe.equals("milk")
                                        ? " soy drink, 1 L bottle"
                                        : bucket
                                                ? " tofu, bucket of " + (4 + size) + " kg"
                                                : " tofu, block " + (300 + 50 * size) + " g");
        Packing packing = new Packing(
                recipe.equals("milk")
                        ? Pack.BOTTLE
                        : recipe.equals("pouch") ? Pack.POUCH : bucket ? Pack.BUCKET : Pack.BLOCK,
                bucket ? Mass.kilograms(4 + size) : Mass.grams(300 + 50L * size),
                Optional.empty(),
                bucket ? 1 : 12,
                Optional.of(new BlockSize(100, 80, 50)),
                Money.zero(DOLLAR));
        Keeping keeping =
                new Keeping(14 - size % 5, "shelf test 7", LocalDate.of(2026, 3, 2), Sealing.WATER_PACK, false, 7);
        Wording wording = new Wording(
                "water, soybeans, magnesium chloride",
                recipe.equals("sesame") ? List.of(Allergen.SOY, Allergen.SESAME) : List.of(Allergen.SOY),
                "keep at 5 °C or below",
                "case-100x70",
                Optional.empty());
        return new Product(code, name, recipe, packing, keeping, wording, Money.minor(325, DOLLAR), 0, 0);
    }

    private static List<Recipe> recipes() {
        return List.of(
                block("firm", "Firm", "FI", List.of(Allergen.SOY), 25),
                block("medium", "Medium", "ME", List.of(Allergen.SOY), 15),
                block("extra", "Extra firm", "EF", List.of(Allergen.SOY), 40),
                block("sesame", "Sesame firm", "SE", List.of(Allergen.SOY, Allergen.SESAME), 25),
                block("thin", "Thin firm for pouches", "TF", List.of(Allergen.SOY), 25),
                pouch(),
                milk());
    }

    private static Recipe block(String code, String name, String mark, List<Allergen> allergens, int press) {
        return new Recipe(
                code,
                name,
                mark,
                Optional.of("yellow"),
                Optional.empty(),
                new Kettle(Mass.kilograms(20), Mass.kilograms(30), Mass.kilograms(BigHalf.TWO_AND_A_HALF)),
                Share.of("7"),
                Optional.of(new Coagulant(code.equals("extra") ? "GYPSUM" : "NIGARI", Share.of("0.003"))),
                new Yield(Share.of("2.6"), Share.of("0.1"), Share.percent(2)),
                List.<Ingredient>of(),
                allergens,
                allergens.size() > 1,
                List.of(
                        step("Grind", "grind", 12, 0, 0),
                        step("Cook", "cook", 28, 10, 98),
                        step("Filter", "filter", 12, 5, 0),
                        step("Coagulate", "coagulate", 18, 6, 75),
                        step("Press", "press", press, 10, 0),
                        step("Cool", "bath", 90, 15, 5),
                        step("Cut", "cut", 10, -1, 0),
                        step("Pack", "pack", 20, -1, 0)));
    }

    private static Recipe pouch() {
        return new Recipe(
                "pouch",
                "Fried pouch",
                "FP",
                Optional.empty(),
                Optional.of("thin"),
                new Kettle(Mass.kilograms(10), Mass.kilograms(40), Mass.kilograms(5)),
                Share.NONE,
                Optional.empty(),
                new Yield(Share.of("0.6"), Share.of("0.05"), Share.percent(1)),
                List.of(),
                List.of(Allergen.SOY),
                false,
                List.of(
                        step("Slice", "cut", 20, -1, 0),
                        step("Fry", "fry", 35, 30, 185),
                        step("Cool", "bath", 40, 20, 5),
                        step("Pack", "pack", 20, -1, 0)));
    }

    private static Recipe milk() {
        return new Recipe(
                "milk",
                "Plain soy drink",
                "SM",
                Optional.of("yellow"),
                Optional.empty(),
                new Kettle(Mass.kilograms(10), Mass.kilograms(30), Mass.kilograms(5)),
                Share.of("8"),
                Optional.empty(),
                new Yield(Share.of("6.5"), Share.of("0.1"), Share.NONE),
                List.of(),
                List.of(Allergen.SOY),
                false,
                List.of(
                        step("Grind", "grind", 12, 0, 0),
                        step("Cook", "cook", 28, 10, 98),
                        step("Filter", "filter", 12, 5, 0),
                        step("Fill", "fill", 30, 20, 85),
                        step("Cool", "bath", 120, 15, 5)));
    }

    private static Step step(String name, String stage, int minutes, int wait, int celsius) {
        return new Step(
                name,
                stage,
                minutes,
                2,
                wait < 0 ? OptionalInt.empty() : OptionalInt.of(wait),
                celsius == 0 ? Optional.empty() : Optional.of(Celsius.degrees(celsius)));
    }

    private static Floor floor() {
        List<WorkStation> stations = List.of(
                station("G1", "Grinder 1", "grind", "Grind and cook", 1),
                station("C1", "Cooker 1", "cook", "Grind and cook", 1),
                station("C2", "Cooker 2", "cook", "Grind and cook", 1),
                station("F1", "Filter press", "filter", "Grind and cook", 1),
                station("V1", "Vats", "coagulate", "Coagulate and press", 2),
                station("P1", "Press", "press", "Coagulate and press", 3),
                new WorkStation("BATH", "Cooling bath", "bath", "Bath, cut and pack", 0, Mass.kilograms(700), open()),
                station("CUT", "Cutting bench", "cut", "Bath, cut and pack", 1),
                station("PK1", "Packing machine", "pack", "Bath, cut and pack", 1),
                station("FRY", "Fryer", "fry", "Fryer", 1),
                station("FILL", "Bottle filler", "fill", "Milk", 1));
        List<Tub> tubs = new ArrayList<>();
        for (int i = 1; i <= 20; i++) tubs.add(new Tub("T" + i, Volume.litres(240), Mass.kilograms(60), 80));
        return new Floor(stations, tubs, List.of(), List.of(), List.of(new ChangeoverRule("grind", 5, 10, 20)));
    }

    private static WorkStation station(String code, String name, String stage, String group, int places) {
        return new WorkStation(code, name, stage, group, places, Mass.ZERO, open());
    }

    private static List<Opening> open() {
        return List.of(new Opening(LocalTime.of(2, 0), LocalTime.of(20, 0)));
    }

    private static List<Route> routes() {
        Set<DayOfWeek> days = EnumSet.allOf(DayOfWeek.class);
        List<Route> routes = new ArrayList<>();
        for (int i = 1; i <= 9; i++)
            routes.add(new Route("M" + i, "Morning round " + i, days, LocalTime.of(4, 50 + i), 30, 60, 1, false));
        routes.addAll(List.of(
                new Route("R1", "Harbour and market", days, LocalTime.of(9, 30), 30, 120, 3, true),
                new Route("R2", "Hill schools", days, LocalTime.of(9, 45), 30, 12, 2, true),
                new Route(
                        "R3",
                        "North road, farm shops and the two inns beyond the ford",
                        days,
                        LocalTime.of(11, 0),
                        30,
                        90,
                        1,
                        true)));
        return routes;
    }

    private static List<Customer> customers(int count) {
        List<Customer> customers = new ArrayList<>();
        String[] names = {
            "Tern Street Grocery",
            LONG_NAME,
            "Café Über der Brücke",
            "Quay Noodle House",
            "Old Mill School",
            "水車前食堂（石橋通り三丁目の角を曲がったところにある北向きの店）",
            "磨坊河豆香小馆"
        };
        for (int i = 0; i < count; i++)
            customers.add(new Customer(
                    "C" + (100 + i),
                    i < names.length ? names[i] : names[i % names.length].split(" ")[0] + " No " + i,
                    List.of(),
                    List.of(),
                    "everyday",
                    "R" + (1 + i % 3),
                    1 + i / 3,
                    2,
                    i % 5 == 3,
                    (3 + i) + " Weir Road, Quillhaven"));
        return customers;
    }

    private static List<Material> materials() {
        Money price = Money.minor(4_800, DOLLAR);
        return List.of(
                new Material(
                        "BEAN",
                        "Yellow soybeans",
                        Material.Kind.BEANS,
                        "yellow",
                        Material.Unit.KILOGRAM,
                        25,
                        7,
                        200,
                        price),
                new Material(
                        "NIGARI",
                        "nigari flakes (MgCl2·6H2O)",
                        Material.Kind.COAGULANT,
                        "",
                        Material.Unit.KILOGRAM,
                        20,
                        7,
                        20,
                        price),
                new Material(
                        "GYPSUM", "gypsum", Material.Kind.COAGULANT, "", Material.Unit.KILOGRAM, 20, 7, 20, price));
    }

    /** A step of two and a half kilograms. */
    private static final class BigHalf {
        static final java.math.BigDecimal TWO_AND_A_HALF = new java.math.BigDecimal("2.5");
    }
}

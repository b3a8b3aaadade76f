package dawnkettle.plan;

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
import dawnkettle.shop.Crew;
import dawnkettle.shop.Customer;
import dawnkettle.shop.Floor;
import dawnkettle.shop.House;
import dawnkettle.shop.Keeping;
import dawnkettle.shop.Kettle;
import dawnkettle.shop.Material;
import dawnkettle.shop.Opening;
import dawnkettle.shop.Pack;
import dawnkettle.shop.Packing;
import dawnkettle.shop.Presence;
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
import java.util.Random;
import java.util.Set;

/** Workshops that never were: stations, recipes, chains and vans drawn at random, each sound in itself. */
public final class AnyShop {
    static final Currency DOLLAR = Currency.getInstance("USD");
    private static final List<String> ZONES =
            List.of("America/New_York", "Europe/Berlin", "Asia/Tokyo", "Australia/Lord_Howe");

    private final Random dice;
    private final List<String> handStages = new ArrayList<>();

    private AnyShop(long seed) {
        this.dice = new Random(seed);
    }

    public static Shop of(long seed) {
        return new AnyShop(seed).shop();
    }

    private Shop shop() {
        int stages = between(3, 6);
        for (int i = 0; i < stages; i++) handStages.add("stage" + i);
        List<Recipe> recipes = recipes();
        List<Product> products = products(recipes);
        List<Route> routes = routes();
        House house = new House(
                "Nowhere Works",
                List.of("1 Nowhere"),
                ZoneId.of(ZONES.get(dice.nextInt(ZONES.size()))),
                "en",
                DOLLAR,
                House.Units.METRIC,
                House.Paper.A4,
                "us");
        return new Shop(
                house,
                products,
                recipes,
                floor(),
                routes,
                customers(routes),
                new ShopCalendar(EnumSet.range(DayOfWeek.MONDAY, DayOfWeek.SATURDAY), Map.of()),
                List.of(
                        material("BEANS", Material.Kind.BEANS, "yellow"),
                        material("OTHER", Material.Kind.BEANS, "black"),
                        material("NIGARI", Material.Kind.COAGULANT, "")),
                List.of(),
                new Climate(Collections.nCopies(12, Celsius.degrees(18)), Collections.nCopies(12, Celsius.degrees(12))),
                costs());
    }

    private static Costs costs() {
        return new Costs(cents(2200), cents(18), Share.percent(50), cents(400), cents(30000), cents(6000), cents(2));
    }

    static Money cents(long cents) {
        return Money.minor(cents, DOLLAR);
    }

    private static Material material(String code, Material.Kind kind, String soakGroup) {
        return new Material(code, code, kind, soakGroup, Material.Unit.KILOGRAM, 25, 7, 100, cents(3000));
    }

    private List<Recipe> recipes() {
        List<Recipe> recipes = new ArrayList<>();
        int soaked = between(1, 4);
        for (int i = 0; i < soaked; i++) {
            int step = between(1, 5);
            int least = step * between(1, 4);
            Kettle kettle = kettle(least, step, between(1, 4));
            recipes.add(recipe(i, Optional.of(dice.nextInt(4) == 0 ? "black" : "yellow"), Optional.empty(), kettle));
        }
        int made = between(0, 2);
        for (int i = 0; i < made; i++) {
            String parent = recipes.get(dice.nextInt(recipes.size())).code();
            recipes.add(recipe(soaked + i, Optional.empty(), Optional.of(parent), kettle(5, 5, between(1, 5))));
        }
        return recipes;
    }

    private static Kettle kettle(int least, int step, int steps) {
        return new Kettle(Mass.kilograms(least), Mass.kilograms(least + (long) step * steps), Mass.kilograms(step));
    }

    private Recipe recipe(int number, Optional<String> group, Optional<String> parent, Kettle kettle) {
        boolean flavoured = dice.nextInt(4) == 0;
        return new Recipe(
                "recipe" + number,
                "Recipe " + number,
                "R" + (char) ('A' + number),
                group,
                parent,
                kettle,
                Share.of("7.5"),
                group.map(any -> new Coagulant("NIGARI", Share.of("0.0032"))),
                new Yield(
                        Share.millionths(group.isPresent() ? 2_000_000 + dice.nextInt(1_000_000) : 480_000),
                        Share.percent(5),
                        Share.percent(dice.nextInt(4))),
                List.of(),
                flavoured ? List.of(Allergen.SOY, Allergen.SESAME) : List.of(Allergen.SOY),
                flavoured,
                steps());
    }

    private List<Step> steps() {
        List<Step> steps = new ArrayList<>();
        int count = between(2, 6);
        for (int i = 0; i < count; i++) {
            boolean bath = i > 0 && dice.nextInt(5) == 0;
            String stage = bath ? "bath" : handStages.get(dice.nextInt(handStages.size()));
            OptionalInt wait = dice.nextInt(2) == 0 || i == 0 ? OptionalInt.empty() : OptionalInt.of(between(0, 30));
            steps.add(new Step(
                    "step " + i,
                    stage,
                    bath ? between(60, 120) : between(3, 40),
                    bath ? 0 : dice.nextInt(4),
                    wait,
                    bath ? Optional.of(Celsius.degrees(2)) : Optional.empty()));
        }
        return steps;
    }

    private Floor floor() {
        List<WorkStation> stations = new ArrayList<>();
        for (String stage : handStages)
            for (int i = 0; i < between(1, 3); i++)
                stations.add(
                        new WorkStation(stage + "-" + i, stage, stage, "group", between(1, 3), Mass.ZERO, openings()));
        stations.add(
                new WorkStation("bath-0", "bath", "bath", "group", 0, Mass.kilograms(between(150, 600)), openings()));
        List<Tub> tubs = new ArrayList<>();
        for (int i = 0; i < between(2, 10); i++)
            tubs.add(new Tub("T" + i, Volume.litres(300), Mass.kilograms(between(30, 100)), between(10, 60)));
        List<ChangeoverRule> rules = dice.nextBoolean()
                ? List.of(new ChangeoverRule(handStages.get(0), between(0, 5), between(5, 20), between(5, 30)))
                : List.of();
        return new Floor(stations, tubs, crews(), presence(), rules);
    }

    private List<Opening> openings() {
        LocalTime from = LocalTime.of(between(1, 4), 30);
        if (dice.nextInt(3) == 0)
            return List.of(
                    new Opening(from, LocalTime.of(9, 0)), new Opening(LocalTime.of(9, 30), LocalTime.of(18, 0)));
        return List.of(new Opening(from, LocalTime.of(between(15, 20), 0)));
    }

    private List<Crew> crews() {
        return List.of(
                new Crew(new Opening(LocalTime.of(2, 0), LocalTime.of(8, 0)), between(4, 14)),
                new Crew(new Opening(LocalTime.of(8, 0), LocalTime.of(8, 30)), between(1, 4)),
                new Crew(new Opening(LocalTime.of(8, 30), LocalTime.of(18, 0)), between(4, 12)));
    }

    private List<Presence> presence() {
        Set<DayOfWeek> all = EnumSet.allOf(DayOfWeek.class);
        return List.of(
                new Presence(all, new Opening(LocalTime.of(3, 0), LocalTime.of(between(9, 14), 0)), false),
                new Presence(all, new Opening(LocalTime.of(15, 0), LocalTime.of(between(18, 22), 0)), true));
    }

    private List<Product> products(List<Recipe> recipes) {
        List<Product> products = new ArrayList<>();
        for (Recipe recipe : recipes)
            for (int i = 0; i < between(1, 3); i++)
                products.add(new Product(
                        "P" + products.size(),
                        "Product " + products.size(),
                        recipe.code(),
                        new Packing(
                                Pack.BLOCK,
                                Mass.grams(between(100, 5000)),
                                Optional.empty(),
                                between(1, 12),
                                dice.nextInt(6) == 0
                                        ? Optional.of(new BlockSize(250, 250, 90))
                                        : Optional.of(new BlockSize(100, 100, 50)),
                                cents(0)),
                        new Keeping(
                                between(3, 9), "owner", LocalDate.of(2026, 5, 1), Sealing.TRAY, false, between(0, 2)),
                        new Wording("soybeans", List.of(Allergen.SOY), "keep cold", "case-100x70", Optional.empty()),
                        cents(between(100, 2000)),
                        0,
                        dice.nextInt(4) == 0 ? between(1, 10) : 0));
        return products;
    }

    private List<Route> routes() {
        List<Route> routes = new ArrayList<>();
        for (int i = 0; i < between(1, 5); i++)
            routes.add(new Route(
                    "V" + i,
                    "Van " + i,
                    EnumSet.allOf(DayOfWeek.class),
                    LocalTime.of(between(6, 18), 0),
                    between(0, 60),
                    between(20, 400),
                    between(1, 3),
                    i % 2 == 0));
        return routes;
    }

    private List<Customer> customers(List<Route> routes) {
        List<Customer> customers = new ArrayList<>();
        for (int i = 0; i < between(2, 20); i++)
            customers.add(new Customer(
                    "C" + i,
                    "Customer " + i,
                    List.of(),
                    List.of(),
                    "everyday",
                    routes.get(dice.nextInt(routes.size())).code(),
                    i + 1,
                    between(1, 3),
                    false,
                    "Nowhere"));
        return customers;
    }

    private int between(int least, int most) {
        return least + dice.nextInt(most - least + 1);
    }
}

package dawnkettle.sheet;

import dawnkettle.book.BookLine;
import dawnkettle.book.ClosedBook;
import dawnkettle.book.OrderLine;
import dawnkettle.book.OrderNumber;
import dawnkettle.measure.Celsius;
import dawnkettle.measure.Mass;
import dawnkettle.plan.Allocation;
import dawnkettle.plan.DayFloor;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.Heading;
import dawnkettle.plan.PlannedBatch;
import dawnkettle.plan.PlannedLabel;
import dawnkettle.plan.PlannedOperation;
import dawnkettle.plan.PlannedOrder;
import dawnkettle.plan.PlannedRoute;
import dawnkettle.plan.PlannedSoak;
import dawnkettle.plan.Shortage;
import dawnkettle.plan.SoakCall;
import dawnkettle.shop.House;
import dawnkettle.shop.Product;
import dawnkettle.shop.Recipe;
import dawnkettle.shop.Shop;
import dawnkettle.shop.Step;
import dawnkettle.shop.WorkStation;
import dawnkettle.stock.LotCode;
import dawnkettle.stock.StockLot;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * A made-up day to write sheets for, of any size. It is not planned: batches follow one another on the first free place,
 * so that every sort of step, dose, pack, wash and lateness is on it.
 */
final class SampleDay {
    static final LocalDate DATE = LocalDate.of(2026, 12, 4);
    static final Instant PLANNED_AT = at(DATE.minusDays(1), 15, 0);

    private static final String[] ORDER = {"firm", "thin", "pouch", "sesame", "medium", "milk", "extra", "firm"};

    private final Shop shop;
    private final List<PlannedBatch> batches = new ArrayList<>();
    private final List<PlannedOperation> operations = new ArrayList<>();
    private final List<Allocation> allocation = new ArrayList<>();
    private final List<PlannedLabel> labels = new ArrayList<>();
    private final Map<String, Instant> free = new HashMap<>();
    private final Map<String, Integer> marks = new HashMap<>();

    private SampleDay(Shop shop) {
        this.shop = shop;
    }

    static DayPlan of(Shop shop, int batches) {
        return of(shop, batches, heading(1, OptionalInt.empty(), Heading.Mode.FULL));
    }

    static DayPlan of(Shop shop, int batches, Heading heading) {
        SampleDay day = new SampleDay(shop);
        for (int i = 0; i < batches; i++) day.batch(i);
        return day.plan(heading);
    }

    /** The same plan where nobody gets the packs of one line. */
    static DayPlan withoutAllocation(DayPlan plan, int index) {
        List<Allocation> left = new ArrayList<>(plan.allocation());
        left.remove(index);
        return new DayPlan(
                plan.heading(),
                plan.orders(),
                plan.demand(),
                plan.batches(),
                plan.soaks(),
                plan.floor(),
                plan.operations(),
                plan.stock(),
                left,
                plan.routes(),
                plan.labels(),
                plan.shortages(),
                plan.advice(),
                plan.warnings(),
                plan.quality());
    }

    static Shop shop() {
        return SampleShop.of(House.Units.METRIC, 14, 24);
    }

    static Heading heading(int revision, OptionalInt of, Heading.Mode mode) {
        List<Heading.Frozen> frozen = revision == 1
                ? List.of()
                : List.of(new Heading.Frozen(Heading.Frozen.Kind.TUB_FILLED, "T1", at(DATE.minusDays(1), 16, 7)));
        return new Heading(DATE, revision, of, PLANNED_AT, SampleShop.ZONE, 1, mode, frozen);
    }

    static Instant at(LocalDate day, int hour, int minute) {
        return ZonedDateTime.of(day, java.time.LocalTime.of(hour, minute), SampleShop.ZONE)
                .toInstant();
    }

    static SoakCall soakCall(DayPlan plan) {
        List<PlannedSoak> early =
                plan.soaks().subList(0, Math.min(2, plan.soaks().size()));
        return new SoakCall(
                DATE,
                PLANNED_AT,
                early,
                List.of(new SoakCall.GroupMass("yellow", Mass.kilograms(120))),
                List.of("If orders fall short, 5 kg may be over."));
    }

    static Fallback fallback(Shop shop) {
        List<Fallback.Line> lines = new ArrayList<>();
        for (int i = 0; i < shop.customers().size() * 2; i++) {
            var customer = shop.customers().get(i / 2);
            String product = shop.products().get(i * 3 % shop.products().size()).code();
            lines.add(new Fallback.Line(customer.route(), customer.code(), product, 5 + i % 30, i % 4 == 0 ? 24 : 0));
        }
        return new Fallback(DATE, DATE.minusWeeks(1), PLANNED_AT, lines);
    }

    /** Lines as of the fallback sheet, one of four for the day after; the book is open where the shop is large. */
    static Ordered ordered(Shop shop) {
        List<BookLine> lines = new ArrayList<>();
        for (Fallback.Line line : fallback(shop).lines())
            lines.add(new BookLine(
                    new OrderNumber("O-" + lines.size()),
                    1,
                    line.customer(),
                    line.route(),
                    line.product(),
                    line.packs(),
                    lines.size() % 4 == 3 ? DATE.plusDays(1) : DATE,
                    DATE,
                    OrderLine.Source.FILE,
                    false));
        boolean isSmall = shop.customers().size() < 100;
        return new Ordered(
                new ClosedBook(DATE, PLANNED_AT, lines),
                isSmall,
                isSmall ? Ordered.Reason.MISTAKE : Ordered.Reason.TOO_LONG,
                PLANNED_AT);
    }

    private void batch(int i) {
        String code = ORDER[i % ORDER.length];
        Recipe recipe = shop.recipe(code);
        int number = marks.merge(recipe.mark(), 1, Integer::sum);
        String id = String.format(java.util.Locale.ROOT, "B%02d", i + 1);
        LotCode lot = LotCode.of(DATE, recipe.mark(), number);
        Mass beans = recipe.madeFrom().isPresent() ? Mass.ZERO : Mass.grams(20_000 + 2_500L * (i % 5));
        Mass expected = recipe.madeFrom().isPresent()
                ? Mass.kilograms(24)
                : beans.times(recipe.yield().mean(), java.math.RoundingMode.DOWN);
        List<PlannedBatch.Filled> packs = packs(recipe, expected, i);
        batches.add(new PlannedBatch(
                id,
                lot,
                code,
                beans,
                beans.times(recipe.water(), java.math.RoundingMode.DOWN),
                recipe.coagulant().map(c -> new PlannedBatch.Dose(c.material(), Mass.grams(612 + 7L * i))),
                expected,
                beans.isZero() ? List.of() : List.of(new PlannedBatch.FromTub("T" + (1 + i / 3), beans)),
                List.of("SB-1187"),
                packs,
                Mass.grams(800),
                DATE,
                code.equals("thin")
                        ? List.of(new PlannedBatch.Feed(String.format(java.util.Locale.ROOT, "B%02d", i + 2), expected))
                        : List.of()));
        steps(id, recipe, expected);
        for (PlannedBatch.Filled filled : packs) sell(lot, filled, i);
    }

    private List<PlannedBatch.Filled> packs(Recipe recipe, Mass expected, int i) {
        List<Product> sold = shop.products().stream()
                .filter(product -> product.recipe().equals(recipe.code()))
                .toList();
        if (sold.isEmpty()) return List.of();
        Product product = sold.get(i / ORDER.length % sold.size());
        int packs = (int) expected.dividedBy(product.net());
        return List.of(new PlannedBatch.Filled(
                product.code(), packs, packs / product.packsInCase(), packs % product.packsInCase()));
    }

    private void steps(String id, Recipe recipe, Mass mass) {
        Instant ready = at(DATE, 2, 30);
        int seq = 1;
        for (Step step : recipe.steps()) {
            Place place = firstFree(step.stage());
            Instant start = later(ready, free.getOrDefault(place.key(), ready));
            Instant end = start.plusSeconds(60L * step.minutes());
            Mass occupies = place.station().places() == 0 ? mass : Mass.ZERO;
            operations.add(new PlannedOperation(
                    id,
                    seq++,
                    step.stage(),
                    place.station().code(),
                    place.number(),
                    start,
                    end,
                    step.halfHands(),
                    occupies));
            if (occupies.isZero()) free.put(place.key(), end);
            ready = end;
        }
    }

    private record Place(WorkStation station, int number) {
        String key() {
            return station.code() + number;
        }
    }

    private Place firstFree(String stage) {
        List<Place> places = new ArrayList<>();
        for (WorkStation station : shop.floor().stations())
            if (station.stage().equals(stage))
                for (int i = 1; i <= Math.max(1, station.places()); i++) places.add(new Place(station, i));
        return places.stream()
                .min(java.util.Comparator.comparing(place -> free.getOrDefault(place.key(), Instant.MIN)))
                .orElseThrow();
    }

    private static Instant later(Instant a, Instant b) {
        return a.isAfter(b) ? a : b;
    }

    private void sell(LotCode lot, PlannedBatch.Filled filled, int i) {
        Product product = shop.product(filled.product());
        List<Integer> parts = filled.loosePacks() > 0 ? List.of(filled.loosePacks()) : List.of();
        labels.add(new PlannedLabel(
                lot,
                product.code(),
                filled.cases(),
                parts,
                product.packsInCase(),
                DATE,
                product.keeping().bestBefore(DATE),
                Optional.empty(),
                "(10)" + lot));
        int left = filled.packs();
        for (int k = 0; left > 0; k++) {
            int packs = Math.min(left, 5 + 11 * (k % 4) + product.packsInCase() * (k % 3));
            var customer = shop.customers().get((i * 5 + k) % shop.customers().size());
            allocation.add(new Allocation(
                    new OrderNumber("O-" + i + "-" + k),
                    1,
                    customer.route(),
                    customer.code(),
                    product.code(),
                    packs,
                    lot,
                    false,
                    DATE,
                    13));
            left -= packs;
        }
    }

    private DayPlan plan(Heading heading) {
        StockLot stock = new StockLot(
                LotCode.of(DATE.minusDays(1), "FI", 9),
                shop.products().get(0).code(),
                17,
                DATE.minusDays(1),
                DATE.plusDays(13),
                true);
        var customer = shop.customers().get(1);
        allocation.add(new Allocation(
                new OrderNumber("O-S"),
                1,
                customer.route(),
                customer.code(),
                stock.product(),
                17,
                stock.lot(),
                true,
                DATE,
                13));
        return new DayPlan(
                heading,
                orders(),
                List.of(),
                batches,
                soaks(),
                new DayFloor(shop.recipes(), shop.floor().tubs(), List.of(), stations(), List.of(), changeovers()),
                operations,
                List.of(stock),
                allocation,
                routes(),
                labels,
                List.of(new Shortage(shop.products().get(0).code(), 9, "the press is taken until 10:05")),
                List.of("Start the first grind 20 minutes earlier and R2 is on time."),
                List.of(),
                Optional.empty());
    }

    private List<PlannedOrder> orders() {
        var customer = shop.customers().get(0);
        BookLine line = new BookLine(
                new OrderNumber("O-1"),
                1,
                customer.code(),
                customer.route(),
                shop.products().get(0).code(),
                24,
                DATE,
                DATE,
                OrderLine.Source.FILE,
                false);
        return List.of(new PlannedOrder(line, 15, "the press is taken until 10:05"));
    }

    private List<PlannedSoak> soaks() {
        Map<String, Mass> beans =
                new java.util.TreeMap<>(java.util.Comparator.comparingInt(tub -> Integer.parseInt(tub.substring(1))));
        Map<String, List<String>> into = new HashMap<>();
        for (PlannedBatch batch : batches)
            for (PlannedBatch.FromTub from : batch.soaks()) {
                beans.merge(from.tub(), from.beans(), Mass::plus);
                into.computeIfAbsent(from.tub(), tub -> new ArrayList<>()).add(batch.id());
            }
        List<PlannedSoak> soaks = new ArrayList<>();
        beans.forEach((tub, mass) -> {
            Instant fill = at(DATE.minusDays(1), 16, 10).plusSeconds(soaks.size() * 1_500L);
            soaks.add(new PlannedSoak(
                    tub,
                    "yellow",
                    mass,
                    soaks.size() == 1 ? List.of("SB-1187", "SB-1203") : List.of("SB-1187"),
                    mass.times(3),
                    Celsius.degrees(12),
                    Celsius.degrees(18),
                    "sensor in the soak room",
                    fill,
                    fill.plusSeconds(10 * 3600 + 900),
                    fill.plusSeconds(18 * 3600),
                    700,
                    soaks.size() == 2 ? Mass.grams(2_500) : Mass.ZERO,
                    into.get(tub)));
        });
        return soaks;
    }

    private List<DayFloor.DayStation> stations() {
        return shop.floor().stations().stream()
                .map(one -> new DayFloor.DayStation(
                        one.code(), one.stage(), one.places(), one.capacity().inGrams(), List.of()))
                .toList();
    }

    private List<DayFloor.DayChangeover> changeovers() {
        List<DayFloor.DayChangeover> changeovers = new ArrayList<>();
        for (Recipe from : shop.recipes())
            for (Recipe to : shop.recipes())
                if (from.allergens().size() > to.allergens().size())
                    changeovers.add(new DayFloor.DayChangeover("G1", from.code(), to.code(), 20));
                else if (from.code().equals("milk") && !to.code().equals("milk"))
                    changeovers.add(new DayFloor.DayChangeover("C1", from.code(), to.code(), 5));
        return changeovers;
    }

    private List<PlannedRoute> routes() {
        return shop.routes().stream()
                .map(route -> {
                    Instant leaves = route.departs()
                            .atDate(route.code().startsWith("M") ? DATE.plusDays(1) : DATE)
                            .atZone(SampleShop.ZONE)
                            .toInstant();
                    int late = route.code().equals("R2") ? 25 : 0;
                    return new PlannedRoute(
                            route.code(),
                            leaves,
                            route.loadMinutes(),
                            route.weight(),
                            leaves.minusSeconds(60L * (30 - late)),
                            late);
                })
                .toList();
    }
}

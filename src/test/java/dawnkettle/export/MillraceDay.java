package dawnkettle.export;

import dawnkettle.book.ClosedBook;
import dawnkettle.book.OrderBook;
import dawnkettle.conf.Configuration;
import dawnkettle.conf.ReadConfiguration;
import dawnkettle.floor.Budget;
import dawnkettle.measure.Celsius;
import dawnkettle.measure.Mass;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.Evening;
import dawnkettle.plan.PlanDay;
import dawnkettle.plan.SoakCall;
import dawnkettle.plan.Temperatures;
import dawnkettle.shop.Material;
import dawnkettle.shop.Product;
import dawnkettle.shop.Shop;
import dawnkettle.stock.BeanLot;
import dawnkettle.stock.LotCode;
import dawnkettle.stock.StockLot;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;

/** A day of the demonstration shop: its standing orders, a little stock, a few sacks of beans, a room of some temperature. */
public final class MillraceDay {
    static final Configuration CONF = ReadConfiguration.from(Path.of("conf"));
    public static final Shop SHOP = CONF.shop();
    static final LocalDate DAY = LocalDate.of(2026, 12, 4);
    private static final LocalTime CLOSE = LocalTime.of(15, 0);
    private static final long DECODES = 300;

    /** The plan of a Friday at a room temperature that needs no early fill. */
    public static final DayPlan PLAN = PlanDay.of(SHOP, evening(25));

    static final String TEXT = PlanJson.write(PLAN, SHOP);

    private MillraceDay() {}

    public static Evening evening(int roomDegrees) {
        return evening(roomDegrees, closesAt(), Optional.empty());
    }

    /** The plan of a room so cold that tubs are filled in the morning, before the book closes. */
    static DayPlan coldPlan() {
        Evening morning = evening(12, at(DAY.minusDays(1), LocalTime.of(6, 0)), Optional.empty());
        SoakCall call = PlanDay.soakCall(SHOP, morning, closesAt());
        if (call.isEmpty()) throw new IllegalStateException("nothing had to be filled early");
        return PlanDay.of(SHOP, evening(12, closesAt(), Optional.of(call)));
    }

    private static Evening evening(int roomDegrees, Instant now, Optional<SoakCall> call) {
        return new Evening(
                book(),
                Evening.Outlook.NONE,
                new Evening.Larder(stock(), beans()),
                new Evening.SoakRoom(
                        new Temperatures(Celsius.degrees(roomDegrees), Celsius.degrees(10), "a value typed in"),
                        call,
                        List.of()),
                Evening.Committed.NOTHING,
                now,
                new Budget(DECODES, 20261204, 120_000));
    }

    static Instant closesAt() {
        return at(DAY.minusDays(1), CLOSE);
    }

    static Instant at(LocalDate day, LocalTime time) {
        return day.atTime(time).atZone(SHOP.house().zone()).toInstant();
    }

    private static ClosedBook book() {
        return new OrderBook(SHOP, List.of(), List.of(), CONF.standing(), List.of()).close(DAY, closesAt());
    }

    private static List<StockLot> stock() {
        LocalDate packed = DAY.minusDays(1);
        return SHOP.products().stream()
                .limit(4)
                .map(product -> new StockLot(
                        LotCode.of(packed, SHOP.recipeOf(product).mark(), 1),
                        product.code(),
                        10,
                        packed,
                        bestBefore(product, packed),
                        true))
                .toList();
    }

    private static LocalDate bestBefore(Product product, LocalDate packed) {
        return product.keeping().bestBefore(packed);
    }

    private static List<BeanLot> beans() {
        return SHOP.materials().stream()
                .filter(material -> material.kind() == Material.Kind.BEANS)
                .flatMap(material -> java.util.stream.Stream.of(
                        new BeanLot("OLD-" + material.code(), material.code(), Mass.kilograms(130), DAY.minusDays(40)),
                        new BeanLot("NEW-" + material.code(), material.code(), Mass.kilograms(2000), DAY.minusDays(5))))
                .toList();
    }
}

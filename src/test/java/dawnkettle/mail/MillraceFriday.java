package dawnkettle.mail;

import dawnkettle.book.BookLine;
import dawnkettle.book.OrderLine;
import dawnkettle.book.OrderNumber;
import dawnkettle.measure.Celsius;
import dawnkettle.measure.Mass;
import dawnkettle.plan.DayFloor;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.Heading;
import dawnkettle.plan.PlannedBatch;
import dawnkettle.plan.PlannedBatch.Dose;
import dawnkettle.plan.PlannedBatch.Feed;
import dawnkettle.plan.PlannedBatch.Filled;
import dawnkettle.plan.PlannedBatch.FromTub;
import dawnkettle.plan.PlannedLabel;
import dawnkettle.plan.PlannedOperation;
import dawnkettle.plan.PlannedOrder;
import dawnkettle.plan.PlannedRoute;
import dawnkettle.plan.PlannedSoak;
import dawnkettle.plan.Quality;
import dawnkettle.plan.Shortage;
import dawnkettle.stock.LotCode;
import dawnkettle.stock.StockLot;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** A Friday at the Millrace, worked out by hand: five batches, three vans. */
public final class MillraceFriday {
    public static final LocalDate DAY = LocalDate.of(2026, 12, 4);
    private static final ZoneId ZONE = ZoneId.of("America/New_York");

    private MillraceFriday() {}

    static Instant at(String time) {
        return LocalDateTime.parse(time).atZone(ZONE).toInstant();
    }

    private static Instant today(String time) {
        return at("2026-12-04T" + time);
    }

    /** The day as it should be. */
    public static DayPlan well() {
        return plan(routes(0, 0), orders(0), List.of(), List.of(), List.of());
    }

    /** The same day with two vans late and twelve packs short. */
    static DayPlan troubled() {
        return plan(
                routes(12, 7),
                orders(12),
                List.of(new Shortage("FIRM-12", 12, "the cold bath is full from 05:40 to 07:10")),
                List.of("Starting the first grind at 02:15 instead of 02:40 would bring both vans out on time."),
                List.of("Lot QS-2211 is the first tub of a new lot: watch its soak."));
    }

    /** The same day with so much more in the first tub than its batches take. */
    public static DayPlan withLeftOver(Mass leftOver) {
        DayPlan plan = well();
        PlannedSoak tub = plan.soaks().get(0);
        PlannedSoak fuller = new PlannedSoak(
                tub.tub(),
                tub.soakGroup(),
                tub.beans().plus(leftOver),
                tub.beanLots(),
                tub.water(),
                tub.waterTemperature(),
                tub.room(),
                tub.source(),
                tub.fillAt(),
                tub.readyAt(),
                tub.latestGrindAt(),
                tub.equivalentMinutes(),
                leftOver,
                tub.batches());
        return new DayPlan(
                plan.heading(),
                plan.orders(),
                plan.demand(),
                plan.batches(),
                List.of(fuller, plan.soaks().get(1)),
                plan.floor(),
                plan.operations(),
                plan.stock(),
                plan.allocation(),
                plan.routes(),
                plan.labels(),
                plan.shortages(),
                plan.advice(),
                plan.warnings(),
                plan.quality());
    }

    static DayPlan plan(
            List<PlannedRoute> routes,
            List<PlannedOrder> orders,
            List<Shortage> shortages,
            List<String> advice,
            List<String> warnings) {
        return new DayPlan(
                new Heading(
                        DAY, 1, OptionalInt.empty(), at("2026-12-03T18:00:12"), ZONE, 7, Heading.Mode.FULL, List.of()),
                orders,
                List.of(),
                batches(),
                soaks(),
                new DayFloor(List.of(), List.of(), List.of(), List.of(), List.of(), List.of()),
                operations(),
                stock(),
                List.of(),
                routes,
                labels(),
                shortages,
                advice,
                warnings,
                Optional.of(new Quality(
                        0, today("08:22:00"), today("08:07:00"), new BigDecimal("4.6"), 5000, 5000, false)));
    }

    static List<PlannedRoute> routes(int late, int later) {
        return List.of(
                route("HAR", "11:45:00", 30, late),
                route("MIL", "10:30:00", 35, 0),
                route("HIL", "13:15:00", 50, later));
    }

    private static PlannedRoute route(String code, String departs, int spare, int late) {
        Instant packBy = today(departs).minusSeconds(30 * 60);
        Instant packed = late > 0 ? packBy.plusSeconds(60L * late) : packBy.minusSeconds(60L * spare);
        return new PlannedRoute(code, today(departs), 30, 1, packed, late);
    }

    private static List<PlannedOrder> orders(int declined) {
        String why = declined > 0 ? "priority 3 in a shortage" : "";
        return List.of(
                new PlannedOrder(line("H-118", "HERON", "MIL", "FIRM-12", 240), 240, ""),
                new PlannedOrder(line("S-77", "SOUP", "HAR", "FIRM-BK", 7), 7, ""),
                new PlannedOrder(line("N-31", "NOODLE", "HIL", "FIRM-12", 100), 100 - declined, why),
                new PlannedOrder(line("N-31", "NOODLE", "HIL", "POUCH-10", 110), 110, ""),
                new PlannedOrder(line("H-118", "HERON", "MIL", "MILK-1", 174), 174, ""));
    }

    static BookLine line(String order, String customer, String route, String product, int packs) {
        return new BookLine(
                new OrderNumber(order), 1, customer, route, product, packs, DAY, DAY, OrderLine.Source.FILE, false);
    }

    private static List<PlannedBatch> batches() {
        return List.of(
                firm("B01", 1, "A", List.of(new Filled("FIRM-12", 120, 10, 0), new Filled("FIRM-BK", 7, 7, 0)), 2_500),
                firm("B02", 2, "A", List.of(new Filled("FIRM-12", 220, 18, 4)), 2_500),
                new PlannedBatch(
                        "B03",
                        LotCode.of(DAY, "TF", 1),
                        "thin",
                        Mass.kilograms(20),
                        Mass.kilograms(140),
                        Optional.of(new Dose("NIGARI", Mass.grams(420))),
                        Mass.kilograms(48),
                        List.of(new FromTub("B", Mass.kilograms(20))),
                        List.of("QS-2211"),
                        List.of(),
                        Mass.grams(1_500),
                        DAY,
                        List.of(new Feed("B04", Mass.grams(46_500)))),
                new PlannedBatch(
                        "B04",
                        LotCode.of(DAY, "FP", 1),
                        "fried",
                        Mass.ZERO,
                        Mass.ZERO,
                        Optional.empty(),
                        Mass.grams(22_320),
                        List.of(),
                        List.of("QS-2211"),
                        List.of(new Filled("POUCH-10", 110, 11, 0)),
                        Mass.grams(320),
                        DAY,
                        List.of()),
                new PlannedBatch(
                        "B05",
                        LotCode.of(DAY, "SM", 1),
                        "milk",
                        Mass.kilograms(24),
                        Mass.kilograms(168),
                        Optional.empty(),
                        Mass.kilograms(180),
                        List.of(new FromTub("B", Mass.kilograms(24))),
                        List.of("QS-2211"),
                        List.of(new Filled("MILK-1", 174, 29, 0)),
                        Mass.grams(780),
                        DAY,
                        List.of()));
    }

    private static PlannedBatch firm(String id, int number, String tub, List<Filled> packs, int trimGrams) {
        return new PlannedBatch(
                id,
                LotCode.of(DAY, "FI", number),
                "firm",
                Mass.kilograms(30),
                Mass.kilograms(210),
                Optional.of(new Dose("NIGARI", Mass.grams(630))),
                Mass.grams(79_500),
                List.of(new FromTub(tub, Mass.kilograms(30))),
                List.of("QS-2187"),
                packs,
                Mass.grams(trimGrams),
                DAY,
                List.of());
    }

    private static List<PlannedSoak> soaks() {
        return List.of(
                soak("A", 60, "QS-2187", "2026-12-03T13:10:00", "2026-12-04T02:25:00", List.of("B01", "B02")),
                soak("B", 44, "QS-2211", "2026-12-03T14:30:00", "2026-12-04T03:50:00", List.of("B03", "B05")));
    }

    private static PlannedSoak soak(
            String tub, int kilograms, String lot, String fill, String ready, List<String> batches) {
        return new PlannedSoak(
                tub,
                "yellow",
                Mass.kilograms(kilograms),
                List.of(lot),
                Mass.kilograms(kilograms * 3L),
                Celsius.tenths(115),
                Celsius.tenths(182),
                "the monthly norms of the configuration",
                at(fill),
                at(ready),
                at(ready).plusSeconds(4 * 3600),
                470,
                Mass.ZERO,
                batches);
    }

    private static List<PlannedOperation> operations() {
        List<PlannedOperation> all = new ArrayList<>();
        Instant start = today("02:40:00");
        for (String batch : List.of("B01", "B02", "B03", "B05")) {
            steps(
                    all,
                    batch,
                    start,
                    List.of("grind 12", "cook 20", "filter 12", "set 18", "press 40", "bath 90", "pack 30"));
            start = start.plusSeconds(40 * 60);
        }
        steps(all, "B04", today("06:30:00"), List.of("fry 45", "pack 30"));
        return all;
    }

    private static void steps(List<PlannedOperation> all, String batch, Instant first, List<String> stages) {
        Instant start = first;
        for (int i = 0; i < stages.size(); i++) {
            String[] stage = stages.get(i).split(" ");
            Instant end = start.plusSeconds(60L * Integer.parseInt(stage[1]));
            int halfHands = stage[0].equals("bath") || stage[0].equals("press") ? 0 : 2;
            all.add(new PlannedOperation(batch, i + 1, stage[0], stage[0] + "-1", 1, start, end, halfHands, Mass.ZERO));
            start = end;
        }
    }

    private static List<StockLot> stock() {
        return List.of(
                new StockLot(
                        new LotCode("261128-FI02"),
                        "FIRM-12",
                        18,
                        LocalDate.of(2026, 11, 28),
                        LocalDate.of(2026, 12, 8),
                        true),
                new StockLot(
                        new LotCode("261203-SM01"),
                        "MILK-1",
                        12,
                        LocalDate.of(2026, 12, 3),
                        LocalDate.of(2026, 12, 13),
                        false));
    }

    private static List<PlannedLabel> labels() {
        return List.of(
                label("261204-FI01", "FIRM-12", 10, List.of(), 12),
                label("261204-FI01", "FIRM-BK", 7, List.of(), 1),
                label("261204-FI02", "FIRM-12", 18, List.of(4), 12),
                label("261204-FP01", "POUCH-10", 11, List.of(), 10),
                label("261204-SM01", "MILK-1", 29, List.of(), 6));
    }

    private static PlannedLabel label(String lot, String product, int cases, List<Integer> part, int inCase) {
        LocalDate best = DAY.plusDays(10);
        return new PlannedLabel(
                new LotCode(lot), product, cases, part, inCase, DAY, best, Optional.empty(), "(15)261214(10)" + lot);
    }

    /** A night on which everything came out. */
    static NightReport quietNight() {
        return quietNight(List.of(
                new NightReport.Yielded(LocalDate.of(2026, 12, 3), "firm", Mass.kilograms(120), Mass.grams(312_600))));
    }

    static NightReport quietNight(List<NightReport.Yielded> yields) {
        return new NightReport(
                new NightReport.Orders(3, 5, List.of(), List.of()),
                new NightReport.Sheets(List.of("soak", "run", "pick", "routes"), List.of()),
                new NightReport.Labels(0, List.of(), List.of()),
                NightReport.Notes.NONE,
                yields);
    }

    /** A night on which much went wrong. */
    static NightReport badNight() {
        return new NightReport(
                new NightReport.Orders(
                        3,
                        5,
                        List.of("orders-1203.csv line 4: no product \"FRIM-12\"; did they mean FIRM-12?"),
                        List.of("N-31 line 1: 88 becomes 100 packs, 18:42")),
                new NightReport.Sheets(
                        List.of("soak", "run", "pick"), List.of("routes: the office printer is out of paper")),
                new NightReport.Labels(28, List.of("261204-FI02 FIRM-12, labels 11 to 18"), List.of()),
                new NightReport.Notes(
                        List.of("Tub B was filled 25 minutes late; its beans are ready at 03:50 instead of 03:25."),
                        List.of(
                                "Magnesium chloride hexahydrate: 18 kg left, 14 days to get more; order 20 kg by Mon 7 Dec."),
                        List.of(
                                "Heron & Reed Grocers ask for 240 blocks, twice their usual number. Answer \"yes H-118\" or a number.")),
                List.of());
    }
}

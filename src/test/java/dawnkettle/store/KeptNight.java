package dawnkettle.store;

import dawnkettle.book.Amendment;
import dawnkettle.book.BookLine;
import dawnkettle.book.ClosedBook;
import dawnkettle.book.OrderBook;
import dawnkettle.book.OrderLine;
import dawnkettle.book.OrderNumber;
import dawnkettle.book.SmallShop;
import dawnkettle.measure.Celsius;
import dawnkettle.measure.Mass;
import dawnkettle.plan.Allocation;
import dawnkettle.plan.DayFloor;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.Heading;
import dawnkettle.plan.PlannedBatch;
import dawnkettle.plan.PlannedLabel;
import dawnkettle.plan.PlannedOrder;
import dawnkettle.plan.PlannedSoak;
import dawnkettle.plan.SoakCall;
import dawnkettle.stock.Fact;
import dawnkettle.stock.LotCode;
import dawnkettle.stock.Recorded;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** One small night, by hand: two lines closed, one tub, one batch of 30 packs, 24 of them promised. */
final class KeptNight {
    static final LocalDate THURSDAY = LocalDate.of(2026, 12, 3);
    static final LocalDate FRIDAY = LocalDate.of(2026, 12, 4);
    static final Instant CUT_OFF = Instant.parse("2026-12-02T20:00:00Z");
    static final LotCode LOT = new LotCode("261203-FI01");
    static final LotCode FED = new LotCode("261203-FR01");

    private KeptNight() {}

    static OrderLine line(String order, int packs) {
        return new OrderLine(
                new OrderNumber(order),
                1,
                "HARB",
                "FIRM-12",
                packs,
                FRIDAY,
                OrderLine.Source.FILE,
                "orders.csv:2:1",
                CUT_OFF.minusSeconds(3600));
    }

    /** Every table gets at least one row. */
    static void fill(Ledger ledger) {
        ledger.orders().add(List.of(line("A1", 18), line("A2", 8)));
        ledger.orders()
                .amend(List.of(new Amendment(
                        new OrderNumber("A1"), 1, 16, OrderLine.Source.MAIL, "mail", CUT_OFF.minusSeconds(60), false)));
        ledger.orders().takeFile("0".repeat(64), "orders.csv", CUT_OFF);
        ClosedBook closed = ledger.closes()
                .close(ledger.book(SmallShop.open(), List.of(), THURSDAY).close(THURSDAY, CUT_OFF));
        ledger.soaks().commit(call());
        ledger.plans().keep(plan(1, closed), "{\"revision\":1}");
        StepKey close = StepKey.of("close", THURSDAY);
        ledger.steps().due(close, CUT_OFF, CUT_OFF);
        ledger.steps().start(close, CUT_OFF);
        ledger.steps().done(close, CUT_OFF, "2 lines, 24 packs");
        ledger.effects().intend(LabelRows.effectKey(LOT, "FIRM-12"), Effect.Kind.LABEL, THURSDAY, CUT_OFF);
        ledger.labels().confirmed(new LabelGroup(LOT, "FIRM-12", 1, 3), CUT_OFF.plusSeconds(3600));
        ledger.labels().inFlight(new LabelGroup(LOT, "FIRM-12", 1, 3), CUT_OFF);
        ledger.labels().landed(LOT, "FIRM-12", CUT_OFF.plusSeconds(3600));
        ledger.outbox().queue("<1@shop.example>", "Thursday", new byte[] {1, 2, 3}, CUT_OFF);
        ledger.clock().note(ClockRows.Kind.CONFIRMED, CUT_OFF, THURSDAY, "", "a person said so");
        ledger.restored()
                .note(new RestoredRows.Restored(
                        CUT_OFF,
                        "ledger-2026-12-02.db",
                        CUT_OFF.minusSeconds(60),
                        true,
                        List.of(new LabelRows.Labelled(FED, "FRY-10"))));
        ledger.erased().blank(List.of(), CUT_OFF, "asked for");
        ledger.mails()
                .end(
                        new MailRows.Spot(7, 1),
                        "<1@kitchen.example>",
                        "0".repeat(64),
                        new MailEnd(MailEnd.State.TAKEN, "C002", true, java.time.Instant.EPOCH, "taken"));
        ledger.alarms()
                .now(
                        List.of(new KeptAlarm(
                                "failed plan", "no plan", "orders", "look", Optional.empty(), false, Optional.empty())),
                        CUT_OFF);
        ledger.records()
                .add(new Recorded(
                        new Fact.Cooked(LOT, Celsius.degrees(97), 7), CUT_OFF, CUT_OFF, "mail <2@shop.example>:1"));
    }

    static SoakCall call() {
        return new SoakCall(
                THURSDAY,
                CUT_OFF.minusSeconds(7200),
                List.of(tub(List.of())),
                List.of(new SoakCall.GroupMass("plain", Mass.kilograms(6))),
                List.of("fill before six", "one tub is enough"));
    }

    static PlannedSoak tub(List<String> batches) {
        return new PlannedSoak(
                "T1",
                "plain",
                Mass.kilograms(6),
                List.of("BEANS-1", "BEANS-2"),
                Mass.kilograms(18),
                Celsius.degrees(11),
                Celsius.tenths(183),
                "sensor",
                CUT_OFF.minusSeconds(3600),
                CUT_OFF.plusSeconds(40_000),
                CUT_OFF.plusSeconds(80_000),
                700,
                Mass.ZERO,
                batches,
                java.util.Optional.empty(),
                List.of(Mass.kilograms(4), Mass.kilograms(2)));
    }

    /** Both lines whole, six packs over; a first batch feeds a second of no packs. */
    static DayPlan plan(int revision, ClosedBook book) {
        List<PlannedOrder> orders = new ArrayList<>();
        List<Allocation> allocation = new ArrayList<>();
        for (BookLine line : book.lines()) {
            orders.add(new PlannedOrder(line, line.packs(), ""));
            allocation.add(new Allocation(
                    line.order(),
                    line.line(),
                    line.route(),
                    line.customer(),
                    line.product(),
                    line.packs(),
                    LOT,
                    false,
                    line.deliveryDate(),
                    8));
        }
        return new DayPlan(
                new Heading(
                        THURSDAY,
                        revision,
                        revision == 1 ? OptionalInt.empty() : OptionalInt.of(revision - 1),
                        CUT_OFF,
                        ZoneId.of("America/New_York"),
                        1,
                        Heading.Mode.FULL,
                        List.of()),
                orders,
                List.of(),
                List.of(batch(), fed()),
                List.of(tub(List.of("B01"))),
                new DayFloor(List.of(), List.of(), List.of(), List.of(), List.of(), List.of()),
                List.of(),
                List.of(),
                allocation,
                List.of(),
                List.of(label()),
                List.of(),
                List.of(),
                List.of(),
                Optional.empty());
    }

    private static PlannedBatch batch() {
        return new PlannedBatch(
                "B01",
                LOT,
                "firm",
                Mass.kilograms(6),
                Mass.kilograms(42),
                Optional.of(new PlannedBatch.Dose("NIGARI", Mass.grams(90))),
                Mass.grams(14_400),
                List.of(new PlannedBatch.FromTub("T1", Mass.kilograms(6))),
                List.of("BEANS-1", "NIG-1"),
                List.of(new PlannedBatch.Filled("FIRM-12", 30, 2, 6)),
                Mass.grams(200),
                THURSDAY,
                List.of(new PlannedBatch.Feed("B02", Mass.grams(4_000))));
    }

    private static PlannedBatch fed() {
        return new PlannedBatch(
                "B02",
                FED,
                "fried",
                Mass.ZERO,
                Mass.ZERO,
                Optional.empty(),
                Mass.grams(3_000),
                List.of(),
                List.of(),
                List.of(),
                Mass.grams(3_000),
                THURSDAY,
                List.of());
    }

    private static PlannedLabel label() {
        return new PlannedLabel(
                LOT, "FIRM-12", 2, List.of(6), 12, THURSDAY, THURSDAY.plusDays(9), Optional.empty(), "(15)261212(10)x");
    }

    static OrderBook book(Ledger ledger) {
        return ledger.book(SmallShop.open(), List.of(), THURSDAY);
    }
}

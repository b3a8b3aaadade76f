package dawnkettle;

import dawnkettle.command.Wiring;
import dawnkettle.conf.Configuration;
import dawnkettle.measure.Celsius;
import dawnkettle.measure.Mass;
import dawnkettle.measure.Money;
import dawnkettle.night.CloseBook;
import dawnkettle.night.Office;
import dawnkettle.night.PlanTomorrow;
import dawnkettle.plan.Allocation;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.PlannedBatch;
import dawnkettle.plan.PlannedSoak;
import dawnkettle.plan.Temperatures;
import dawnkettle.shop.Material;
import dawnkettle.shop.PackUse;
import dawnkettle.shop.Shop;
import dawnkettle.stock.Fact;
import dawnkettle.stock.LotCode;
import dawnkettle.stock.Quantity;
import dawnkettle.stock.Recorded;
import dawnkettle.stock.StockLot;
import dawnkettle.store.Ledger;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;

/**
 * Many days of the demonstration shop on one ledger: planned without search from its standing orders, then recorded as a
 * careful and clumsy crew would: goods received, yields, waste, packs lost, sold, returned and destroyed, counts that differ,
 * holds, slips that are cancelled. What was told is kept beside it, so that the ledger can be checked against it.
 */
final class SimulatedYear implements AutoCloseable {
    private static final LocalTime CLOSE = LocalTime.of(15, 0);

    final CopiedShop shopFolder;
    final Configuration conf;
    final Shop shop;
    final Path file;
    final List<DayPlan> plans = new ArrayList<>();
    /** What was received of each bought lot, in the smallest of its unit. */
    final Map<String, Long> received = new TreeMap<>();
    /** What counts changed, by bought lot. */
    final Map<String, Long> lostOfLot = new TreeMap<>();

    final List<LotCode> lostBatches = new ArrayList<>();
    private final MovedClock clock;
    private final Random chance;
    private final Ledger ledger;
    private final Office office;
    private final Map<String, Long> roughlyLeft = new HashMap<>();
    private int told;

    SimulatedYear(Path folder, long seed) throws IOException {
        shopFolder = CopiedShop.quick(folder).withoutHistory().with("shop.toml", "decodes = 1500", "decodes = 0");
        conf = new Main().configuration(shopFolder.conf());
        shop = conf.shop();
        chance = new Random(seed);
        clock = new MovedClock(Instant.EPOCH, shop.house().zone());
        file = Files.createDirectories(shopFolder.out()).resolve("ledger.db");
        ledger = Ledger.open(file);
        office = office(ledger);
    }

    /** An office on a ledger at the year's time. */
    Office office(Ledger on) {
        return new Main()
                .rehearsal(
                        conf,
                        new Wiring.Stage(
                                shopFolder.conf(),
                                shopFolder.out(),
                                on,
                                clock,
                                (at, line) -> {},
                                Optional.of(now ->
                                        new Temperatures(Celsius.degrees(22), Celsius.degrees(14), "set by hand"))));
    }

    Ledger ledger() {
        return ledger;
    }

    Instant now() {
        return clock.instant();
    }

    LocalDate play(LocalDate first, int days) {
        LocalDate day = shop.calendar().next(first.minusDays(1));
        for (int i = 0; i < days; i++) {
            LocalDate before = shop.calendar().previous(day);
            clock.moveTo(at(before, 11, 0));
            LocalDate making = day;
            ledger.inTransaction(() -> buy(before));
            clock.moveTo(before.atTime(CLOSE).atZone(shop.house().zone()).toInstant());
            new CloseBook(office).run(day);
            new PlanTomorrow(office).run(day);
            DayPlan plan = office.plan(day).orElseThrow();
            plans.add(plan);
            take(plan);
            clock.moveTo(at(day, 21, 0));
            ledger.inTransaction(() -> record(making, plan));
            day = shop.calendar().next(day);
        }
        return day;
    }

    private Instant at(LocalDate day, int hour, int minute) {
        return day.atTime(hour, minute).atZone(shop.house().zone()).toInstant();
    }

    private void tell(Fact fact, Instant at) {
        ledger.records().add(new Recorded(fact, at, clock.instant(), "year " + ++told));
    }

    /** Whatever is at its reorder point comes in at once, a few packs of it. */
    private void buy(LocalDate day) {
        for (Material material : shop.materials()) {
            long left = roughlyLeft.getOrDefault(material.code(), 0L);
            if (left > smallest(material, material.reorder())) continue;
            long amount = smallest(
                    material, (material.reorder() / material.packSize() + 1 + chance.nextInt(3)) * material.packSize());
            String lot = material.code() + "-" + day.toString().replace("-", "").substring(2);
            tell(
                    new Fact.Received(
                            material.code(),
                            lot,
                            new Quantity(amount, material.unit()),
                            Money.minor(
                                    1_000 + chance.nextInt(100_000),
                                    shop.house().currency()),
                            chance.nextInt(3) == 0
                                    ? Optional.of(day.plusDays(200 + chance.nextInt(200)))
                                    : Optional.empty()),
                    at(day, 9, 0));
            received.merge(lot, amount, Long::sum);
            roughlyLeft.merge(material.code(), amount, Long::sum);
            if (chance.nextInt(6) == 0) spill(material, lot, day);
        }
    }

    private void spill(Material material, String lot, LocalDate day) {
        long some = smallest(material, 1);
        tell(new Fact.LostMaterial(material.code(), lot, new Quantity(some, material.unit()), "spilt"), at(day, 10, 0));
        lostOfLot.merge(lot, some, Long::sum);
        roughlyLeft.merge(material.code(), -some, Long::sum);
    }

    private static long smallest(Material material, long units) {
        return switch (material.unit()) {
            case KILOGRAM -> units * 1_000_000;
            case LITRE -> units * 1_000;
            case PIECE -> units;
        };
    }

    /** A rough book of what is left, only to know when to buy. */
    private void take(DayPlan plan) {
        for (PlannedSoak soak : plan.soaks())
            shop.materials().stream()
                    .filter(material -> material.soakGroup().equals(soak.soakGroup()))
                    .forEach(beans ->
                            roughlyLeft.merge(beans.code(), -soak.beans().milligrams(), Long::sum));
        for (PlannedBatch batch : plan.batches()) {
            batch.coagulant()
                    .ifPresent(dose ->
                            roughlyLeft.merge(dose.material(), -dose.mass().milligrams(), Long::sum));
            shop.recipe(batch.recipe())
                    .ingredients()
                    .forEach(added -> roughlyLeft.merge(
                            added.material(),
                            -batch.expected()
                                    .times(added.perProduct(), java.math.RoundingMode.HALF_UP)
                                    .milligrams(),
                            Long::sum));
            for (PlannedBatch.Filled filled : batch.packs())
                for (PackUse use : shop.costs().details().packing())
                    if (use.product().equals(filled.product()))
                        roughlyLeft.merge(use.material(), -(long) filled.packs(), Long::sum);
        }
    }

    private void record(LocalDate day, DayPlan plan) {
        for (PlannedBatch batch : plan.batches()) batch(day, batch);
        for (Allocation one : plan.allocation()) if (chance.nextInt(150) == 0) giveBack(day, one);
        for (StockLot lot : ledger.stock().finished(shop, shop.calendar().next(day))) stock(day, lot);
        if (chance.nextInt(4) == 0)
            tell(new Fact.SoakSeen(day, plan.soaks().get(0).tub(), true), at(day, 1, 30));
    }

    /** More than was planned to be filled comes out; the rest is thrown away or cut off. */
    private void batch(LocalDate day, PlannedBatch batch) {
        Mass fixed = Mass.sum(batch.packs().stream()
                        .map(filled -> shop.product(filled.product()).net().times(filled.packs()))
                        .toList())
                .plus(Mass.sum(
                        batch.feeds().stream().map(PlannedBatch.Feed::mass).toList()));
        Mass waste = Mass.grams(chance.nextInt(500));
        Mass trim = Mass.milligrams(chance.nextInt(900_000));
        Mass input = batch.beans().isZero() ? Mass.grams(1) : batch.beans();
        if (chance.nextInt(40) == 0) slip(day, batch, input);
        tell(
                new Fact.Yielded(
                        batch.lot(), batch.recipe(), input, fixed.plus(waste).plus(trim)),
                at(day, 6, 0));
        if (!waste.isZero()) tell(new Fact.Wasted(batch.lot(), waste, "fell"), at(day, 6, 1));
        tell(new Fact.Cooked(batch.lot(), Celsius.tenths(985), 8), at(day, 4, 0));
        if (chance.nextInt(300) == 0) {
            tell(new Fact.LostBatch(batch.lot(), "scorched"), at(day, 3, 0));
            lostBatches.add(batch.lot());
        }
        if (chance.nextInt(200) == 0) {
            tell(new Fact.Held(batch.lot(), "looked odd"), at(day, 20, 0));
            tell(new Fact.Released(batch.lot(), "Q. Millrace", "tasted, is well"), at(day, 20, 30));
        }
    }

    /** A yield mistyped, and taken back. */
    private void slip(LocalDate day, PlannedBatch batch, Mass input) {
        tell(new Fact.Yielded(batch.lot(), batch.recipe(), input, Mass.kilograms(1)), at(day, 6, 0));
        tell(new Fact.Cancelled(ledger.records().lastNumber(), "a slip"), at(day, 6, 0));
    }

    private void giveBack(LocalDate day, Allocation one) {
        if (one.deliveryDate().isAfter(day)) return;
        int packs = 1 + chance.nextInt(one.packs());
        tell(
                new Fact.Returned(
                        one.customer(),
                        one.product(),
                        Fact.Returned.What.GOODS,
                        packs,
                        "blown",
                        Optional.of(one.lot())),
                at(day, 17, 0));
        if (chance.nextBoolean())
            tell(new Fact.Destroyed(one.lot(), one.product(), packs, "came back"), at(day, 18, 0));
    }

    private void stock(LocalDate day, StockLot lot) {
        int packs = lot.packs();
        if (packs > 2 && chance.nextInt(3) == 0) {
            tell(new Fact.Sold(lot.lot(), lot.product(), 1 + chance.nextInt(packs / 2)), at(day, 19, 0));
        } else if (chance.nextInt(25) == 0)
            tell(new Fact.LostPacks(lot.lot(), lot.product(), 1, "torn"), at(day, 19, 10));
    }

    @Override
    public void close() {
        ledger.close();
    }
}

package dawnkettle;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.measure.Mass;
import dawnkettle.night.Office;
import dawnkettle.night.RecallDrill;
import dawnkettle.plan.Allocation;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.PlannedBatch;
import dawnkettle.plan.PlannedSoak;
import dawnkettle.stock.LotCode;
import dawnkettle.stock.MaterialBook;
import dawnkettle.stock.MaterialBook.Cause;
import dawnkettle.stock.MaterialBook.Move;
import dawnkettle.stock.Recall;
import dawnkettle.stock.Reconciliation;
import dawnkettle.stock.Web;
import dawnkettle.store.Ledger;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Conservation and trace over a year of records; {@code -Dyear.days=300} plays all of it, the suite a short one. The
 * laws are those of a ledger of movements: all that came in is out or here, and what leads there leads back.
 */
class SimulatedYearTest {
    private static final int DAYS = Integer.getInteger("year.days", 6);

    @TempDir
    static Path folder;

    private static SimulatedYear year;
    private static LocalDate after;
    private static Web web;
    private static MaterialBook materials;

    @BeforeAll
    static void play() throws IOException {
        long started = System.nanoTime();
        year = new SimulatedYear(folder, 20261125);
        after = year.play(LocalDate.of(2026, 1, 5), DAYS);
        say("played " + DAYS + " days", started);
        started = System.nanoTime();
        web = year.ledger().trace().web(year.shop, year.now());
        materials = year.ledger().trace().materials(year.shop, year.now());
        say(
                web.batches().size() + " batches and " + materials.moves().size() + " moves of "
                        + materials.holdings().size() + " bought lots read",
                started);
    }

    /** {@code -Dyear.keep=FILE} leaves a copy of the ledger, to try commands on. */
    @AfterAll
    static void close() {
        if (System.getProperty("year.keep") != null) year.ledger().copyTo(Path.of(System.getProperty("year.keep")));
        year.close();
    }

    private static void say(String what, long started) {
        System.out.printf("simulated year: %s in %d ms%n", what, (System.nanoTime() - started) / 1_000_000);
    }

    @Test
    void every_bought_lot_is_used_lost_or_here_to_the_milligram() {
        assertThat(materials.holdings()).hasSameSizeAs(year.received.keySet());
        for (MaterialBook.Holding lot : materials.holdings()) {
            assertThat(Reconciliation.bought(lot.lot(), materials).isWhole())
                    .as(lot.lot())
                    .isTrue();
            long in = sum(lot.lot(), Cause.CAME) + sum(lot.lot(), Cause.UNEXPLAINED);
            assertThat(sum(lot.lot(), Cause.CAME)).isEqualTo(year.received.get(lot.lot()));
            assertThat(-sum(lot.lot(), Cause.LOST)).isEqualTo(year.lostOfLot.getOrDefault(lot.lot(), 0L));
            long used = materials.moves().stream()
                    .filter(move -> move.lot().equals(lot.lot()) && move.change() < 0)
                    .mapToLong(Move::change)
                    .sum();
            assertThat(in + used).isEqualTo(lot.left());
        }
    }

    private static long sum(String lot, Cause cause) {
        return materials.moves().stream()
                .filter(move -> move.lot().equals(lot) && move.cause() == cause)
                .mapToLong(Move::change)
                .sum();
    }

    @Test
    void beans_in_tubs_are_those_of_the_plans_and_go_into_their_batches_or_are_left_over() {
        long soaked = 0;
        long leftOver = 0;
        for (DayPlan plan : year.plans)
            for (PlannedSoak soak : plan.soaks()) {
                soaked += soak.beans().milligrams();
                leftOver += soak.leftOver().milligrams();
            }
        long drawn = -materials.moves().stream()
                .filter(move -> move.cause() == Cause.SOAKED)
                .mapToLong(Move::change)
                .sum();
        assertThat(drawn).isEqualTo(soaked);
        long inBatches = 0;
        for (String lot : web.boughtLots())
            for (Web.Source source : web.usesOf(lot))
                if (source.material().startsWith("BEAN"))
                    inBatches += source.amount().orElseThrow().smallest();
        long rounding = soaked - leftOver - inBatches;
        assertThat(Math.abs(rounding))
                .as("a tub of two lots is parted in whole milligrams")
                .isLessThan(year.plans.size() * 40L);
    }

    @Test
    void every_batch_is_packed_fed_thrown_away_or_cut_off_and_every_pack_is_somewhere() {
        int packs = 0;
        for (Web.Batch batch : web.batches()) {
            assertThat(Reconciliation.mass(batch, web, year.shop).isWhole())
                    .as("%s", Reconciliation.mass(batch, web, year.shop))
                    .isTrue();
            for (Map.Entry<String, dawnkettle.stock.PackBook.State> state :
                    batch.packs().entrySet()) {
                assertThat(state.getValue().isWhole()).isTrue();
                assertThat(state.getValue().differences())
                        .as("%s %s", batch.lot(), state.getKey())
                        .isEmpty();
                packs += state.getValue().in().filled();
            }
        }
        int planned = year.plans.stream()
                .flatMap(plan -> plan.batches().stream())
                .flatMap(batch -> batch.packs().stream())
                .mapToInt(PlannedBatch.Filled::packs)
                .sum();
        assertThat(packs).isEqualTo(planned);
        assertThat(web.batches())
                .hasSize(year.plans.stream()
                        .mapToInt(plan -> plan.batches().size())
                        .sum());
    }

    @Test
    void the_laws_of_the_ledger_hold_on_every_day() {
        for (DayPlan plan : year.plans)
            assertThat(year.ledger().broken(plan.heading().productionDate())).isEmpty();
    }

    @Test
    void what_leads_from_a_bought_lot_to_a_customer_leads_back() {
        Map<String, Set<String>> forward = new TreeMap<>();
        for (String lot : web.boughtLots())
            Recall.ofBought(web, lot)
                    .handed()
                    .forEach(one ->
                            forward.computeIfAbsent(lot, any -> new HashSet<>()).add(line(one)));
        Map<String, Set<String>> back = new TreeMap<>();
        Map<LotCode, Set<String>> sources = new HashMap<>();
        for (Web.Batch batch : web.batches())
            for (Web.Handed one : web.handedOf(batch.lot()))
                for (String lot : sources.computeIfAbsent(batch.lot(), any -> sourcesOf(batch.lot())))
                    back.computeIfAbsent(lot, any -> new HashSet<>()).add(line(one));
        assertThat(forward).isEqualTo(back);
    }

    private static Set<String> sourcesOf(LotCode lot) {
        Set<String> all = new TreeSet<>();
        Recall.ofBatch(web, lot).sources(web).forEach(source -> all.add(source.lot()));
        return all;
    }

    private static String line(Web.Handed one) {
        return one.order() + " " + one.line() + " " + one.lot() + " " + one.packs();
    }

    /** Followed by hand through the plans as they came out of the planner, without the ledger's tables. */
    @Test
    void the_trace_of_beans_is_the_one_that_the_plans_tell() {
        Map<LotCode, Set<String>> beans = new HashMap<>();
        for (DayPlan plan : year.plans) beansOf(plan, beans);
        Map<String, Set<String>> expected = new TreeMap<>();
        for (DayPlan plan : year.plans)
            for (Allocation one : plan.allocation())
                for (String lot : beans.getOrDefault(one.lot(), Set.of()))
                    expected.computeIfAbsent(lot, any -> new HashSet<>())
                            .add(one.order() + " " + one.line() + " " + one.lot() + " " + one.packs());
        Map<String, Set<String>> traced = new TreeMap<>();
        for (String lot : expected.keySet()) {
            traced.put(lot, new HashSet<>());
            Recall.ofBought(web, lot).handed().forEach(one -> traced.get(lot).add(line(one)));
        }
        assertThat(expected).isNotEmpty();
        assertThat(traced).isEqualTo(expected);
    }

    private static void beansOf(DayPlan plan, Map<LotCode, Set<String>> beans) {
        Map<String, List<String>> tubs = new HashMap<>();
        plan.soaks().forEach(soak -> tubs.put(soak.tub(), soak.beanLots()));
        for (PlannedBatch batch : plan.batches())
            batch.soaks()
                    .forEach(from -> beans.computeIfAbsent(batch.lot(), any -> new HashSet<>())
                            .addAll(tubs.get(from.tub())));
        for (PlannedBatch batch : plan.batches())
            for (PlannedBatch.Feed feed : batch.feeds())
                beans.computeIfAbsent(plan.batch(feed.batch()).lot(), any -> new HashSet<>())
                        .addAll(beans.get(batch.lot()));
    }

    @Test
    void a_recall_drill_takes_less_than_two_seconds_and_finds_all_of_it() {
        try (Ledger cold = Ledger.open(year.file)) {
            Office office = year.office(cold);
            long started = System.nanoTime();
            String told = new RecallDrill(office).run(after.minusDays(1));
            long millis = (System.nanoTime() - started) / 1_000_000;
            say("drill: " + told, started);
            assertThat(told).contains(": all accounted for, in ");
            assertThat(millis).isLessThan(2_000);
        }
    }

    @Test
    void every_recall_of_every_lot_is_reconciled_whole() {
        List<String> wrong = new ArrayList<>();
        Mass all = Mass.ZERO;
        for (Web.Batch batch : web.batches()) {
            Reconciliation found = Reconciliation.of(Recall.ofBatch(web, batch.lot()), web, materials, year.shop);
            if (!found.isWhole()) wrong.addAll(found.missing());
            all = all.plus(batch.gave().product());
        }
        System.out.println("simulated year: " + all + " made, " + year.lostBatches.size() + " batches lost");
        assertThat(wrong).isEmpty();
    }
}

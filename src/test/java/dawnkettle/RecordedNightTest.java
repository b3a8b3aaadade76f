package dawnkettle;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.measure.Mass;
import dawnkettle.night.PastWeeks;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.PlannedBatch;
import dawnkettle.plan.PlannedSoak;
import dawnkettle.shop.Shop;
import dawnkettle.stock.Fact;
import dawnkettle.stock.Recorded;
import dawnkettle.stock.StockLot;
import dawnkettle.store.Ledger;
import java.io.IOException;
import java.math.RoundingMode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What people type in a shop comes to the next plan, to the summary and to the costs. */
class RecordedNightTest {
    private static final LocalDate FRIDAY = LocalDate.of(2026, 12, 4);
    private static final LocalDate SATURDAY = LocalDate.of(2026, 12, 5);

    @TempDir
    Path folder;

    private CopiedShop shop;

    @BeforeEach
    void copy() throws IOException {
        shop = CopiedShop.quick(folder).withoutHistory().with("shop.toml", "decodes = 1500", "decodes = 100");
        Files.createDirectories(shop.out());
    }

    private Path ledger() {
        return shop.out().resolve("ledger.db");
    }

    /** Types a command at a local time; a second later each time, as a person would. */
    private Terminal.Told at(String local, String line) {
        var zone = new Main().configuration(shop.conf()).shop().house().zone();
        var clock = new MovedClock(LocalDateTime.parse(local).atZone(zone).toInstant(), zone);
        Object[] words = Stream.concat(
                        Stream.of(line.split(" ")),
                        Stream.of("--conf", shop.conf().toString(), "--ledger", ledger().toString()))
                .toArray();
        return Terminal.runWith(new SetClock(new Main(), clock), words);
    }

    private void said(String local, String line, String sentence) {
        Terminal.Told told = at(local, line);
        assertThat(told.err()).isEmpty();
        assertThat(told.out().replaceFirst("\nRecord [0-9]+\\.\\s*$", "").strip())
                .isEqualTo(sentence);
        assertThat(told.status()).isZero();
    }

    private PlayedNight night(LocalDate day, String from) throws IOException {
        PlayedNight night = new PlayedNight(shop, day, from);
        night.drop("orders.csv", Files.readString(shop.conf().resolve("rehearsal/orders.csv")));
        return night;
    }

    private DayPlan friday() throws IOException {
        try (PlayedNight night = night(FRIDAY, "2026-12-03T05:00")) {
            night.until("2026-12-04T02:00");
            return night.plan();
        }
    }

    @Test
    void beans_that_came_in_are_named_in_the_next_plan_the_oldest_first_and_cost_what_was_paid() throws IOException {
        said(
                "2026-12-02T09:00",
                "receive BEAN-YEL YEL-261201 300kg 324.00 2026-12-01",
                "Written down for 2026-12-01 00:00: 300 kg BEAN-YEL came in as lot YEL-261201 for 324.00 USD.");
        said(
                "2026-12-02T09:01",
                "receive BEAN-YEL YEL-261202 1000kg 1100",
                "Written down for 2026-12-02 09:01: 1000 kg BEAN-YEL came in as lot YEL-261202 for 1100.00 USD.");
        said(
                "2026-12-02T09:02",
                "receive BEAN-YEL yel-261202 200kg 220",
                "Written down for 2026-12-02 09:02: 200 kg BEAN-YEL came in as lot YEL-261202 for 220.00 USD."
                        + " With what came before it is 1200 kg.");
        said(
                "2026-12-02T09:03",
                "record count BEAN-YEL YEL-261201 60kg",
                "Written down for 2026-12-02 09:03: 60 kg BEAN-YEL of lot YEL-261201 are left.");

        List<PlannedSoak> yellow = friday().soaks().stream()
                .filter(soak -> soak.soakGroup().equals("yellow"))
                .toList();

        assertThat(yellow.stream().flatMap(soak -> soak.beanLots().stream()).distinct())
                .as("60 kg of the older lot, then the newer")
                .containsExactlyInAnyOrder("YEL-261201", "YEL-261202");
        assertThat(yellow)
                .filteredOn(soak -> soak.beanLots().contains("YEL-261201"))
                .hasSize(1);
        try (Ledger ledger = Ledger.open(ledger())) {
            Shop ours = new Main().configuration(shop.conf()).shop();
            var paid = new PastWeeks(ledger, ours).beanPrices().get("YEL-261202");
            assertThat(paid.paid()).hasToString("1320.00 USD");
            assertThat(paid.mass()).isEqualTo(Mass.kilograms(1200));
        }
    }

    @Test
    void counted_packs_are_the_stock_of_the_next_plan_and_a_later_count_takes_their_place() throws IOException {
        DayPlan plan = friday();
        PlannedBatch batch = keeping(plan);
        String product = batch.packs().get(0).product();
        String lot = batch.lot() + " " + product;

        said(
                "2026-12-04T13:00",
                "record count " + lot + " 9",
                "Written down for 2026-12-04 13:00: 9 packs " + product + " of lot " + batch.lot()
                        + " are in the cold room.");
        long promised = promisedAfterFriday(plan, batch, product);
        said(
                "2026-12-04T13:05",
                "record count " + lot + " " + (promised + 7) + " --at 2026-12-04T13:04",
                "Written down for 2026-12-04 13:04: " + (promised + 7) + " packs " + product + " of lot " + batch.lot()
                        + " are in the cold room.");
        said(
                "2026-12-04T13:06",
                "record sold " + lot + " 2",
                "Written down for 2026-12-04 13:06: 2 packs " + product + " of lot " + batch.lot() + " were sold.");

        try (PlayedNight night = night(SATURDAY, "2026-12-04T14:00")) {
            night.until("2026-12-04T16:00");
            assertThat(night.plan().stock())
                    .filteredOn(stock ->
                            stock.lot().equals(batch.lot()) && stock.product().equals(product))
                    .extracting(StockLot::packs, StockLot::expected)
                    .containsExactly(org.assertj.core.groups.Tuple.tuple(5, false));
        }
    }

    /** A batch whose packs keep to the next week. */
    private static PlannedBatch keeping(DayPlan plan) {
        return plan.batches().stream()
                .filter(batch -> batch.packs().stream()
                        .anyMatch(filled -> filled.product().equals("FIRM-400")))
                .filter(batch -> batch.packs().get(0).product().equals("FIRM-400"))
                .findFirst()
                .orElseThrow();
    }

    private static long promisedAfterFriday(DayPlan plan, PlannedBatch batch, String product) {
        return plan.allocation().stream()
                .filter(one -> one.lot().equals(batch.lot())
                        && one.product().equals(product)
                        && one.deliveryDate().isAfter(FRIDAY))
                .mapToLong(one -> one.packs())
                .sum();
    }

    @Test
    void a_yield_comes_to_the_morning_summary_and_the_last_one_of_a_batch_counts() throws IOException {
        PlannedBatch batch = keeping(friday());
        assertThat(at("2026-12-04T12:00", "record yield " + batch.lot() + " 12").status())
                .isZero();
        String input = kilograms(batch.beans());
        said(
                "2026-12-04T12:01",
                "record yield " + batch.lot() + " 61.5",
                "Written down for 2026-12-04 12:01: lot " + batch.lot() + " gave 61.5 kg from " + input + " kg.");

        try (PlayedNight night = night(SATURDAY, "2026-12-04T14:00")) {
            night.until("2026-12-05T07:00");
        }
        assertThat(mails()).containsPattern("Firm tofu, 4 Dec +61\\.5 +2\\.05 ").doesNotContain("73.5");
    }

    @Test
    void what_was_never_booked_in_is_not_said_to_run_low() throws IOException {
        assertThat(at("2026-12-02T09:00", "receive GYPSUM G-1 12kg 14").status())
                .isZero();

        try (PlayedNight night = night(FRIDAY, "2026-12-03T14:00")) {
            night.until("2026-12-04T07:00");
        }
        assertThat(mails())
                .contains("Gypsum: calcium sulfate dihydrate, food grade: 12 kg left")
                .doesNotContain("Nigari:");
    }

    private static String kilograms(Mass mass) {
        return mass.inKilograms(6, RoundingMode.UNNECESSARY)
                .stripTrailingZeros()
                .toPlainString();
    }

    private String mails() throws IOException {
        StringBuilder all = new StringBuilder();
        try (Stream<Path> files = Files.list(shop.out().resolve("mail"))) {
            for (Path file : files.toList()) all.append(Files.readString(file));
        }
        return all.toString();
    }

    @Test
    void a_refusal_leaves_with_2_and_the_ledger_as_it_was() throws IOException {
        DayPlan plan = friday();
        PlannedBatch batch = keeping(plan);

        assertThat(at("2026-12-04T12:00", "record count " + batch.lot() + " FIRM-400 -3"))
                .isEqualTo(new Terminal.Told(2, "", "record word:4: packs \"-3\" is below zero; write 0 or more\n"));
        assertThat(at("2026-12-03T16:00", "record yield " + batch.lot() + " 60").err())
                .startsWith("record word:2: lot \"" + batch.lot()
                        + "\" had not run at 2026-12-03 16:00: it is planned for");
        assertThat(at("2026-12-04T12:00", "record yield 269999-FI01 60").err())
                .startsWith("record word:2: there never was a lot \"269999-FI01\"; ");
        assertThat(at("2026-12-04T12:00", "receive BEAN-YEL L1 10kg 10EUR").status())
                .isEqualTo(2);

        assertThat(at("2026-12-04T12:00", "record lost " + batch.lot() + " burnt")
                        .status())
                .isZero();
        assertThat(at("2026-12-04T12:01", "record sold " + batch.lot() + " FIRM-400 1")
                        .err())
                .contains("was recorded as lost");
        try (Ledger ledger = Ledger.open(ledger())) {
            assertThat(ledger.records().all(Fact.Kind.values()))
                    .extracting(Recorded::fact)
                    .containsExactly(new Fact.LostBatch(batch.lot(), "burnt"));
        }
    }
}

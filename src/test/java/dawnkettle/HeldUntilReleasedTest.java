package dawnkettle;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.night.Gate;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.PlannedBatch;
import dawnkettle.stock.LotCode;
import dawnkettle.store.Ledger;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A lot out of its limits, or without its records, from the thermometer to the van: typed as a shop would type it. */
class HeldUntilReleasedTest {
    private static final LocalDate FRIDAY = LocalDate.of(2026, 12, 4);

    @TempDir
    Path folder;

    private CopiedShop shop;

    @BeforeEach
    void copy() throws IOException {
        shop = CopiedShop.quick(folder).withoutHistory().with("shop.toml", "decodes = 1500", "decodes = 100");
        Files.createDirectories(shop.out());
    }

    private Terminal.Told at(String local, String line) {
        var zone = new Main().configuration(shop.conf()).shop().house().zone();
        var clock = new MovedClock(LocalDateTime.parse(local).atZone(zone).toInstant(), zone);
        Object[] words = Stream.concat(
                        Stream.of(line.split(" ")),
                        Stream.of(
                                "--conf",
                                shop.conf().toString(),
                                "--ledger",
                                shop.out().resolve("ledger.db").toString()))
                .toArray();
        return Terminal.runWith(new SetClock(new Main(), clock), words);
    }

    private PlayedNight night(LocalDate day, String from) throws IOException {
        PlayedNight night = new PlayedNight(shop, day, from);
        night.drop("orders.csv", Files.readString(shop.conf().resolve("rehearsal/orders.csv")));
        return night;
    }

    /** The last batch with packs that is cooked well before the summary; its labels come hours later. */
    private PlannedBatch last(DayPlan plan) {
        return plan.batches().stream()
                .filter(batch -> batch.packs().stream()
                                .anyMatch(filled -> filled.product().equals("FIRM-400"))
                        && !batch.beans().isZero()
                        && cookedBy(plan, batch).isBefore(LocalDateTime.parse("2026-12-04T05:30")))
                .max(java.util.Comparator.comparing(batch -> cookedBy(plan, batch)))
                .orElseThrow();
    }

    private static String time(LocalDateTime at) {
        return at.toString();
    }

    private LocalDateTime cookedBy(DayPlan plan, PlannedBatch batch) {
        var zone = new Main().configuration(shop.conf()).shop().house().zone();
        return LocalDateTime.ofInstant(plan.operationsOf(batch.id()).get(0).end(), zone)
                .withSecond(0)
                .withNano(0)
                .plusMinutes(2);
    }

    private boolean isLabelled(LotCode lot) throws IOException {
        Path labels = shop.out().resolve("labels");
        if (!Files.isDirectory(labels)) return false;
        try (Stream<Path> files = Files.list(labels)) {
            return files.anyMatch(file -> file.getFileName().toString().startsWith(lot + "-")
                    && file.getFileName().toString().endsWith(".bin"));
        }
    }

    private String mails() throws IOException {
        StringBuilder all = new StringBuilder();
        try (Stream<Path> files = Files.list(shop.out().resolve("mail"))) {
            for (Path file : files.toList()) all.append(Files.readString(file));
        }
        return all.toString().replace("=\r\n", "").replaceAll("\\s+", " ");
    }

    @Test
    void a_cook_out_of_limits_holds_the_lot_until_a_named_person_releases_it() throws IOException {
        PlannedBatch batch;
        LocalDateTime cooked;
        try (PlayedNight night = night(FRIDAY, "2026-12-03T05:00")) {
            night.until("2026-12-03T20:00");
            batch = last(night.plan());
            cooked = cookedBy(night.plan(), batch);
            night.until(time(cooked.minusMinutes(1)));
        }
        assertThat(isLabelled(batch.lot())).isFalse();

        Terminal.Told told = at(time(cooked), "record cooked " + batch.lot() + " 91 5");
        assertThat(told.err()).isEmpty();
        assertThat(told.out())
                .contains("reached 91.0 °C in the cooker for 5 minutes")
                .contains(
                        "lot " + batch.lot() + " is held (cooked at 91.0 °C for 5 minutes; the limit is 98.0 °C for 5")
                .contains("record release " + batch.lot() + " by NAME WHY");

        try (PlayedNight night = night(FRIDAY, time(cooked.plusMinutes(1)))) {
            night.until("2026-12-04T13:00");
            assertThat(isLabelled(batch.lot())).isFalse();
        }
        assertThat(mails())
                .contains("lot " + batch.lot() + " is held: cooked at 91.0 ")
                .contains("customers may not leave; after your decision: record release " + batch.lot());
        try (PlayedNight next = night(FRIDAY.plusDays(1), "2026-12-04T14:00")) {
            next.until("2026-12-04T16:00");
            assertThat(next.plan().stock()).noneMatch(lot -> lot.lot().equals(batch.lot()));
            assertThat(next.plan().allocation()).noneMatch(one -> one.lot().equals(batch.lot()));
        }

        assertThat(at("2026-12-04T16:10", "record release " + batch.lot() + " by 7 tasted")
                        .err())
                .contains("name \"7\" is no name");
        Terminal.Told released =
                at("2026-12-04T16:11", "record release " + batch.lot() + " by Millrace thermometer was wrong");
        assertThat(released.out()).contains("is released by Millrace (thermometer was wrong)");
        try (PlayedNight night = night(FRIDAY, "2026-12-04T16:12")) {
            night.until("2026-12-04T16:20");
        }
        assertThat(isLabelled(batch.lot())).isTrue();
    }

    @Test
    void where_the_shop_requires_a_record_what_has_none_in_time_is_held_and_told() throws IOException {
        shop = shop.with("shop.toml", "required = []", "required = [\"cooked\"]")
                .with("shop.toml", "grace_minutes = 120", "grace_minutes = 30");
        PlannedBatch batch;
        try (PlayedNight night = night(FRIDAY, "2026-12-03T05:00")) {
            night.until("2026-12-04T07:00");
            batch = night.plan().batches().stream()
                    .filter(one -> !one.beans().isZero() && !one.packs().isEmpty())
                    .findFirst()
                    .orElseThrow();
            assertThat(new Gate(night.office()).held(night.plan())).containsKey(batch.lot());
        }
        assertThat(mails()).contains("lot " + batch.lot() + " is held: ");
    }

    @Test
    void what_cannot_be_is_refused_in_sentences_and_the_ledger_stays_as_it_was() throws IOException {
        try (PlayedNight night = night(FRIDAY, "2026-12-03T05:00")) {
            night.until("2026-12-03T16:00");
        }
        String now = "2026-12-03T16:30";
        assertThat(at(now, "receive BEAN-YEL L1 10kg 10EUR").err())
                .isEqualTo("receive word:4: price \"10EUR\" is in EUR; this shop counts in USD: write what it cost"
                        + " in USD\n");
        assertThat(at(now, "record price FIRM-400 3.10EUR from 2027-01-04").err())
                .isEqualTo("record word:3: price \"3.10EUR\" is in EUR; this shop counts in USD: write what it cost"
                        + " in USD\n");
        assertThat(at(now, "record count 261204-FI01 FIRM-400 -3").err())
                .contains("packs \"-3\" is below zero; write 0 or more");
        assertThat(at(now, "record hold 261204-ZZ09 why").err())
                .startsWith("record word:2: there never was a lot \"261204-ZZ09\"; ");
        assertThat(at(now, "record yield 261204-FI01 60").err())
                .startsWith("record word:2: lot \"261204-FI01\" had not run at 2026-12-03 16:30: it is planned for")
                .endsWith("; record it when it has run\n");
        assertThat(at(now, "record hours 2026-12-04 41").err())
                .isEqualTo(
                        "record word:2: date \"2026-12-04\" is in the future; record the hours when they are worked\n");
        assertThat(at(now, "receive BEAN-YEL L1 10kg 10 2026-12-24").err())
                .contains("date \"2026-12-24\" is in the future; receive it when it is here; today is 2026-12-03");
        assertThat(at(now, "trace 261204-ZZ09").err())
                .startsWith("trace word: there never was a lot \"261204-ZZ09\"; ");
        assertThat(at(now, "trace --customer C0O2 --day 2026-12-04").err())
                .isEqualTo("--customer: there is no customer \"C0O2\"; did you mean \"C002\"?\n");
        assertThat(at(now, "trace --customer C002 --day 2026-01-04").err())
                .isEqualTo("--day: customer \"C002\" gets nothing on 2026-01-04; name the day of delivery\n");
        assertThat(at(now, "trace").status()).isEqualTo(2);
        try (Ledger ledger = Ledger.open(shop.out().resolve("ledger.db"))) {
            assertThat(ledger.records().lastNumber()).isZero();
        }
    }
}

package dawnkettle.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import dawnkettle.DemoDay;
import dawnkettle.conf.ReadConfiguration;
import dawnkettle.measure.Celsius;
import dawnkettle.measure.Mass;
import dawnkettle.measure.Money;
import dawnkettle.shop.Shop;
import dawnkettle.stock.KnownLots.Bought;
import dawnkettle.stock.KnownLots.Made;
import dawnkettle.stock.KnownLots.Making;
import dawnkettle.stock.KnownLots.Packs;
import dawnkettle.trouble.BadFile;
import java.time.Instant;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ReadFactTest {
    private static final Shop SHOP = ReadConfiguration.from(DemoDay.CONF).shop();
    private static final LotCode FIRM = new LotCode("261204-FI01");
    private static final LotCode LOST = new LotCode("261204-FI02");
    private static final LotCode TONIGHT = new LotCode("261204-FI03");

    /** Friday 4 December 2026, 06:30 in the shop. */
    private static final Instant NOW = Instant.parse("2026-12-04T11:30:00Z");

    private static final Desk DESK = new Desk(
            SHOP,
            NOW,
            new KnownLots(
                    List.of(
                            new Bought("YEL-261128", "BEAN-YEL", Quantity.of(Mass.kilograms(600))),
                            new Bought("T-77", "TRAY-S", Quantity.pieces(9000))),
                    List.of(
                            made(FIRM, "2026-12-04T08:00:00Z", false),
                            made(LOST, "2026-12-04T08:30:00Z", true),
                            made(TONIGHT, "2026-12-04T13:00:00Z", false))));

    private static Made made(LotCode lot, String startsAt, boolean lost) {
        return new Made(
                lot,
                new Making("firm", Instant.parse(startsAt), Mass.kilograms(30), Mass.grams(66_500)),
                Map.of("FIRM-400", new Packs(120, 4), "FIRM-BKT", new Packs(3, 0)),
                lost);
    }

    private static List<String> words(String line) {
        return List.of(line.split(" "));
    }

    private static Fact receipt(String line) {
        return ReadReceipt.read(words(line), DESK).fact();
    }

    private static Recorded record(String line) {
        return ReadFact.read(words(line), Optional.empty(), DESK);
    }

    private static Recorded record(String line, String at) {
        return ReadFact.read(words(line), Optional.of(LocalDateTime.parse(at)), DESK);
    }

    private static String refused(Runnable reading) {
        return catchThrowableOfType(BadFile.class, reading::run).getMessage();
    }

    private static Money dollars(long cents) {
        return Money.minor(cents, SHOP.house().currency());
    }

    @Test
    void what_came_in_is_read_in_the_material_s_own_unit() {
        assertThat(receipt("BEAN-YEL YEL-261201 1500kg 1620.00"))
                .isEqualTo(new Fact.Received(
                        "BEAN-YEL", "YEL-261201", Quantity.of(Mass.kilograms(1500)), dollars(162_000)));
        assertThat(receipt("bean-yel yel-261128 250.5g 1.2usd"))
                .as("the lot as it was first written")
                .isEqualTo(new Fact.Received(
                        "BEAN-YEL", "YEL-261128", Quantity.of(Mass.milligrams(250_500)), dollars(120)));
        assertThat(receipt("TRAY-S T/78 9000 792"))
                .isEqualTo(new Fact.Received("TRAY-S", "T/78", Quantity.pieces(9000), dollars(79_200)));
        assertThat(receipt("CLEAN C-1 2.5l 8 USD"))
                .isEqualTo(new Fact.Received(
                        "CLEAN",
                        "C-1",
                        new Quantity(2500, SHOP.material("CLEAN").unit()),
                        dollars(800)));
    }

    @Test
    void what_came_in_has_both_times_and_its_origin() {
        assertThat(ReadReceipt.read(words("GYPSUM G-1 25kg 29 2026-12-02"), DESK))
                .isEqualTo(new Recorded(
                        new Fact.Received("GYPSUM", "G-1", Quantity.of(Mass.kilograms(25)), dollars(2_900)),
                        Instant.parse("2026-12-02T05:00:00Z"),
                        NOW,
                        "command line 2026-12-04T11:30:00Z"));
        assertThat(ReadReceipt.read(words("GYPSUM G-1 25kg 29"), DESK).happenedAt())
                .isEqualTo(NOW);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            BEANS-YEL L1 1500kg 1620.00            | receive word:1: unknown material "BEANS-YEL"; did you mean "BEAN-YEL"?
            SALT L1 1500kg 1620.00                 | receive word:1: unknown material "SALT"; write a code of materials.csv
            BEAN-YEL L1 1500kg                     | receive: a word is missing; write as in: receive MATERIAL LOT QUANTITY PRICE [DATE] [until DATE]
            BEAN-YEL L1 1500kg 1620 2026-12-01 x   | receive word:6: "x" is a word too many; write as in: receive MATERIAL LOT QUANTITY PRICE [DATE] [until DATE]
            BEAN-YEL lot;1 1500kg 1620             | receive word:2: lot "lot;1" is not a code of 1 to 24 letters, digits and - _ . /; write the supplier's lot in one word
            BEAN-YEL T-77 1500kg 1620              | receive word:2: lot "T-77" is one of TRAY-S; write that material, or set this one's code before the lot
            BEAN-YEL L1 1500 1620                  | receive word:3: quantity "1500" is not in kilograms or grams; write it as 1500kg or 800g
            BEAN-YEL L1 1,5kg 1620                 | receive word:3: quantity "1,5kg" is not in kilograms or grams; write it as 1500kg or 800g
            BEAN-YEL L1 15l 1620                   | receive word:3: quantity "15l" is not in kilograms or grams; write it as 1500kg or 800g
            BEAN-YEL L1 -5kg 1620                  | receive word:3: quantity "-5kg" is below zero; write what is there, 0 or more
            BEAN-YEL L1 0kg 1620                   | receive word:3: quantity "0kg" is nothing; write how much came in
            BEAN-YEL L1 0.0001g 1620               | receive word:3: quantity "0.0001g" is finer than is kept; round it
            CLEAN L1 20kg 58                       | receive word:3: quantity "20kg" is not in litres or millilitres; write it as 20l or 500ml
            TRAY-S L1 1kg 88                       | receive word:3: quantity "1kg" is not in pieces; write how many, as 1000
            TRAY-S L1 1.5 88                       | receive word:3: quantity "1.5" is finer than is kept; round it
            BEAN-YEL L1 1500kg 1620EUR             | receive word:4: price "1620EUR" is in EUR; this shop counts in USD: write what it cost in USD
            BEAN-YEL L1 1500kg 1620 eur 2026-12-01 | receive word:4: price "1620eur" is in EUR; this shop counts in USD: write what it cost in USD
            BEAN-YEL L1 1500kg -3                  | receive word:4: price "-3" is below zero; write what all of it cost, 0 or more
            BEAN-YEL L1 1500kg 1.005               | receive word:4: price "1.005" is finer than USD is paid in; round it to 2 places
            BEAN-YEL L1 1500kg free                | receive word:4: price "free" is not an amount; write what all of it cost, as 1620.00
            BEAN-YEL L1 1500kg 1620 2026-12-05     | receive word:5: date "2026-12-05" is in the future; receive it when it is here; today is 2026-12-04
            BEAN-YEL L1 1500kg 1620 2026-02-30     | receive word:5: date "2026-02-30" is not a day; write year-month-day, as 2026-12-04
            """)
    void what_cannot_have_come_in_is_refused_with_the_remedy(String line, String message) {
        assertThat(refused(() -> receipt(line))).isEqualTo(message);
    }

    @Test
    void all_that_is_wrong_with_a_line_is_said_at_once() {
        assertThat(refused(() -> receipt("BEANYEL L1 1500kg 1620EUR 2027-12-01")))
                .hasLineCount(3);
        assertThat(refused(() -> record("count 261204-FI01 FRIM-400 -3", "2026-12-05T06:00")))
                .isEqualTo("""
                        --at: "2026-12-05T06:00" is in the future; record it when it has happened; here it is 2026-12-04 06:30
                        record word:3: unknown product "FRIM-400"; did you mean "FIRM-400"?
                        record word:4: packs "-3" is below zero; write 0 or more""");
    }

    @Test
    void each_kind_of_record_is_read() {
        assertThat(record("yield 261204-fi01 64.2").fact())
                .isEqualTo(new Fact.Yielded(FIRM, "firm", Mass.kilograms(30), Mass.grams(64_200)));
        assertThat(record("yield 261204-FI01 64200g").fact())
                .isEqualTo(new Fact.Yielded(FIRM, "firm", Mass.kilograms(30), Mass.grams(64_200)));
        assertThat(record("cooked 261204-FI01 98.5 7").fact()).isEqualTo(new Fact.Cooked(FIRM, Celsius.tenths(985), 7));
        assertThat(record("cooled 261204-FI01 4.9°C").fact()).isEqualTo(new Fact.Cooled(FIRM, Celsius.tenths(49)));
        assertThat(record("lost 261204-FI01 burnt in the kettle").fact())
                .isEqualTo(new Fact.LostBatch(FIRM, "burnt in the kettle"));
        assertThat(record("lost 261204-FI01 FIRM-400 6 crate fell").fact())
                .isEqualTo(new Fact.LostPacks(FIRM, "FIRM-400", 6, "crate fell"));
        assertThat(record("count 261204-FI01 FIRM-400 0").fact())
                .isEqualTo(new Fact.CountedPacks(FIRM, "FIRM-400", 0, Optional.empty()));
        assertThat(record("count bean-yel yel-261128 410.5kg").fact())
                .isEqualTo(new Fact.CountedMaterial("BEAN-YEL", "YEL-261128", Quantity.of(Mass.grams(410_500))));
        assertThat(record("sold 261204-FI01 firm-bkt 2").fact()).isEqualTo(new Fact.Sold(FIRM, "FIRM-BKT", 2));
        assertThat(record("returned C002 FIRM-400 3 leaking seal").fact())
                .isEqualTo(new Fact.Returned("C002", "FIRM-400", Fact.Returned.What.GOODS, 3, "leaking seal"));
        assertThat(record("returned C002 FIRM-BKT 3 containers").fact())
                .isEqualTo(new Fact.Returned("C002", "FIRM-BKT", Fact.Returned.What.CONTAINERS, 3, "containers"));
    }

    /** A slip in the product must not write off the batch. */
    @Test
    void a_misspelt_product_never_loses_the_whole_batch() {
        assertThat(refused(() -> record("lost 261204-FI01 FRIM-400 a crate"))).isEqualTo("""
                record word:3: unknown product "FRIM-400"; did you mean "FIRM-400"?
                record word:4: packs "a" is not a whole number from 1 to 5000; write a number, as 24""");
    }

    @Test
    void what_is_written_down_late_has_both_times() {
        Recorded late = record("cooled 261204-FI01 4.5", "2026-12-04T06:10");

        assertThat(late.happenedAt()).isEqualTo(Instant.parse("2026-12-04T11:10:00Z"));
        assertThat(late.recordedAt()).isEqualTo(NOW);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            yeld 261204-FI01 64               | record word:1: unknown kind of record "yeld"; did you mean "yield"?
            eaten 261204-FI01 64              | record word:1: unknown kind of record "eaten"; write one of yield, cooked, cooled, lost, count, sold, returned, short, soaked, soak, packed, waste, used, destroyed, containers, loaded, hold, release, found, cancel, price, hours, away, down, up
            yield 261204-FI01                 | record: a word is missing; write as in: record yield LOT KG
            yield FI01 64                     | record word:2: lot "FI01" is not like 261204-FI03; write it as its label and the run sheet have it
            yield 261204-FI09 64              | record word:2: there never was a lot "261204-FI09"; did you mean "261204-FI01"?
            yield 251231-SM11 64              | record word:2: there never was a lot "251231-SM11"; write a lot of the plan of its day, as its label has it
            yield 261204-FI03 64              | record word:2: lot "261204-FI03" had not run at 2026-12-04 06:30: it is planned for 2026-12-04 08:00; record it when it has run
            yield 261204-FI01 640             | record word:3: yield "640" is more than twice the 66.5 kg expected; write the kilograms before trimming
            yield 261204-FI01 0               | record word:3: a yield of nothing; if the batch is lost write: record lost LOT WHY
            yield 261204-FI01 64 kg           | record word:4: "kg" is a word too many; write as in: record yield LOT KG
            cooked 261204-FI01 203 7          | record word:3: temperature "203" is not from 40 to 125 °C; look at the thermometer, and write degrees Celsius
            cooked 261204-FI01 203F 7         | record word:3: temperature "203F" is in Fahrenheit; write degrees Celsius
            cooked 261204-FI01 98.55 7        | record word:3: temperature "98.55" is not in tenths of a degree; write it as 95.5
            cooked 261204-FI01 98 700         | record word:4: minutes "700" is not a whole number from 0 to 240; write a number, as 24
            cooled 261204-FI01 -40            | record word:3: temperature "-40" is not from -5 to 100 °C; look at the thermometer, and write degrees Celsius
            lost 261204-FI01                  | record: a word is missing; write as in: record lost LOT [PRODUCT PACKS] WHY, or: record lost MATERIAL LOT QUANTITY WHY
            lost 261204-FI01 FIRM-400 6       | record word:5: no reason is given; write a few words on it at the end
            lost 261204-FI01 FRIM-400 6 a crate | record word:3: unknown product "FRIM-400"; did you mean "FIRM-400"?
            lost 261204-FI01 FIRM-400 117 fell| record word:4: packs "117" are more than the 116 left of 120 filled; if more were filled, count them first: record count 261204-FI01 FIRM-400 PACKS
            lost 261204-FI01 MILK-1L 2 fell   | record word:3: nothing of lot "261204-FI01" was filled as "MILK-1L"; write one of FIRM-400, FIRM-BKT
            count 261204-FI01 FIRM-400 -3     | record word:4: packs "-3" is below zero; write 0 or more
            count 261204-FI01 FIRM-400 12.5   | record word:4: packs "12.5" is not a whole number from 0 to 5000; write a number, as 24
            count 261204-FI02 FIRM-400 3      | record word:2: the whole lot "261204-FI02" was recorded as lost; throw it away; nothing of it is sold
            count BEAN-YEL YEL-261128 -3kg    | record word:4: quantity "-3kg" is below zero; write what is there, 0 or more
            count BEAN-YEL YEL-261128 6000kg  | record word:4: quantity "6000kg" is more than all that came in of the lot; receive the rest first, or look at the number
            count BEAN-YEL YEL-261182 3kg     | record word:3: no lot "YEL-261182" of BEAN-YEL ever came in; did you mean "YEL-261128"?
            count BEAN-YEL T-77 3kg           | record word:3: no lot "T-77" of BEAN-YEL ever came in; write it down first: receive BEAN-YEL LOT QUANTITY PRICE
            count BEANYEL YEL-261128 3kg      | record word:2: unknown material "BEANYEL"; did you mean "BEAN-YEL"?
            sold 261204-FI02 FIRM-400 3       | record word:2: the whole lot "261204-FI02" was recorded as lost; throw it away; nothing of it is sold
            sold 261204-FI01 FIRM-BKT 4       | record word:4: packs "4" are more than the 3 left of 3 filled; if more were filled, count them first: record count 261204-FI01 FIRM-BKT PACKS
            returned C999 FIRM-400 3 leaking  | record word:2: unknown customer "C999"; did you mean "C099"?
            returned NOBODY FIRM-400 3 leaking | record word:2: unknown customer "NOBODY"; write a code of customers.csv
            returned C002 FIRM-400 0 leaking  | record word:4: count "0" is not a whole number from 1 to 5000; write a number, as 24
            returned C002 FIRM-400 3 containers | record word:5: "FIRM-400" has no containers that come back; write why the goods were given back
            """)
    void what_cannot_have_happened_is_refused_with_the_remedy(String line, String message) {
        assertThat(refused(() -> record(line))).isEqualTo(message);
    }

    @Test
    void a_batch_may_run_up_to_an_hour_early() {
        assertThat(record("cooked 261204-FI01 98 7", "2026-12-04T02:00").fact()).isInstanceOf(Fact.Cooked.class);
        assertThat(refused(() -> record("cooked 261204-FI01 98 7", "2026-12-04T01:59")))
                .isEqualTo("record word:2: lot \"261204-FI01\" had not run at 2026-12-04 01:59:"
                        + " it is planned for 2026-12-04 03:00; record it when it has run");
    }

    @Test
    void a_time_that_no_clock_showed_is_refused() {
        assertThat(refused(() -> record("returned C002 FIRM-400 3 leaking", "2026-03-08T02:30")))
                .isEqualTo("--at: the clocks jump over \"2026-03-08T02:30\"; write the time that the clock showed");
    }
}

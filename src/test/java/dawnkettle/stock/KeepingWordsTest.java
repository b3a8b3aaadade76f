package dawnkettle.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import dawnkettle.DemoDay;
import dawnkettle.conf.ReadConfiguration;
import dawnkettle.measure.Celsius;
import dawnkettle.measure.Mass;
import dawnkettle.measure.Money;
import dawnkettle.shop.Shop;
import dawnkettle.stock.KnownLots.Bought;
import dawnkettle.stock.KnownLots.FilledTub;
import dawnkettle.stock.KnownLots.Made;
import dawnkettle.stock.KnownLots.Making;
import dawnkettle.stock.KnownLots.Numbered;
import dawnkettle.stock.KnownLots.Packs;
import dawnkettle.stock.KnownLots.Past;
import dawnkettle.trouble.BadFile;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Friday 4 December 2026, 06:30 in the demonstration shop. */
class KeepingWordsTest {
    private static final Shop SHOP = ReadConfiguration.from(DemoDay.CONF).shop();
    private static final LotCode FIRM = new LotCode("261204-FI01");
    private static final LotCode LOST = new LotCode("261204-FI02");
    private static final LocalDate FRIDAY = LocalDate.of(2026, 12, 4);
    private static final Instant NOW = Instant.parse("2026-12-04T11:30:00Z");

    private static Desk desk(Optional<Numbered> numbered) {
        return new Desk(
                SHOP,
                NOW,
                new KnownLots(
                        List.of(
                                new Bought("YEL-261128", "BEAN-YEL", Quantity.of(Mass.kilograms(600))),
                                new Bought("T-77", "TRAY-S", Quantity.pieces(9000))),
                        List.of(made(FIRM, false), made(LOST, true)),
                        new Past(
                                List.of(new FilledTub("T01", FRIDAY, NOW.minusSeconds(36_000))),
                                Holds.NONE,
                                Map.of(LOST, 17L),
                                List.of(),
                                numbered)));
    }

    private static Made made(LotCode lot, boolean lost) {
        return new Made(
                lot,
                new Making("firm", NOW.minusSeconds(10_000), Mass.kilograms(30), Mass.grams(66_500)),
                Map.of("FIRM-400", new Packs(120, 4)),
                lost);
    }

    private static Fact record(String line) {
        return ReadFact.read(List.of(line.split(" ")), Optional.empty(), desk(Optional.empty()))
                .fact();
    }

    @Test
    void what_is_kept_is_written_as_it_was_typed() {
        assertThat(record("soaked t01 yel-261128 85 2026-12-04"))
                .isEqualTo(new Fact.Soaked(FRIDAY, "T01", "YEL-261128", Mass.kilograms(85)));
        assertThat(record("soaked T01 YEL-261128 85"))
                .as("for the next making day")
                .isEqualTo(new Fact.Soaked(FRIDAY.plusDays(1), "T01", "YEL-261128", Mass.kilograms(85)));
        assertThat(record("soak T01 ready")).isEqualTo(new Fact.SoakSeen(FRIDAY, "T01", true));
        assertThat(record("soak T01 not ready")).isEqualTo(new Fact.SoakSeen(FRIDAY, "T01", false));
        assertThat(record("packed 261204-FI01 FIRM-400 118")).isEqualTo(new Fact.Packed(FIRM, "FIRM-400", 118));
        assertThat(record("waste 261204-FI01 1.2 fell off the bench"))
                .isEqualTo(new Fact.Wasted(FIRM, Mass.grams(1200), "fell off the bench"));
        assertThat(record("used TRAY-S T-77 20 samples"))
                .isEqualTo(new Fact.UsedMaterial("TRAY-S", "T-77", Quantity.pieces(20), "samples"));
        assertThat(record("lost BEAN-YEL YEL-261128 30kg a sack was wet"))
                .isEqualTo(new Fact.LostMaterial(
                        "BEAN-YEL", "YEL-261128", Quantity.of(Mass.kilograms(30)), "a sack was wet"));
        assertThat(record("destroyed 261204-FI01 FIRM-400 2 came back"))
                .isEqualTo(new Fact.Destroyed(FIRM, "FIRM-400", 2, "came back"));
        assertThat(record("count 261204-FI01 FIRM-400 9 one was eaten"))
                .isEqualTo(new Fact.CountedPacks(FIRM, "FIRM-400", 9, Optional.empty(), "one was eaten"));
        assertThat(record("returned C002 FIRM-400 3 of 261204-FI01 blown"))
                .isEqualTo(
                        new Fact.Returned("C002", "FIRM-400", Fact.Returned.What.GOODS, 3, "blown", Optional.of(FIRM)));
    }

    @Test
    void holds_vans_and_containers_are_written_as_they_were_typed() {
        assertThat(record("hold 261204-FI01 looked odd")).isEqualTo(new Fact.Held(FIRM, "looked odd"));
        assertThat(record("release 261204-FI01 by Millrace tasted well"))
                .isEqualTo(new Fact.Released(FIRM, "Millrace", "tasted well"));
        assertThat(record("found 261204-FI02 it was the other one"))
                .isEqualTo(new Fact.Cancelled(17, "it was the other one"));
        assertThat(record("loaded harbor")).isEqualTo(new Fact.Loaded("HARBOR", FRIDAY));
        assertThat(record("containers C002 MED-BKT out 3 lent"))
                .isEqualTo(new Fact.Containers("C002", "MED-BKT", Fact.Containers.Way.OUT, 3, "lent"));
        assertThat(record("containers C002 MED-BKT count 0"))
                .isEqualTo(new Fact.Containers("C002", "MED-BKT", Fact.Containers.Way.COUNTED, 0, ""));
        assertThat(record("containers C002 MED-BKT back 2"))
                .isEqualTo(new Fact.Returned("C002", "MED-BKT", Fact.Returned.What.CONTAINERS, 2, ""));
    }

    @Test
    void a_supplier_s_lot_prices_hours_and_what_was_short_are_written_as_they_were_typed() {
        assertThat(record("hold yel-261128 mould in a sack"))
                .isEqualTo(new Fact.HeldBought("BEAN-YEL", "YEL-261128", "mould in a sack"));
        assertThat(record("hours 2026-12-03 41.5"))
                .isEqualTo(new Fact.Worked(FRIDAY.minusDays(1), Duration.ofMinutes(2_490)));
        assertThat(record("hours 2026-12-04 41:20")).isEqualTo(new Fact.Worked(FRIDAY, Duration.ofMinutes(2_480)));
        Fact.Priced price = new Fact.Priced(
                "everyday", "FIRM-400", Money.minor(310, SHOP.house().currency()), LocalDate.of(2027, 1, 4));
        assertThat(record("price FIRM-400 3.10 from 2027-01-04")).isEqualTo(price);
        assertThat(record("price firm-400 3.10 usd from 2027-01-04 Everyday")).isEqualTo(price);
        assertThat(record("short C002 FIRM-400 3 of 261204-FI01 not in the van"))
                .isEqualTo(new Fact.Returned(
                        "C002", "FIRM-400", Fact.Returned.What.SHORT, 3, "not in the van", Optional.of(FIRM)));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '~', textBlock = """
            price FIRM-400 3.10EUR from 2027-01-04 | record word:3: price "3.10EUR" is in EUR; this shop counts in USD: write what it cost in USD
            price FIRM-400 -3 from 2027-01-04      | record word:3: price "-3" is below zero; write what a pack costs, 0 or more
            price FIRM-400 0 from 2027-01-04       | record word:3: price "0" is nothing; write what a pack costs
            price FIRM-400 3.10 on 2027-01-04      | record word:4: "on" is not the word from; write from which day: from 2026-12-04
            price FIRM-400 3.10 from monday        | record word:5: date "monday" is not a day; write year-month-day, as 2026-12-04
            price FIRM-4OO 3.10 from 2027-01-04    | record word:2: unknown product "FIRM-4OO"; did you mean "FIRM-400"?
            price FIRM-400 3.10 from 2027-01-04 everday | record word:6: there is no price list "everday"; did you mean "everyday"?
            hours 2026-12-05 41                    | record word:2: date "2026-12-05" is in the future; record the hours when they are worked
            hours 2026-12-04 -4                    | record word:3: hours "-4" are below zero; write all hands together, as 41.5 or 41:30
            hours 2026-12-04 many                  | record word:3: hours "many" are not hours and minutes; write all hands together, as 41.5 or 41:30
            hours 2026-12-04 900                   | record word:3: hours "900" are not more than 0 and at most 500; write the hours of all hands together, not minutes
            hold YEL-261129 mould                  | record word:2: lot "YEL-261129" is neither like 261204-FI03 nor a supplier's lot that came in; did you mean "YEL-261128"?
            release YEL-261128 by Millrace fine    | record word:2: lot "YEL-261128" is not held; there is nothing to release
            hold YEL-261128                        | record; a word is missing
            """)
    void what_cannot_be_held_priced_or_worked_is_refused_with_the_remedy(String line, String message) {
        assertThatThrownBy(() -> record(line)).hasMessageContaining(message.replace("record; ", ""));
    }

    @Test
    void every_fact_is_of_one_kind() {
        for (Class<?> fact : Fact.class.getPermittedSubclasses())
            assertThat(java.util.Arrays.stream(Fact.Kind.values())
                            .filter(kind -> kind.isOf(fact))
                            .count())
                    .as(fact.getSimpleName())
                    .isEqualTo(1);
    }

    @Test
    void a_late_record_keeps_both_its_times() {
        Recorded late = ReadFact.read(
                List.of("soak", "T01", "ready"),
                Optional.of(LocalDateTime.parse("2026-12-03T23:10")),
                desk(Optional.empty()));
        assertThat(late.happenedAt()).isEqualTo(Instant.parse("2026-12-04T04:10:00Z"));
        assertThat(late.recordedAt()).isEqualTo(NOW);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "hold 261204-FI09 odd | record word:2: there never was a lot \"261204-FI09\"; did you mean \"261204-FI01\"?",
                "hold 261204-FI01 | record: a word is missing; write as in: record hold LOT WHY",
                "release 261204-FI01 Millrace is well now | record word:3: \"Millrace\" is not the word by; write who answers for it: by NAME WHY",
                "release 261204-FI01 by 12 is well | record word:4: name \"12\" is no name; write the name of the person who releases it",
                "soak T01 perhaps | record word:3: \"perhaps\" is neither ready nor not ready; write one of them",
                "soak T02 ready | record word:2: tub \"T02\" was not filled before 2026-12-04 06:30; look at the tub's number, or give the time with --at",
                "soaked T01 YEL-1 85 | record word:3: no lot \"YEL-1\" ever came in; write it down first: receive MATERIAL LOT QUANTITY PRICE",
                "waste 261204-FI01 500 fell | record word:3: waste \"500\" is more than the batch can have given; write kilograms; if all of it is lost write: record lost LOT WHY",
                "used TRAY-S T-77 9001 samples | record word:4: quantity \"9001\" is more than all that came in of the lot; receive the rest first, or look at the number",
                "containers C002 FIRM-400 back 2 | record word:3: \"FIRM-400\" has no containers that come back; name a product with a deposit",
                "containers C002 MED-BKT lent 2 | record word:4: \"lent\" is no way of a container; write out, back or count",
                "containers C002 MED-BKT out -2 | record word:5: count \"-2\" is below zero; write 1 or more",
                "loaded HARBOUR | record word:2: there is no route \"HARBOUR\"; did you mean \"HARBOR\"?",
                "loaded HARBOR 2026-12-07 | record word:3: date \"2026-12-07\" is in the future; record it when the van is loaded",
                "found 261204-FI01 there | record word:2: lot \"261204-FI01\" was not recorded as lost; there is nothing to take back",
                "cancel 99 slip | record word:2: there is no record \"99\"; write the number that was told with it"
            })
    void what_cannot_be_is_refused_with_the_remedy(String line, String message) {
        assertThat(catchThrowableOfType(BadFile.class, () -> record(line)).getMessage())
                .isEqualTo(message);
    }

    @Test
    void a_hold_is_not_cancelled_nor_anything_twice() {
        Recorded hold = new Recorded(new Fact.Held(FIRM, "odd"), NOW, NOW, "mail 1");
        assertThat(cancel(new Numbered(5, hold, true)))
                .isEqualTo("record word:2: record \"5\" holds lot \"261204-FI01\"; only a named person lets it go:"
                        + " record release 261204-FI01 by NAME WHY");
        Recorded cooled = new Recorded(new Fact.Cooled(FIRM, Celsius.degrees(4)), NOW, NOW, "mail 2");
        assertThat(cancel(new Numbered(5, cooled, false)))
                .isEqualTo("record word:2: record \"5\" was cancelled before; there is nothing to take back");
        assertThat(ReadFact.read(
                                List.of("cancel", "5", "slip"),
                                Optional.empty(),
                                desk(Optional.of(new Numbered(5, cooled, true))))
                        .fact())
                .isEqualTo(new Fact.Cancelled(5, "slip"));
    }

    private static String cancel(Numbered numbered) {
        return catchThrowableOfType(
                        BadFile.class,
                        () -> ReadFact.read(
                                List.of("cancel", "5", "slip"), Optional.empty(), desk(Optional.of(numbered))))
                .getMessage();
    }

    @Test
    void goods_past_their_own_date_are_not_taken_in() {
        assertThat(ReadReceipt.read(
                                List.of("BEAN-YEL", "B-1", "30kg", "31.00", "until", "2027-06-30"),
                                desk(Optional.empty()))
                        .fact())
                .isInstanceOfSatisfying(
                        Fact.Received.class,
                        came -> assertThat(came.bestBefore()).contains(LocalDate.of(2027, 6, 30)));
        assertThat(catchThrowableOfType(
                                BadFile.class,
                                () -> ReadReceipt.read(
                                        List.of(
                                                "BEAN-YEL",
                                                "B-1",
                                                "30kg",
                                                "31.00",
                                                "2026-12-03",
                                                "until",
                                                "2026-12-01"),
                                        desk(Optional.empty())))
                        .getMessage())
                .isEqualTo("receive word:7: date \"2026-12-01\" has passed; do not take it in; look at the date on the"
                        + " sack");
    }
}

package dawnkettle.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dawnkettle.book.SmallShop;
import dawnkettle.measure.Celsius;
import dawnkettle.measure.Mass;
import dawnkettle.measure.Money;
import dawnkettle.measure.Volume;
import dawnkettle.stock.Fact;
import dawnkettle.stock.Quantity;
import dawnkettle.stock.Recorded;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RecordRowsTest {
    private static final Instant AT = Instant.parse("2026-12-03T09:30:00Z");
    private static final LocalDate DAY = LocalDate.of(2026, 12, 3);
    private static final List<Fact> ONE_OF_EACH = List.of(
            new Fact.Received(
                    "BEANS", "B-77", Quantity.of(Mass.kilograms(500)), Money.minor(61_250, SmallShop.DOLLARS)),
            new Fact.Received("OIL", "O-1", Quantity.of(Volume.litres(20)), Money.minor(4_100, SmallShop.DOLLARS)),
            new Fact.CountedMaterial("BOX", "X-3", Quantity.pieces(412)),
            new Fact.CountedPacks(KeptNight.LOT, "FIRM-12", 6, Optional.empty()),
            new Fact.CountedPacks(KeptNight.FED, "FRIED-8", 40, Optional.of(new Fact.Dating(DAY, DAY.plusDays(9)))),
            new Fact.Yielded(KeptNight.LOT, "firm", Mass.kilograms(6), Mass.grams(14_350)),
            new Fact.Packed(KeptNight.LOT, "FIRM-12", 30),
            new Fact.CameLate("FIRM-12", DAY, 4),
            new Fact.Cooked(KeptNight.LOT, Celsius.tenths(973), 7),
            new Fact.Cooled(KeptNight.LOT, Celsius.tenths(48)),
            new Fact.Soaked(DAY, "T1", "B-77", Mass.kilograms(6)),
            new Fact.LostBatch(KeptNight.FED, "scorched"),
            new Fact.LostPacks(KeptNight.LOT, "FIRM-12", 2, "torn"),
            new Fact.Sold(KeptNight.LOT, "FIRM-12", 3),
            new Fact.Delivered("A1", 1, "HARB", KeptNight.LOT, "FIRM-12", 18),
            new Fact.Returned("HARB", "FIRM-12", Fact.Returned.What.CONTAINERS, 4, ""),
            new Fact.Priced("trade", "FIRM-12", Money.minor(225, SmallShop.DOLLARS), DAY),
            new Fact.Received(
                    "BEANS",
                    "B-78",
                    Quantity.of(Mass.kilograms(300)),
                    Money.minor(36_000, SmallShop.DOLLARS),
                    Optional.of(DAY.plusDays(200))),
            new Fact.CountedMaterial("BOX", "X-3", Quantity.pieces(400), "a stack fell into the drain"),
            new Fact.CountedPacks(KeptNight.LOT, "FIRM-12", 5, Optional.empty(), "one was eaten"),
            new Fact.Returned("HARB", "FIRM-12", Fact.Returned.What.GOODS, 2, "blown", Optional.of(KeptNight.LOT)),
            new Fact.UsedMaterial("OIL", "O-1", Quantity.of(Volume.litres(2)), "fryer filled"),
            new Fact.LostMaterial("BOX", "X-3", Quantity.pieces(12), "wet"),
            new Fact.Wasted(KeptNight.LOT, Mass.grams(350), "fell"),
            new Fact.SoakSeen(DAY, "T1", true),
            new Fact.SoakSeen(DAY, "T1", false),
            new Fact.Containers("HARB", "FIRM-12", Fact.Containers.Way.COUNTED, 7, "seen there"),
            new Fact.Loaded("R1", DAY),
            new Fact.Destroyed(KeptNight.LOT, "FIRM-12", 2, "came back"),
            new Fact.Held(KeptNight.LOT, "cooked too cool"),
            new Fact.Released(KeptNight.LOT, "Q. Millrace", "cooked again"),
            new Fact.HeldBought("BEANS", "B-77", "mould in a sack"),
            new Fact.ReleasedBought("BEANS", "B-77", "Q. Millrace", "the sack alone"),
            new Fact.Worked(DAY, java.time.Duration.ofMinutes(2_490)),
            new Fact.Returned("HARB", "FIRM-12", Fact.Returned.What.SHORT, 1, "not in the van"),
            new Fact.Away(DAY, 3, AT, AT.plusSeconds(3_600), "ill"),
            new Fact.Down(DAY, "FRYER", AT, AT.plusSeconds(3_600), ""),
            new Fact.Up(DAY, "FRYER", AT.plusSeconds(600)),
            new Fact.Cancelled(1, "a slip"));

    @TempDir
    Path folder;

    @Test
    void each_kind_comes_back_as_it_was_written_down() {
        try (Ledger ledger = Ledger.open(folder.resolve("ledger.db"))) {
            ledger.records().add(recorded(new Fact.Cooled(KeptNight.LOT, Celsius.tenths(1)), 99));
            for (int i = 0; i < ONE_OF_EACH.size(); i++) ledger.records().add(recorded(ONE_OF_EACH.get(i), i));

            assertThat(ledger.records().all(Fact.Kind.values()))
                    .extracting(Recorded::fact)
                    .containsExactlyElementsOf(ONE_OF_EACH);
            for (Fact.Kind kind : Fact.Kind.values())
                assertThat(ledger.records().of(kind, AT, AT.plusSeconds(3600)))
                        .as("%s", kind)
                        .isNotEmpty()
                        .allMatch(recorded -> recorded.fact().kind() == kind);
        }
    }

    @Test
    void the_kinds_are_the_sealed_family_and_each_is_tried_above() {
        assertThat(ONE_OF_EACH.stream().map(Object::getClass).distinct())
                .containsExactlyInAnyOrderElementsOf(Arrays.asList(Fact.class.getPermittedSubclasses()));
    }

    @Test
    void a_time_span_takes_its_first_instant_and_leaves_its_last() {
        try (Ledger ledger = Ledger.open(folder.resolve("ledger.db"))) {
            for (int i = 0; i < 3; i++)
                ledger.records().add(recorded(new Fact.Cooled(KeptNight.LOT, Celsius.tenths(i)), i));

            assertThat(ledger.records().of(Fact.Kind.COOLED, AT.plusSeconds(1), AT.plusSeconds(2)))
                    .containsExactly(recorded(new Fact.Cooled(KeptNight.LOT, Celsius.tenths(1)), 1));
        }
    }

    @Test
    void the_same_origin_says_a_thing_once_and_cannot_say_another() {
        try (Ledger ledger = Ledger.open(folder.resolve("ledger.db"))) {
            Recorded sold = recorded(new Fact.Sold(KeptNight.LOT, "FIRM-12", 3), 0);
            assertThat(ledger.records().add(sold)).isTrue();
            assertThat(ledger.records().add(sold)).isFalse();
            assertThatThrownBy(() -> ledger.records().add(recorded(new Fact.Sold(KeptNight.LOT, "FIRM-12", 4), 0)))
                    .hasMessage("\"mail 1:0\" has recorded another sold before");
            assertThat(ledger.records().all(Fact.Kind.SOLD)).hasSize(1);
        }
    }

    private static Recorded recorded(Fact fact, int line) {
        return new Recorded(fact, AT.plusSeconds(line), AT.plusSeconds(60), "mail 1:" + line);
    }
}

package dawnkettle.conf;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.book.StandingOrder;
import dawnkettle.line.LineSettings;
import dawnkettle.measure.Celsius;
import dawnkettle.measure.Mass;
import dawnkettle.measure.Money;
import dawnkettle.measure.Share;
import dawnkettle.night.NightSettings;
import dawnkettle.paper.PaperSettings;
import dawnkettle.post.PostSettings;
import dawnkettle.sheet.SheetSettings;
import dawnkettle.shop.Allergen;
import dawnkettle.shop.BlockSize;
import dawnkettle.shop.Pack;
import dawnkettle.shop.Sealing;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Currency;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the corner shop's files come to, value by value, and what holds where an optional key is left out. */
class WhatWasWrittenTest {
    private static final Currency USD = Currency.getInstance("USD");

    private final Configuration corner = ReadConfiguration.from(CornerShop.SOUND);

    @TempDir
    private Path dir;

    @Test
    void a_recipe_is_as_it_was_written() {
        var firm = corner.shop().recipe("firm");

        assertThat(firm.mark()).isEqualTo("FI");
        assertThat(firm.soakGroup()).contains("yellow");
        assertThat(firm.kettle().least()).isEqualTo(Mass.kilograms(15));
        assertThat(firm.kettle().most()).isEqualTo(Mass.kilograms(30));
        assertThat(firm.water()).isEqualTo(Share.of("8"));
        assertThat(firm.coagulant().orElseThrow().perMilk()).isEqualTo(Share.of("0.0032"));
        assertThat(firm.yield().mean()).isEqualTo(Share.of("2.5"));
        assertThat(firm.allergens()).containsExactly(Allergen.SOY);
        assertThat(firm.steps()).hasSize(4);
        assertThat(firm.steps().get(2).target()).contains(Celsius.degrees(2));
        assertThat(firm.steps().get(2).longestWait()).isEqualTo(OptionalInt.of(15));
        assertThat(firm.steps().get(3).halfHands()).isEqualTo(3);
        assertThat(firm.steps().get(3).longestWait()).isEmpty();
    }

    @Test
    void steam_and_strength_are_what_was_written_and_plain_where_nothing_was() throws IOException {
        var plain = corner.shop().recipe("firm");
        assertThat(plain.kettle().directSteam()).isFalse();
        assertThat(plain.coagulant().orElseThrow().strength()).isEqualTo(Share.WHOLE);

        var changed = CornerShop.in(dir)
                .with("recipes.toml", "grams_per_kg_milk = 3.2", "grams_per_kg_milk = 3.2, strength = 0.3")
                .with("recipes.toml", "step_kg = 5 }\nwater", "step_kg = 5, direct_steam = true }\nwater")
                .read()
                .shop()
                .recipe("firm");
        assertThat(changed.kettle().directSteam()).isTrue();
        assertThat(changed.coagulant().orElseThrow().strength()).isEqualTo(Share.of("0.3"));
    }

    @Test
    void a_recipe_made_from_another_brings_its_oil_and_no_water() {
        var pouch = corner.shop().recipe("pouch");

        assertThat(pouch.madeFrom()).contains("firm");
        assertThat(pouch.water()).isEqualTo(Share.NONE);
        assertThat(pouch.ingredients().get(0).perProduct()).isEqualTo(Share.of("0.12"));
        assertThat(pouch.steps().get(0).longestWait()).isEqualTo(OptionalInt.of(60));
    }

    @Test
    void a_product_is_as_it_was_written() {
        var firm = corner.shop().product("FIRM");

        assertThat(firm.packing().pack()).isEqualTo(Pack.BLOCK);
        assertThat(firm.net()).isEqualTo(Mass.grams(400));
        assertThat(firm.packing().block()).contains(new BlockSize(50, 80, 100));
        assertThat(firm.keeping().sealing()).isEqualTo(Sealing.WATER_PACK);
        assertThat(firm.keeping().shelfLifeDays()).isEqualTo(5);
        assertThat(firm.keeping().validatedOn()).isEqualTo(LocalDate.of(2026, 3, 16));
        assertThat(firm.wording().ingredients()).isEqualTo("Water, soybeans");
        assertThat(firm.wording().gtin()).contains("19520001000048");
        assertThat(firm.price()).isEqualTo(Money.minor(280, USD));
        assertThat(firm.par()).isEqualTo(12);
    }

    @Test
    void empty_cells_have_their_documented_defaults() {
        var bucket = corner.shop().product("BKT");
        var firm = corner.shop().product("FIRM");

        assertThat(bucket.wording().gtin()).isEmpty();
        assertThat(bucket.wording().design()).isEqualTo("bucket");
        assertThat(bucket.packing().deposit()).isEqualTo(Money.minor(400, USD));
        assertThat(bucket.par()).isZero();
        assertThat(firm.wording().design()).isEqualTo("case");
        assertThat(firm.packing().deposit()).isEqualTo(Money.zero(USD));
        assertThat(firm.leadDays()).isZero();
        assertThat(corner.shop().route("LATE").weight()).isEqualTo(1);
    }

    @Test
    void the_workroom_is_as_it_was_written() {
        var floor = corner.shop().floor();

        assertThat(floor.stations().get(1).places()).isEqualTo(4);
        assertThat(floor.stations().get(1).openings()).hasSize(2);
        assertThat(floor.stations().get(2).capacity()).isEqualTo(Mass.kilograms(500));
        assertThat(floor.crews().get(0).halfHands()).isEqualTo(6);
        assertThat(floor.tubs().get(0).hoursToRoomTenths()).isEqualTo(35);
        assertThat(floor.presence().get(0).days()).containsExactlyInAnyOrder(DayOfWeek.MONDAY, DayOfWeek.TUESDAY);
        assertThat(floor.presence().get(0).onClosedDays()).isTrue();
        assertThat(floor.changeovers().get(0).afterAllergen()).isEqualTo(20);
    }

    @Test
    void routes_customers_and_standing_orders_are_as_they_were_written() {
        var early = corner.shop().route("EARLY");
        var second = corner.shop().customer("C2");

        assertThat(early.days()).isEqualTo(Set.of(DayOfWeek.MONDAY, DayOfWeek.TUESDAY, DayOfWeek.FRIDAY));
        assertThat(early.departs()).isEqualTo(LocalTime.of(5, 15));
        assertThat(early.madeSameDay()).isFalse();
        assertThat(second.aliases()).containsExactly("osterfell", "deli");
        assertThat(second.mails()).containsExactly("orders@osterfell.example", "chef@osterfell.example");
        assertThat(second.pricesOnNotes()).isFalse();
        assertThat(corner.standing())
                .hasSize(5)
                .contains(new StandingOrder(
                        "C2",
                        "BKT",
                        DayOfWeek.TUESDAY,
                        2,
                        LocalDate.of(2026, 1, 5),
                        Optional.of(LocalDate.of(2026, 6, 30))));
    }

    @Test
    void a_closed_day_may_keep_the_vans_in() {
        var calendar = corner.shop().calendar();
        LocalDate christmas = LocalDate.of(2026, 12, 25);

        assertThat(calendar.closed()).containsEntry(christmas, "Christmas");
        assertThat(calendar.withoutVans()).containsExactly(christmas);
    }

    @Test
    void relative_paths_count_from_state_and_state_from_the_folder() throws IOException {
        var places = CornerShop.in(dir)
                .with(
                        "shop.toml",
                        "state = \"state\"",
                        "state = \"../var\"\nledger = \"book.db\"\nbackups = \"/mnt/copies\"")
                .read()
                .night()
                .places();

        assertThat(places.ledger()).isEqualTo(dir.resolveSibling("var").resolve("book.db"));
        assertThat(places.dropFolder()).isEqualTo(dir.resolveSibling("var").resolve("orders"));
        assertThat(places.backups()).isEqualTo(Path.of("/mnt/copies"));
    }

    @Test
    void what_is_left_out_of_the_settings_has_its_documented_default() {
        assertThat(corner.night().search()).isEqualTo(new NightSettings.Search(100_000, 60_000, 1));
        assertThat(corner.night().times().labelsBeforeMinutes()).isEqualTo(45);
        assertThat(corner.post().host()).isEmpty();
        assertThat(corner.post().port()).isEqualTo(587);
        assertThat(corner.post().security()).isEqualTo(PostSettings.Security.STARTTLS);
        assertThat(corner.post().patience()).isEqualTo(Duration.ofSeconds(30));
        assertThat(corner.paper().queue()).isEmpty();
        assertThat(corner.paper().copies()).isEmpty();
        assertThat(corner.thermometer().sensor()).isEmpty();
        assertThat(corner.labels())
                .isEqualTo(new LabelChoice(
                        CornerShop.SOUND.resolveSibling("labels"),
                        "case",
                        new LineSettings("", 9_600, LineSettings.Flow.RTS_CTS, "plain", 10, Duration.ofMinutes(10))));
    }

    @Test
    void what_is_written_in_the_settings_holds() throws IOException {
        var written = CornerShop.in(dir)
                .with("shop.toml", "summary = \"06:30\"", "summary = 06:45\nlabels_before_minutes = 30")
                .with(
                        "shop.toml",
                        "patience_minutes = 10",
                        "queue = \"ipp://desk.corner.example/ipp\"\ncopies = { run = 2 }")
                .with("shop.toml", "[labels]", "[search]\ndecodes = 7\n[thermometer]\nsensor = \"room\"\n[labels]")
                .read();

        assertThat(written.night().times().summary()).isEqualTo(LocalTime.of(6, 45));
        assertThat(written.night().times().labelsBeforeMinutes()).isEqualTo(30);
        assertThat(written.night().search()).isEqualTo(new NightSettings.Search(7, 60_000, 1));
        assertThat(written.paper().queue()).hasToString("Optional[ipp://desk.corner.example/ipp]");
        assertThat(written.paper().copies()).containsEntry("run", 2);
        assertThat(written.thermometer().sensor()).contains(dir.resolve("room"));
        assertThat(written.night().letters().summaryTo()).isEqualTo(List.of("owner@corner.example"));
    }

    @Test
    void sheets_speak_the_language_of_the_shop_unless_others_are_asked_for() throws IOException {
        assertThat(CornerShop.in(dir).read().sheets())
                .isEqualTo(SheetSettings.in(corner.shop().house().language()));
        SheetSettings asked = CornerShop.in(dir)
                .with(
                        "shop.toml",
                        "[labels]",
                        "[sheets]\nlanguages = [\"vi\", \"en\"]\nscoops = { NIGARI = 250 }\n\n[labels]")
                .read()
                .sheets();
        assertThat(asked.languages()).containsExactly("vi", "en");
        assertThat(asked.scoops()).containsOnly(Map.entry("NIGARI", Mass.grams(250)));
    }

    @Test
    void the_card_of_losses_is_worked_out_unless_the_shop_leaves_it_out() throws IOException {
        assertThat(corner.sheets().hasIfCard()).isTrue();
        assertThat(CornerShop.in(dir)
                        .with("shop.toml", "[labels]", "[sheets]\nif_card = false\n\n[labels]")
                        .read()
                        .sheets()
                        .hasIfCard())
                .isFalse();
        assertThat(CornerShop.in(dir)
                        .with("shop.toml", "[labels]", "[sheets]\nif_card = \"no\"\n\n[labels]")
                        .problems())
                .singleElement()
                .asString()
                .contains("shop.toml:")
                .contains("if_card \"no\" is neither true nor false; write true or false, without quotes");
    }

    @Test
    void kinds_of_sheets_have_printers_and_sides_of_their_own() throws IOException {
        var paper = CornerShop.in(dir)
                .with(
                        "shop.toml",
                        "patience_minutes = 10",
                        "queues = { pick = \"ipp://cold.corner.example/ipp\" }\nsides = { route = \"two\", run = \"one\" }")
                .read()
                .paper();

        assertThat(paper.queues()).hasToString("{pick=ipp://cold.corner.example/ipp}");
        assertThat(paper.reachesPaper()).isTrue();
        assertThat(paper.sides()).isEqualTo(Map.of("route", PaperSettings.Sides.TWO, "run", PaperSettings.Sides.ONE));
        assertThat(corner.paper().reachesPaper()).isFalse();
    }

    @Test
    void a_printer_a_side_or_a_typeface_that_cannot_be_is_named_with_its_place() throws IOException {
        CornerShop shop = CornerShop.in(dir)
                .with(
                        "shop.toml",
                        "patience_minutes = 10",
                        "queues = { pick = \"cold room\" }\nsides = { route = \"three\" }\n[typefaces]\nfiles = [\"none.ttf\"]\n");

        assertThat(shop.problems())
                .anyMatch(said -> said.matches("shop.toml:\\d+:\\d+: pick \"cold room\" is no print queue; write it as"
                        + " ipp://printer.example/ipp/print"))
                .anyMatch(said -> said.matches("shop.toml:\\d+:\\d+: route \"three\" .*write one of: one, two"))
                .anyMatch(said ->
                        said.matches("shop.toml:\\d+:\\d+: files \"none.ttf\" is no file that can be read; install"
                                + " the typeface, as with the package fonts-droid-fallback, or correct the path"));
    }

    @Test
    void typefaces_beside_our_own_are_found_from_the_configuration_on() throws IOException {
        Files.createFile(dir.resolve("kanji.ttf"));
        var written = CornerShop.in(dir)
                .with("shop.toml", "[labels]", "[typefaces]\nfiles = [\"kanji.ttf\"]\n[labels]")
                .read();

        assertThat(written.typefaces()).containsExactly(dir.resolve("kanji.ttf"));
        assertThat(corner.typefaces()).isEmpty();
    }
}

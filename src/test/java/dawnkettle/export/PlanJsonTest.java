package dawnkettle.export;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dawnkettle.plan.AnyEvening;
import dawnkettle.plan.AnyShop;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.PlanDay;
import dawnkettle.shop.Shop;
import dawnkettle.trouble.BadFile;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Locale;
import java.util.TimeZone;
import org.junit.jupiter.api.Test;

class PlanJsonTest {
    private static final Shop SHOP = AnyShop.of(3);
    private static final DayPlan PLAN = PlanDay.of(SHOP, AnyEvening.of(SHOP, 3, 0));
    private static final String TEXT = PlanJson.write(PLAN, SHOP);

    @Test
    void a_plan_is_read_as_it_was_written() {
        for (long seed = 1; seed <= 25; seed++) {
            Shop shop = AnyShop.of(seed);
            DayPlan plan = PlanDay.of(shop, AnyEvening.of(shop, seed, 0));
            String text = PlanJson.write(plan, shop);
            assertThat(PlanJson.read(text, shop)).as("shop %d", seed).isEqualTo(plan);
            assertThat(PlanJson.write(PlanJson.read(text, shop), shop)).isEqualTo(text);
        }
    }

    @Test
    void the_plan_of_the_demonstration_shop_is_read_as_it_was_written() {
        assertThat(PlanJson.read(MillraceDay.TEXT, MillraceDay.SHOP)).isEqualTo(MillraceDay.PLAN);
    }

    @Test
    void the_same_plan_gives_the_same_text_under_another_locale_and_zone() {
        Locale locale = Locale.getDefault();
        TimeZone zone = TimeZone.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
            TimeZone.setDefault(TimeZone.getTimeZone("Asia/Kathmandu"));
            assertThat(PlanJson.write(PLAN, SHOP)).isEqualTo(TEXT);
        } finally {
            Locale.setDefault(locale);
            TimeZone.setDefault(zone);
        }
    }

    @Test
    void a_written_plan_ends_in_one_line_feed_and_has_no_carriage_return() {
        assertThat(TEXT)
                .endsWith("}\n")
                .doesNotEndWith("\n\n")
                .doesNotContain("\r")
                .startsWith("{\n  \"schema\": ");
    }

    @Test
    void keys_stand_in_the_order_of_the_open_form() {
        assertThat(TEXT.lines()
                        .filter(line -> line.matches("  \"[a-zA-Z]+\": .*"))
                        .map(line -> line.split("\"")[1]))
                .containsExactly(
                        "schema",
                        "productionDate",
                        "revision",
                        "revisionOf",
                        "computedAt",
                        "zone",
                        "seed",
                        "mode",
                        "frozen",
                        "orders",
                        "demand",
                        "recipes",
                        "products",
                        "batches",
                        "tubs",
                        "presence",
                        "soak",
                        "stations",
                        "hands",
                        "changeovers",
                        "operations",
                        "stock",
                        "allocation",
                        "routes",
                        "labels",
                        "shortages",
                        "advice",
                        "warnings",
                        "quality");
    }

    @Test
    void half_a_person_is_written_as_a_number_with_one_decimal() {
        assertThat(PrettyJson.of(
                        new Row().people("a", 3).people("b", 4).people("c", 0).node()))
                .contains("\"a\": 1.5", "\"b\": 2", "\"c\": 0");
    }

    @Test
    void both_half_past_ones_of_the_night_the_clocks_go_back_are_told_apart() {
        ZoneId zone = ZoneId.of("America/New_York");
        String text = PrettyJson.of(new Row()
                .instant("summer", Instant.parse("2026-11-01T05:30:00Z"), zone)
                .instant("winter", Instant.parse("2026-11-01T06:30:00Z"), zone)
                .instant("none", Instant.parse("2026-11-01T06:30:00Z"), ZoneId.of("UTC"))
                .node());
        assertThat(text)
                .contains(
                        "\"summer\": \"2026-11-01T01:30:00-04:00\"",
                        "\"winter\": \"2026-11-01T01:30:00-05:00\"",
                        "\"none\": \"2026-11-01T06:30:00+00:00\"");
    }

    @Test
    void what_is_no_json_is_refused_with_its_place() {
        assertThatThrownBy(() -> PlanJson.read("{\n  \"schema\": dawn}", SHOP))
                .isInstanceOf(BadFile.class)
                .hasMessage("plan.json:2:13: the text is not JSON; write it again from the ledger");
    }

    @Test
    void another_schema_is_refused() {
        assertThatThrownBy(() -> PlanJson.read(TEXT.replace("plan/1", "plan/2"), SHOP))
                .isInstanceOf(BadFile.class)
                .hasMessage("plan.json: /schema \"dawnkettle-plan/2\" is not read here; write \"dawnkettle-plan/1\"");
    }

    @Test
    void a_wrong_value_is_refused_with_its_path() {
        assertRefused(
                "\"revision\": 1",
                "\"revision\": 1.5",
                "/revision \"1.5\" is not a whole number; write a whole number");
        assertRefused(
                "\"mode\": \"no-search\"",
                "\"mode\": \"best\"",
                "/mode \"best\" is not known here; write one of the words of the schema");
        assertRefused(
                "\"zone\": \"",
                "\"zone\": \"Moon/",
                "/zone \"Moon/Asia/Tokyo\" is not known here; write one of the words of the schema");
        assertRefused("\"frozen\": [],", "", "/frozen is missing; write a list");
        assertRefused(
                "\"plannedPacks\": 38",
                "\"plannedPacks\": 45",
                "a value contradicts another: planned packs lie between 0 and what was ordered; plan the day again");
        assertRefused(
                "\"recipe\": \"recipe0\",\n      \"soakGroup\"",
                "\"recipe\": \"other\",\n      \"soakGroup\"",
                "/recipes/0/recipe \"other\" is no recipe of the shop; put the recipe back into recipes.toml");
    }

    private static void assertRefused(String sound, String broken, String why) {
        assertThat(TEXT).contains(sound);
        assertThatThrownBy(() -> PlanJson.read(TEXT.replace(sound, broken), SHOP))
                .isInstanceOf(BadFile.class)
                .hasMessage("plan.json: " + why);
    }
}

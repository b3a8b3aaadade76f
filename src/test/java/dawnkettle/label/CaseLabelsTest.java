package dawnkettle.label;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dawnkettle.measure.Mass;
import dawnkettle.measure.Money;
import dawnkettle.plan.PlannedLabel;
import dawnkettle.shop.Allergen;
import dawnkettle.shop.House;
import dawnkettle.shop.Keeping;
import dawnkettle.shop.Pack;
import dawnkettle.shop.Packing;
import dawnkettle.shop.Product;
import dawnkettle.shop.Sealing;
import dawnkettle.shop.Wording;
import dawnkettle.stock.LotCode;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Currency;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

public class CaseLabelsTest {
    public static final LocalDate PACKED = LocalDate.of(2026, 12, 4);

    public static House house(String market) {
        return new House(
                "Millrace Tofu Works",
                List.of("12 Sluice Lane", "Quillhaven, OR 97999"),
                ZoneId.of("America/Los_Angeles"),
                "en-US",
                Currency.getInstance("USD"),
                House.Units.US_CUSTOMARY,
                House.Paper.LETTER,
                market);
    }

    public static Product firm(Sealing sealing, int days) {
        return new Product(
                "FIRM-12",
                "Firm tofu, 12 oz blocks",
                "firm",
                new Packing(
                        Pack.BLOCK,
                        Mass.grams(340),
                        Optional.empty(),
                        12,
                        Optional.empty(),
                        Money.zero(Currency.getInstance("USD"))),
                new Keeping(days, "the owner", LocalDate.of(2026, 3, 2), sealing, false, 3),
                new Wording(
                        "Water, soybeans, wheat starch, magnesium chloride (coagulant)",
                        List.of(Allergen.SOY, Allergen.WHEAT),
                        "Keep refrigerated at or below 41 °F (5 °C)",
                        "case-100x70",
                        Optional.of("19521234500015")),
                Money.zero(Currency.getInstance("USD")),
                0,
                0);
    }

    public static PlannedLabel planned(LocalDate best, String elements) {
        return new PlannedLabel(
                new LotCode("261204-FI03"),
                "FIRM-12",
                4,
                List.of(5),
                12,
                PACKED,
                best,
                Optional.of("19521234500015"),
                elements);
    }

    public static PlannedLabel planned() {
        return planned(PACKED.plusDays(10), "(01)19521234500015(15)261214(10)261204-FI03");
    }

    @Test
    void a_whole_case_says_what_the_plan_says() {
        CaseLabel label = new CaseLabels(house("us-california")).wholeCase(planned(), firm(Sealing.WATER_PACK, 10));
        assertThat(label.fields())
                .containsEntry("product", "Firm tofu, 12 oz blocks")
                .containsEntry("lot", "261204-FI03")
                .containsEntry("packed", "DEC 04 2026")
                .containsEntry("dateWord", "BEST if Used by")
                .containsEntry("date", "DEC 14 2026")
                .containsEntry("each", "11.9 oz (340 g)")
                .containsEntry("net", "8.99 lb (4.08 kg)")
                .containsEntry("contains", "SOY, WHEAT")
                .containsEntry("part", "")
                .containsEntry("place", "12 Sluice Lane, Quillhaven, OR 97999");
        assertThat(label.elements()).isPresent();
    }

    @Test
    void a_part_case_says_how_many_it_holds() {
        CaseLabel label = new CaseLabels(house("us")).partCase(planned(), firm(Sealing.WATER_PACK, 10), 5);
        assertThat(label.fields()).containsEntry("part", "PART CASE 5 of 12").containsEntry("net", "3.74 lb (1.7 kg)");
        assertThat(label.elements()).as("(01) is the whole case's number").isEmpty();
        assertThat(label.fields()).containsEntry("gtin", "");
    }

    @Test
    void allergens_stand_out_in_the_list_where_the_market_wants_it() {
        CaseLabel label = new CaseLabels(house("eu")).wholeCase(planned(), firm(Sealing.WATER_PACK, 10));
        assertThat(label.says().ingredients())
                .isEqualTo("Water, SOYBEANS, WHEAT starch, magnesium chloride (coagulant)");
        assertThat(label.dated().date()).isEqualTo("14 DEC 2026");
    }

    @Test
    void a_use_by_in_the_symbol_is_a_use_by_in_the_text() {
        PlannedLabel planned = planned(PACKED.plusDays(10), "(01)19521234500015(17)261214(10)261204-FI03");
        assertThat(new CaseLabels(house("eu"))
                        .wholeCase(planned, firm(Sealing.WATER_PACK, 10))
                        .dated()
                        .dateWord())
                .isEqualTo("Use by");
    }

    @Test
    void a_shop_without_a_number_of_its_own_prints_no_symbol() {
        PlannedLabel planned = planned(PACKED.plusDays(10), "(15)261214(10)261204-FI03");
        assertThat(new CaseLabels(house("us"))
                        .wholeCase(planned, firm(Sealing.WATER_PACK, 10))
                        .elements())
                .isEmpty();
    }

    @Test
    void a_date_beyond_the_validated_life_is_refused() {
        CaseLabels labels = new CaseLabels(house("us"));
        PlannedLabel planned = planned(PACKED.plusDays(11), "(01)19521234500015(15)261215(10)261204-FI03");
        assertThatThrownBy(() -> labels.wholeCase(planned, firm(Sealing.TRAY, 10)))
                .hasMessage(
                        "products.csv: lot 261204-FI03 of \"FIRM-12\": date \"2026-12-15\" is 11 days after packing;"
                                + " the validated life is 10 days; nothing lengthens it");
    }

    @Test
    void a_sealed_pack_not_pasteurised_has_ten_days_at_most() {
        CaseLabels labels = new CaseLabels(house("us"));
        PlannedLabel planned = planned(PACKED.plusDays(14), "(01)19521234500015(15)261218(10)261204-FI03");
        assertThatThrownBy(() -> labels.wholeCase(planned, firm(Sealing.VACUUM, 14)))
                .hasMessage(
                        "products.csv: lot 261204-FI03 of \"FIRM-12\": a sealed pack not pasteurised is dated \"14\""
                                + " days ahead; give it at most 10 days, or pasteurise it");
        assertThat(labels.wholeCase(planned, firm(Sealing.TRAY, 14)).dated().date())
                .isEqualTo("DEC 18 2026");
    }

    @Test
    void symbol_and_text_must_say_the_same() {
        CaseLabels labels = new CaseLabels(house("us"));
        Product firm = firm(Sealing.TRAY, 10);
        assertThat(labels.objections(planned(PACKED.plusDays(10), "(01)19521234500015(15)261213(10)261204-FI03"), firm))
                .extracting(Object::toString)
                .containsExactly("products.csv: lot 261204-FI03 of \"FIRM-12\": its symbol says \"261213\", its text"
                        + " 2026-12-14; both must be the same day");
        assertThat(labels.objections(planned(PACKED.plusDays(10), "(01)19521234500015(15)261214(10)261204-FI04"), firm))
                .hasSize(1);
        assertThat(labels.objections(planned(PACKED.plusDays(10), "(01)19521234500016(15)261214(10)261204-FI03"), firm))
                .hasSize(1);
    }

    /** An independent calendar: days counted by hand from month lengths, no library of dates. */
    @Test
    void every_day_of_2026_to_2037_and_every_life_to_60_days_is_dated_as_an_independent_count_says() {
        CaseLabels labels = new CaseLabels(house("eu"));
        int[] year = {2026};
        int[] month = {1};
        int[] day = {1};
        for (LocalDate packed = LocalDate.of(2026, 1, 1); packed.getYear() < 2038; packed = packed.plusDays(1)) {
            int y = year[0];
            int m = month[0];
            int d = day[0];
            for (int life = 1; life <= 60; life++) {
                d++;
                if (d > length(y, m)) {
                    d = 1;
                    m++;
                }
                if (m > 12) {
                    m = 1;
                    y++;
                }
                Keeping keeping = new Keeping(life, "the owner", packed, Sealing.OPEN_BUCKET, false, 1);
                LocalDate best = CaseLabels.latest(packed, keeping);
                String names = "JANFEBMARAPRMAYJUNJULAUGSEPOCTNOVDEC";
                String expected = (d < 10 ? "0" : "") + d + " " + names.substring(3 * m - 3, 3 * m) + " " + y;
                if (!labels.wording().date(best).equals(expected))
                    throw new AssertionError(
                            packed + " + " + life + ": " + labels.wording().date(best));
                String coded = "" + y % 100 + (m < 10 ? "0" : "") + m + (d < 10 ? "0" : "") + d;
                assertThat(Gs1Date.write(best)).isEqualTo(coded);
            }
            day[0]++;
            if (day[0] > length(year[0], month[0])) {
                day[0] = 1;
                month[0]++;
            }
            if (month[0] > 12) {
                month[0] = 1;
                year[0]++;
            }
        }
    }

    private static int length(int year, int month) {
        if (month == 2) return year % 4 == 0 && (year % 100 != 0 || year % 400 == 0) ? 29 : 28;
        return month == 4 || month == 6 || month == 9 || month == 11 ? 30 : 31;
    }
}

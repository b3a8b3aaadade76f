package dawnkettle.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.Golden;
import dawnkettle.draw.PdfTypeface;
import dawnkettle.measure.Mass;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.Heading;
import dawnkettle.shop.House;
import dawnkettle.shop.Shop;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class SheetSetTest {
    private static final PdfTypeface TYPEFACE = PdfTypeface.notoSans();
    private static final Shop SHOP = SampleDay.shop();
    private static final List<Sheet> SHEETS = sheets(SHOP, SampleDay.of(SHOP, 5));

    private static List<Sheet> sheets(Shop shop, DayPlan plan) {
        return SheetSet.of(plan, shop, SheetStyle.of(shop.house(), TYPEFACE));
    }

    private static Sheet sheet(List<Sheet> sheets, String name) {
        return sheets.stream()
                .filter(sheet -> sheet.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    /** What a reader reads: the strings of a page's marks, in their order. */
    static String words(Sheet sheet) {
        return sheet.pages().stream().map(SheetSetTest::words).collect(Collectors.joining(" "));
    }

    private static String words(Page page) {
        return page.marks().stream()
                .filter(Mark.Text.class::isInstance)
                .map(mark -> ((Mark.Text) mark).string())
                .collect(Collectors.joining(" "));
    }

    @Test
    void sheets_come_in_the_order_in_which_they_are_wanted() {
        assertThat(SHEETS.stream().map(Sheet::name))
                .containsExactly(
                        "soak",
                        "run",
                        "run-grind-cook",
                        "run-coagulate-press",
                        "run-bath-cut-pack",
                        "run-fryer",
                        "pick",
                        "route-R1",
                        "route-R2",
                        "route-R3",
                        "delivery-R1",
                        "delivery-R2",
                        "delivery-R3",
                        "free");
    }

    @Test
    void each_kind_of_sheet_is_as_it_was_once_looked_at() throws IOException {
        for (Sheet sheet : SHEETS)
            if (!sheet.name().matches("(route|delivery)-R[23]"))
                Golden.check("sheet/" + sheet.name() + ".txt", sheet.asText());
    }

    @Test
    void the_soak_sheet_says_kilograms_sacks_lot_water_and_times_of_each_tub() {
        String words = words(sheet(SHEETS, "soak"));
        // T1 takes the first three batches of 20, 22.5 and 0 kg: 42.5 kg, a 25 kg sack and 17.5 kg; water three to one.
        assertThat(words).contains("16:10 42.5 kg 1 sack + 17.5 kg lot SB-1187 127.5 L at 12 °C 02:25 latest 10:10");
        assertThat(words).contains("lots SB-1187, then SB-1203");
        assertThat(words)
                .contains("Planned for a soak room of 18 °C (sensor in the soak room). Room now: ______________");
        assertThat(words).contains("a sack of 25 kg is above the 23 kg (51 lb) load constant (NIOSH)");
    }

    @Test
    void the_cook_reads_what_to_heat_to_how_long_who_waits_and_never_to_trust_foam() {
        String words = words(sheet(SHEETS, "run-grind-cook"));
        assertThat(words).contains("02:42 to 03:10 B01 261204-FI01 Cook Firm Cooker 1 98 °C, 28 min");
        assertThat(words).contains("Filter 03:10 Filter press start by 03:15");
        assertThat(words).contains("never by the foam");
        assertThat(words).contains("ALLERGEN WASH, 20 min, before B05. sesame must be gone");
    }

    @Test
    void the_dose_stands_where_the_curd_is_set_and_only_there() {
        assertThat(words(sheet(SHEETS, "run-coagulate-press")))
                .contains("612 g nigari flakes (MgCl2·6H2O) 75 °C, 18 min");
        assertThat(words(sheet(SHEETS, "run-grind-cook"))).doesNotContain("612 g");
    }

    @Test
    void packs_carry_cases_loose_packs_and_the_date_in_letters() {
        assertThat(words(sheet(SHEETS, "run-bath-cut-pack"))).contains("14 cases + 5 loose", "best before 18 DEC 2026");
    }

    @Test
    void what_is_short_or_late_stands_on_the_overview_the_pick_sheet_and_the_route_sheet() {
        assertThat(words(sheet(SHEETS, "run")))
                .contains("Firm tofu, block 300 g: 9 packs short: the press is taken until 10:05", "LATE by 25 min");
        assertThat(words(sheet(SHEETS, "pick")))
                .contains("R1, Tern Street Grocery: 9 of 24 Firm tofu, block 300 g: the press is taken until 10:05")
                .contains("LATE by 25 min");
        assertThat(words(sheet(SHEETS, "route-R1"))).contains("Short: 9 of 24 Firm tofu, block 300 g.");
        assertThat(words(sheet(SHEETS, "route-R2"))).contains("planned to be LATE by 25 min");
    }

    @Test
    void a_driver_sees_no_prices() {
        for (Sheet sheet : SHEETS)
            if (sheet.kind() != Sheet.Kind.DELIVERY) assertThat(words(sheet)).doesNotContain("$", "USD", "3.25");
    }

    @Test
    void every_page_says_shop_day_revision_and_which_page_it_is() {
        for (Sheet sheet : SHEETS)
            for (int i = 0; i < sheet.pages().size() && sheet.kind() != Sheet.Kind.DELIVERY; i++) {
                String head = sheet.pages().get(i).head().toString();
                assertThat(head)
                        .contains("Millrace Tofu Works  ·  planned Thu 3 Dec, 15:00|")
                        .contains("|Revision 1|")
                        .contains("Friday 4 December 2026")
                        .contains("page " + (i + 1) + " of " + sheet.pages().size())
                        .contains("If fallback sheet F-261204 lies in the tray: destroy it now.");
            }
    }

    @Test
    void a_revision_says_what_it_replaces_and_a_lesser_plan_says_so_white_on_black() {
        Heading heading = SampleDay.heading(2, OptionalInt.of(1), Heading.Mode.NO_SEARCH);
        for (Sheet sheet : sheets(SHOP, SampleDay.of(SHOP, 3, heading)))
            for (Page page : sheet.kind() == Sheet.Kind.DELIVERY ? List.<Page>of() : sheet.pages())
                assertThat(page.head().toString())
                        .contains("Revision 2 replaces revision 1: bin revision 1")
                        .containsPattern("12.5 bold left white \\|PLAN WITHOUT SEARCH");
        assertThat(words(sheet(sheets(SHOP, SampleDay.of(SHOP, 3, heading)), "soak")))
                .contains("filled 16:07");
    }

    @Test
    void pounds_gallons_ounces_and_degrees_fahrenheit_are_the_exact_figures_rounded_once() {
        Shop shop = SampleShop.of(House.Units.US_CUSTOMARY, 14, 24);
        List<Sheet> sheets = sheets(shop, SampleDay.of(shop, 3));
        // 42.5 kg / 0.45359237 = 93.696...; 127.5 L / 3.785411784 = 33.68...; 12 °C = 53.6 °F; 612 g = 21.587... oz.
        assertThat(words(sheet(sheets, "soak"))).contains("93.7 lb", "33.7 gal at 54 °F");
        assertThat(words(sheet(sheets, "run-coagulate-press"))).contains("21.59 oz (612 g)");
    }

    @Test
    void fourteen_tubs_fit_one_page_of_either_paper() {
        // Three batches a tub, and what is made from another needs none: 40 batches fill 14 tubs.
        for (PaperSize paper : List.of(PaperSize.A4, PaperSize.LETTER)) {
            DayPlan plan = SampleDay.of(SHOP, 40);
            assertThat(plan.soaks()).hasSize(14);
            Sheet soak = SheetSet.of(
                            plan, SHOP, new SheetStyle(paper, House.Units.METRIC, SheetSettings.in("en"), TYPEFACE))
                    .get(0);
            assertThat(soak.pages()).hasSize(1);
        }
    }

    @Test
    void a_day_without_batches_still_has_its_sheets() {
        assertThat(words(sheet(sheets(SHOP, SampleDay.of(SHOP, 0)), "run"))).contains("No batches in this plan.");
    }

    @Test
    void the_fallback_sheet_is_numbered_and_says_what_to_make_and_which_dates_to_write() throws IOException {
        Sheet sheet = FallbackSheet.of(SampleDay.fallback(SHOP), SHOP, SheetStyle.of(SHOP.house(), TYPEFACE));
        assertThat(words(sheet))
                .contains("Fallback sheet F-261204", "FALLBACK: what was made for Friday 27 November 2026")
                .contains("Packed on Fri 4 Dec", "18 DEC 2026", "19 DEC 2026");
        Golden.check("sheet/fallback.txt", sheet.asText());
    }

    @Test
    void an_early_soak_call_says_that_the_book_is_still_open() throws IOException {
        Sheet sheet =
                SoakSheet.of(SampleDay.soakCall(SampleDay.of(SHOP, 5)), SHOP, SheetStyle.of(SHOP.house(), TYPEFACE));
        assertThat(words(sheet)).contains("Soak sheet, early tubs", "If orders fall short, 5 kg may be over.");
        Golden.check("sheet/soak-call.txt", sheet.asText());
    }

    private static Sheet record(Shop shop, int batches, int number) {
        return SheetSet.records(SampleDay.of(shop, batches), shop, SheetStyle.of(shop.house(), TYPEFACE))
                .get(number);
    }

    @Test
    void a_batch_record_holds_what_goes_in_each_step_what_comes_out_and_a_blank_for_each_value() throws IOException {
        Sheet record = record(SHOP, 5, 0);
        assertThat(record.name()).isEqualTo("record-B01-261204-FI01");
        assertThat(record.pages()).hasSize(1);
        assertThat(words(record))
                .contains("Batch record B01", "Firm, lot 261204-FI01. Contains: soy.")
                .contains("Soybeans, dry SB-1187 20 kg", "612 g", "21 °C at 5 °C at", "98 °C, 28 min", "released by");
        Golden.check("sheet/record.txt", record.asText());
    }

    @Test
    void a_delivery_note_has_two_copies_with_lots_and_dates_and_prices_only_where_the_customer_wants_them() {
        Sheet notes = sheet(SHEETS, "delivery-R1");
        String first = words(notes.pages().get(0));
        assertThat(first)
                .contains("The customer's copy", "The shop's copy: signed, back to the office", "This is no invoice.");
        assertThat(first.split("Delivery note 261204-C100", -1)).hasSize(3);
        assertThat(first).contains("Not with this delivery: 9 of 24 Firm tofu, block 300 g.");
        String all = words(notes);
        // C103, the second stop of R1, wants prices: 3.25 a pack.
        assertThat(all).contains("Price", "3.25").contains("USD. This is no invoice.");
        assertThat(first).doesNotContain("3.25");
    }

    @Test
    void the_free_list_has_what_is_planned_and_in_stock_less_what_is_promised() {
        // Each batch of the sample day is promised whole, and so is the stock: nothing is free until a line is taken
        // away.
        DayPlan plan = SampleDay.of(SHOP, 5);
        assertThat(FreeSheet.of(new Day(plan, new Desk(SHOP, SheetStyle.of(SHOP.house(), TYPEFACE)))))
                .isEmpty();
        DayPlan less = SampleDay.withoutAllocation(plan, 0);
        List<FreeSheet.Free> free = FreeSheet.of(new Day(less, new Desk(SHOP, SheetStyle.of(SHOP.house(), TYPEFACE))));
        assertThat(free).singleElement().satisfies(one -> {
            assertThat(one.lot()).isEqualTo(plan.allocation().get(0).lot());
            assertThat(one.packs()).isEqualTo(plan.allocation().get(0).packs());
        });
    }

    @Test
    void a_revision_marks_the_rows_that_its_sheets_did_not_have_and_names_what_is_gone() throws IOException {
        Heading heading = SampleDay.heading(2, OptionalInt.of(1), Heading.Mode.FULL);
        DayPlan before = SampleDay.of(SHOP, 5);
        DayPlan after = SampleDay.of(SHOP, 4, heading);
        List<Sheet> sheets = SheetSet.of(after, before, SHOP, SheetStyle.of(SHOP.house(), TYPEFACE));
        Sheet run = sheet(sheets, "run");
        assertThat(words(run)).contains("Changed rows carry this mark in the margin.", "No longer on this sheet: B05");
        DayPlan same = SampleDay.of(SHOP, 5, heading);
        Sheet alike = sheet(SheetSet.of(same, before, SHOP, SheetStyle.of(SHOP.house(), TYPEFACE)), "pick");
        // The only mark is the one that says what the mark means.
        assertThat(marks(alike)).isEqualTo(1);
        assertThat(marks(sheet(sheets, "pick"))).isGreaterThan(1);
        Golden.check("sheet/run-revised.txt", run.asText());
    }

    /** Bars in the margin. */
    private static long marks(Sheet sheet) {
        return sheet.pages().stream()
                .flatMap(page -> page.body().stream())
                .filter(mark -> mark instanceof Mark.Box box && box.look() == Mark.Look.BLACK && box.width() == 1)
                .count();
    }

    @Test
    void a_second_language_stands_below_the_first_smaller() throws IOException {
        SheetSettings both = new SheetSettings(List.of("en", "es"), Map.of("NIGARI", Mass.grams(250)));
        List<Sheet> sheets = SheetSet.of(SampleDay.of(SHOP, 5), SHOP, SheetStyle.of(SHOP.house(), both, TYPEFACE));
        Sheet run = sheet(sheets, "run-coagulate-press");
        assertThat(words(run)).contains("Run sheet: Coagulate and press Hoja de trabajo: Coagulate and press");
        // 612 g with a scoop of 250 g: two scoops and 112 g.
        assertThat(words(run)).contains("2 × scoop + 112 g = 612 g");
        assertThat(run.imprint().language()).isEqualTo("en");
        Golden.check("sheet/run-coagulate-press-en-es.txt", run.asText());
    }

    @Test
    void the_count_sheet_says_what_the_book_says_and_leaves_room_for_what_is_there() throws IOException {
        DayPlan plan = SampleDay.of(SHOP, 5);
        Sheet count = CountSheet.of(
                new CountSheet.Stocktake(SampleDay.DATE, SampleDay.PLANNED_AT, plan.stock(), List.of()),
                SHOP,
                SheetStyle.of(SHOP.house(), TYPEFACE));
        assertThat(words(count)).contains("Count sheet", "261203-FI09", "Found, but not in the book");
        Golden.check("sheet/count.txt", count.asText());
    }
}

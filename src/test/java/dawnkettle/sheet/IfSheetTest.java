package dawnkettle.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.Golden;
import dawnkettle.draw.PdfTypeface;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.IfCard;
import dawnkettle.shop.House;
import dawnkettle.shop.Shop;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class IfSheetTest {
    private static final Shop SHOP = SampleDay.shop();
    private static final SheetStyle STYLE = SheetStyle.of(SHOP.house(), PdfTypeface.notoSans());

    private static Sheet sheet(int batches, int nth) {
        DayPlan plan = SampleDay.of(SHOP, batches);
        return IfSheet.of(SampleCard.of(SHOP, plan, nth), plan, SHOP, STYLE);
    }

    @Test
    void it_is_as_it_was_once_looked_at() throws IOException {
        Golden.check("sheet/if.txt", sheet(12, 6).asText());
    }

    @Test
    void a_row_says_how_many_packs_are_short_of_what_for_whom_and_what_stands_in() {
        String words = SheetSetTest.words(sheet(3, 20));
        assertThat(words)
                .contains("B01 Firm FI01, known 03:15 4 4 × tofu, block 300 g R1 (1) ")
                .contains("12 × tofu, block 300 g, B03, and 1 more free: 8 × Medium tofu, block 300 g, B05")
                .contains("make B99 as well: COOK- 2 03:15; or leave out B12: 9 packs short, 0 min late");
    }

    @Test
    void a_hand_or_a_station_is_a_line_with_its_verdict() {
        String words = SheetSetTest.words(sheet(3, 4));
        assertThat(words)
                .contains(
                        "one hand fewer from 04:30 30 5 customers, 3 vans leave out B07, B08, B09, B10, and 1 more; or");
    }

    @Test
    void every_loss_of_the_card_stands_on_it_once() {
        DayPlan plan = SampleDay.of(SHOP, 26);
        IfCard card = SampleCard.of(SHOP, plan, 5);
        String words = SheetSetTest.words(IfSheet.of(card, plan, SHOP, STYLE));
        for (IfCard.Row row : card.rows())
            if (row.loss().kind() == IfCard.Loss.Kind.BATCH)
                assertThat(words).containsPattern("\\b" + row.loss().id() + " ");
    }

    /** What hangs on the wall is one sheet, printed on both sides; a day that would hurt everywhere takes a third page. */
    @Test
    void a_day_of_28_batches_half_of_which_hurt_is_two_pages_and_no_day_is_more_than_three() {
        for (PaperSize paper : List.of(PaperSize.A4, PaperSize.LETTER)) {
            assertThat(pages(28, 2, paper, List.of("en"))).isLessThanOrEqualTo(2);
            assertThat(pages(28, 2, paper, List.of("pt", "vi"))).isLessThanOrEqualTo(2);
            assertThat(pages(28, 1, paper, List.of("es"))).isLessThanOrEqualTo(3);
            assertThat(pages(45, 1, paper, List.of("es"))).isLessThanOrEqualTo(3);
        }
        assertThat(sheet(12, 6).pages()).hasSize(1);
    }

    private static int pages(int batches, int nth, PaperSize paper, List<String> languages) {
        DayPlan plan = SampleDay.of(SHOP, batches);
        SheetSettings settings = new SheetSettings(languages, Map.of(), true);
        SheetStyle style = new SheetStyle(paper, SHOP.house().units(), settings, PdfTypeface.notoSans());
        return IfSheet.of(SampleCard.of(SHOP, plan, nth), plan, SHOP, style)
                .pages()
                .size();
    }

    @Test
    void what_has_no_room_on_three_pages_is_counted_and_hurts_least() {
        Shop large = SampleShop.of(House.Units.METRIC, 40, 150);
        DayPlan plan = SampleDay.of(large, 120);
        Sheet sheet = IfSheet.of(SampleCard.of(large, plan, 1), plan, large, STYLE);
        assertThat(sheet.pages()).hasSize(3);
        assertThat(SheetSetTest.words(sheet)).containsPattern("[1-9]\\d* more losses that leave fewer packs short");
    }

    @Test
    void a_card_without_losses_says_that_nothing_was_computed() {
        DayPlan plan = SampleDay.of(SHOP, 3);
        IfCard none = new IfCard(SampleDay.DATE, 1, List.of());
        assertThat(SheetSetTest.words(IfSheet.of(none, plan, SHOP, STYLE)))
                .contains("Nothing was computed for this day");
    }
}

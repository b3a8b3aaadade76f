package dawnkettle.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.Golden;
import dawnkettle.draw.PdfTypeface;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.IfCard;
import dawnkettle.shop.Shop;
import java.io.IOException;
import java.util.List;
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
    void what_hurts_says_who_is_short_what_stands_in_and_what_to_do_first() {
        String words = SheetSetTest.words(sheet(3, 20));
        assertThat(words)
                .contains("If a batch is lost B01 Firm, 261204-FI01")
                .contains("4 packs short")
                .contains("12 × Firm tofu, block 300 g from B03, lot 261204-FI03")
                .contains("from stock, lot")
                .contains("04:35 B05 on Cooker 2, not B03")
                .contains("Or leave out B12: then 9 packs short, 0 min late");
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

    @Test
    void a_day_of_20_batches_and_a_few_losses_that_hurt_is_one_page() {
        assertThat(sheet(20, 13).pages()).hasSize(1);
        assertThat(sheet(12, 6).pages()).hasSize(1);
    }

    @Test
    void a_card_without_losses_says_that_nothing_was_computed() {
        DayPlan plan = SampleDay.of(SHOP, 3);
        IfCard none = new IfCard(SampleDay.DATE, 1, List.of());
        assertThat(SheetSetTest.words(IfSheet.of(none, plan, SHOP, STYLE)))
                .contains("Nothing was computed for this day");
    }
}

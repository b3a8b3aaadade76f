package dawnkettle.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.Golden;
import dawnkettle.draw.PdfTypeface;
import dawnkettle.shop.House;
import dawnkettle.shop.Shop;
import java.io.IOException;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class OrdersOnlySheetTest {
    private static final Shop SHOP = SampleShop.of(House.Units.METRIC, 14, 24);
    private static final SheetStyle STYLE = SheetStyle.of(SHOP.house(), PdfTypeface.notoSans());

    private static String words(Sheet sheet) {
        return sheet.pages().stream()
                .flatMap(page -> page.marks().stream())
                .filter(Mark.Text.class::isInstance)
                .map(mark -> ((Mark.Text) mark).string())
                .collect(Collectors.joining("\n"));
    }

    @Test
    void it_says_that_it_is_the_orders_alone_and_why_and_where_the_dates_stand() throws IOException {
        Sheet sheet = OrdersOnlySheet.of(SampleDay.ordered(SHOP), SHOP, STYLE);
        assertThat(words(sheet).replace('\n', ' '))
                .contains("Orders-only sheet O-261204")
                .contains("ORDERS ONLY: products and packs, no batches and no times")
                .contains("No plan came out: the planner made a mistake.")
                .contains("no soak times, no lots and no dated labels")
                .contains("fallback sheet F-261204")
                .doesNotContain("Best before")
                .doesNotContain("18 DEC");
        Golden.check("sheet/orders-only.txt", sheet.asText());
    }

    @Test
    void the_bar_of_the_mode_is_white_on_black() {
        Page first =
                OrdersOnlySheet.of(SampleDay.ordered(SHOP), SHOP, STYLE).pages().get(0);
        Mark.Text banner = first.marks().stream()
                .filter(Mark.Text.class::isInstance)
                .map(Mark.Text.class::cast)
                .filter(text -> text.string().startsWith("ORDERS ONLY"))
                .findFirst()
                .orElseThrow();
        assertThat(banner.lettering()).isEqualTo(Lettering.bold(12.5).white());
        assertThat(first.marks())
                .anyMatch(mark -> mark instanceof Mark.Box box
                        && box.look() == Mark.Look.BLACK
                        && box.y() < banner.baseline()
                        && box.y() + box.height() > banner.baseline());
    }

    @Test
    void lines_that_go_out_on_another_day_stand_under_a_bar_of_that_day() {
        Ordered ordered = SampleDay.ordered(SHOP);
        assertThat(words(OrdersOnlySheet.of(ordered, SHOP, STYLE))).contains("Sat 5 Dec");
        assertThat(ordered.given().stream().mapToInt(Given::packs).sum())
                .isEqualTo(ordered.book().packs());
    }

    @Test
    void a_book_that_is_still_open_and_an_empty_one_say_so() {
        Ordered small = SampleDay.ordered(SHOP);
        Ordered open = new Ordered(small.book(), false, Ordered.Reason.TOO_LONG, small.madeAt());
        assertThat(words(OrdersOnlySheet.of(open, SHOP, STYLE)))
                .contains("The order book was not closed: more orders may come.")
                .contains("the planner took too long");
        Ordered empty = new Ordered(
                new dawnkettle.book.ClosedBook(SampleDay.DATE, SampleDay.PLANNED_AT, List.of()),
                true,
                Ordered.Reason.MISTAKE,
                small.madeAt());
        assertThat(words(OrdersOnlySheet.of(empty, SHOP, STYLE))).contains("Nothing is ordered for this day.");
    }

    @Test
    void what_takes_its_place_says_to_destroy_it_by_its_number() {
        SheetStyle later = STYLE.inPlaceOf(OrdersOnlySheet.number(SampleDay.DATE));
        for (Sheet sheet : SheetSet.of(SampleDay.of(SHOP, 5), SHOP, later))
            if (sheet.kind() != Sheet.Kind.DELIVERY)
                assertThat(((Mark.Text) sheet.pages().get(0).marks().get(0)).string())
                        .as(sheet.name())
                        .isEqualTo("Destroy orders-only sheet O-261204 now, and fallback sheet F-261204 too."
                                + " This sheet takes their place.");
    }
}

package dawnkettle.book;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

class FormRowsTest {
    private static List<String> read(String... lines) {
        return FormRows.of(List.of(lines), Set.of("FIRM-400"), line -> line.contains("tofu"));
    }

    @Test
    void an_item_and_its_quantity_are_one_line() {
        assertThat(read("Item: tofu", "Qty: 3", "Item: silken tofu", "Qty: 2 cases"))
                .containsExactly("3 tofu", "2 cases silken tofu");
        assertThat(read("qty: 3", "item: tofu")).containsExactly("3 tofu");
    }

    @Test
    void items_and_quantities_that_do_not_alternate_stay_as_they_are() {
        assertThat(read("Item: tofu", "Item: silken tofu", "Qty: 2", "Qty: 3"))
                .containsExactly("Item: tofu", "Item: silken tofu", "Qty: 2", "Qty: 3");
        assertThat(read("Item: tofu", "Qty: about 3")).containsExactly("Item: tofu", "Qty: about 3");
    }

    @Test
    void a_table_is_read_by_the_columns_of_its_head() {
        assertThat(read(
                        "Line  Item   Description  UOM  Qty",
                        "1     30117  firm tofu    EA   2",
                        "2     30118  firm tofu xx CS   3"))
                .containsExactly("2 firm tofu", "3 cases firm tofu xx");
    }

    @Test
    void a_table_with_any_other_column_is_not_read() {
        assertThat(read("Line  Description  UOM  Old  Qty", "1     firm tofu    EA   4    6"))
                .containsExactly("Line  Description  UOM  Old  Qty", "1     firm tofu    EA   4    6");
    }

    @Test
    void a_row_of_no_product_or_of_another_unit_stays_as_it_is() {
        assertThat(read("Line  Description  UOM  Qty", "1     see list     EA   2", "2     firm tofu    KG   6"))
                .containsExactly("1     see list     EA   2", "2     firm tofu    KG   6");
    }

    @Test
    void article_numbers_of_the_customer_are_left_out_and_codes_of_the_shop_are_not() {
        assertThat(read("QG-T01 firm tofu x 1", "QG-T04 tofu x 2")).containsExactly("firm tofu x 1", "tofu x 2");
        assertThat(read("FIRM-400 x 1", "FIRM-400 24")).containsExactly("FIRM-400 x 1", "FIRM-400 24");
        assertThat(read("QG-T01 firm tofu x 1")).containsExactly("QG-T01 firm tofu x 1");
    }

    @Test
    void a_date_with_its_month_between_dashes_is_one_of_words() {
        assertThat(read("Required: 03-Dec-2026")).containsExactly("Required: 03 Dec 2026");
    }
}

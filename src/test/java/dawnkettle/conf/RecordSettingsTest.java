package dawnkettle.conf;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.cost.Buying;
import dawnkettle.night.NightSettings;
import dawnkettle.shop.Limits;
import dawnkettle.stock.RecordRules;
import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is required of a batch, how to buy, and within what limits a batch must be. */
class RecordSettingsTest {
    @TempDir
    Path dir;

    private CornerShop shop;

    @BeforeEach
    void copy() throws IOException {
        shop = CornerShop.in(dir);
    }

    @Test
    void without_a_word_nothing_falls_due_and_the_careful_limits_hold() {
        Configuration conf = shop.read();
        assertThat(conf.night().records()).isEqualTo(NightSettings.Records.USUAL);
        assertThat(conf.night().buying()).isEqualTo(Buying.USUAL);
        assertThat(conf.shop().recipes()).allMatch(recipe -> recipe.limits().equals(Limits.CAREFUL));
    }

    @Test
    void what_is_written_is_read() throws IOException {
        Configuration conf = shop.appending(
                        "shop.toml",
                        "\n[records]\nrequired = [\"cooked\", \"cooled\"]\ngrace_minutes = 30\ndrill_day = 5\n"
                                + "\n[buying]\ncover_days = 7\nmost_days = 20\norder_cost = 35.00\nholding_percent = 25\n")
                .read();
        assertThat(conf.night().records().rules())
                .isEqualTo(new RecordRules(java.util.Set.of(RecordRules.Wanted.COOKED, RecordRules.Wanted.COOLED), 30));
        assertThat(conf.night().records().drillDay()).isEqualTo(5);
        assertThat(conf.night().buying().coverDays()).isEqualTo(7);
        assertThat(conf.night().buying().orderCost().orElseThrow().minor()).isEqualTo(3_500);
    }

    @Test
    void each_mistake_of_records_and_buying_is_named_with_its_place_and_its_remedy() throws IOException {
        assertThat(shop.appending(
                                "shop.toml",
                                "\n[records]\nrequired = [\"cooled\", \"wheighed\"]\ngrace_minutes = 2000\ndrill_day = 31\n"
                                        + "drill_at = \"25:00\"\n[buying]\ncover_days = 0\nmost_days = 800\n"
                                        + "holding_percent = 101\norder_cost = -1\nlead = 3\n")
                        .problems())
                .allMatch(problem -> problem.startsWith("shop.toml:"))
                .allMatch(problem -> problem.contains("; "))
                .anyMatch(problem -> problem.contains("wheighed"))
                .anyMatch(problem -> problem.contains("2000") && problem.contains("1440"))
                .anyMatch(problem -> problem.contains("31") && problem.contains("28"))
                .anyMatch(problem -> problem.contains("25:00"))
                .anyMatch(problem -> problem.contains("101"))
                .anyMatch(problem -> problem.contains("800"))
                .anyMatch(problem -> problem.contains("lead"))
                .hasSizeGreaterThanOrEqualTo(8);
    }

    @Test
    void cooling_limits_looser_than_the_code_s_are_refused() throws IOException {
        assertThat(shop.appending(
                                "recipes.toml",
                                "\nlimits = { cook_c = 30, warm_c = 25, warm_minutes = 121, cold_c = 8, cold_minutes = 361,"
                                        + " hot = 1 }\n")
                        .problems())
                .allMatch(problem -> problem.startsWith("recipes.toml:"))
                .anyMatch(problem -> problem.contains("30"))
                .anyMatch(problem -> problem.contains("25"))
                .anyMatch(problem -> problem.contains("121"))
                .anyMatch(problem -> problem.contains("361"))
                .anyMatch(problem -> problem.contains("hot"));
    }
}

package dawnkettle.mail;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.Golden;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.PlannedOrder;
import dawnkettle.plan.Shortage;
import dawnkettle.shop.House;
import dawnkettle.shop.Shop;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.TimeZone;
import org.junit.jupiter.api.Test;

class MorningSummaryTest {
    private static final Shop SHOP = Millrace.shop();

    @Test
    void a_good_day_reads_as_accepted() throws IOException {
        Mail mail = MorningSummary.of(MillraceFriday.well(), SHOP, MillraceFriday.quietNight());
        Golden.check("mail/summary-well.txt", mail.body().text());
        Golden.check("mail/summary-well.html", mail.body().html());
    }

    @Test
    void a_bad_day_reads_as_accepted() throws IOException {
        Mail mail = MorningSummary.of(MillraceFriday.troubled(), SHOP, MillraceFriday.badNight());
        Golden.check("mail/summary-troubled.txt", mail.body().text());
        Golden.check("mail/summary-troubled.html", mail.body().html());
    }

    @Test
    void the_subject_carries_the_verdict() {
        assertThat(MorningSummary.of(MillraceFriday.well(), SHOP, MillraceFriday.quietNight())
                        .subject())
                .isEqualTo("Fri 4 Dec: all well, first van 10:30");
        assertThat(MorningSummary.of(MillraceFriday.troubled(), SHOP, MillraceFriday.quietNight())
                        .subject())
                .isEqualTo("Fri 4 Dec: 2 routes late, 12 packs short");
        assertThat(MorningSummary.of(MillraceFriday.troubled(), SHOP, MillraceFriday.badNight())
                        .subject())
                .isEqualTo("Fri 4 Dec: 2 routes late, 12 packs short, 1 label group to count, 2 more, 1 question");
    }

    @Test
    void the_first_three_lines_say_whether_all_is_well_what_is_not_and_the_first_van() {
        String text = MorningSummary.of(MillraceFriday.well(), SHOP, MillraceFriday.quietNight())
                .body()
                .text();
        assertThat(text.lines().limit(3))
                .containsExactly(
                        "All is well.",
                        "Late: nothing. Short: nothing. Uncertain: nothing.",
                        "First van: Mill Lane at 10:30, packed by 09:25 (35 min to spare).");
    }

    @Test
    void a_declined_pack_is_never_called_well_even_where_no_shortage_names_it() {
        DayPlan plan = MillraceFriday.plan(
                MillraceFriday.routes(0, 0),
                List.of(new PlannedOrder(
                        MillraceFriday.line("S-78", "SOUP", "HAR", "FIRM-BK", 3), 1, "no bucket left")),
                List.of(),
                List.of(),
                List.of());
        Mail mail = MorningSummary.of(plan, SHOP, MillraceFriday.quietNight());
        assertThat(mail.subject()).isEqualTo("Fri 4 Dec: 2 packs short");
        assertThat(mail.body().text())
                .contains("- The Copper Ladle: 1 of 3 Firm bucket 5 kg for Fri 4 Dec (no bucket")
                .contains("Short: 2 of Firm bucket 5 kg.");
    }

    @Test
    void text_keeps_to_72_columns_and_html_to_60_kilobytes() {
        for (NightReport night : List.of(MillraceFriday.quietNight(), MillraceFriday.badNight())) {
            Mail mail = MorningSummary.of(MillraceFriday.troubled(), SHOP, night);
            assertThat(mail.body().text().lines()).allMatch(line -> TextColumn.width(line) <= 72);
            assertThat(mail.body().html().getBytes(StandardCharsets.UTF_8).length)
                    .isLessThan(60_000);
        }
    }

    @Test
    void html_fetches_nothing_and_its_tables_name_rows_and_columns() {
        String html = MorningSummary.of(MillraceFriday.troubled(), SHOP, MillraceFriday.badNight())
                .body()
                .html();
        assertThat(html).doesNotContainPattern("(?i)https?:|url\\(|<script|<link|@import|src=\"(?!cid:)");
        assertThat(html.split("<table", -1)).hasSameSizeAs(html.split("<caption>", -1));
        assertThat(html).contains("<th scope=\"col\">Route</th>", "<th scope=\"row\">Harbour</th>");
        assertThat(html).doesNotContainPattern("<th(?![^>]*scope=)[ >]");
    }

    @Test
    void names_can_carry_no_html() {
        String evil = "<img src=x onerror=\"alert('1')\">&amp;";
        Shop shop = Millrace.shop(House.Units.METRIC, List.of(Millrace.named("EVIL", evil)));
        DayPlan plan = MillraceFriday.plan(
                MillraceFriday.routes(0, 0),
                List.of(new PlannedOrder(MillraceFriday.line("N-9", "NOODLE", "HIL", "EVIL", 5), 0, evil)),
                List.of(new Shortage("EVIL", 5, evil)),
                List.of(evil),
                List.of(evil));
        NightReport night = new NightReport(
                new NightReport.Orders(1, 1, List.of(evil), List.of(evil)),
                new NightReport.Sheets(List.of(evil), List.of(evil)),
                new NightReport.Labels(0, List.of(evil), List.of(evil)),
                new NightReport.Notes(List.of(evil), List.of(evil), List.of(evil)),
                List.of());
        String html = MorningSummary.of(plan, shop, night).body().html();
        assertThat(html).doesNotContain("<img").doesNotContain("onerror=\"");
        assertThat(html)
                .contains("&lt;img src=x onerror=&quot;alert(&#39;1&#39;)&quot;&gt;&amp;amp;")
                .contains("Nine Bowls &lt;Kitchen&gt;");
    }

    @Test
    void a_name_can_not_forge_a_line_or_turn_the_direction_of_reading() {
        NightReport night = new NightReport(
                new NightReport.Orders(1, 1, List.of(), List.of()),
                new NightReport.Sheets(List.of(), List.of()),
                new NightReport.Labels(0, List.of(), List.of()),
                new NightReport.Notes(List.of(), List.of(), List.of("x\r\nAll is well.\u2028\u202Ekcap\u0007")),
                List.of());
        String text =
                MorningSummary.of(MillraceFriday.troubled(), SHOP, night).body().text();
        assertThat(text)
                .contains("- x All is well. kcap\n")
                .doesNotContain("\nAll is well.")
                .doesNotContain("\u202E");
    }

    @Test
    void the_owner_of_a_shop_that_counts_in_pounds_reads_pounds() {
        Shop pounds = Millrace.shop(House.Units.US_CUSTOMARY, List.of());
        String text = MorningSummary.of(MillraceFriday.well(), pounds, MillraceFriday.quietNight())
                .body()
                .text();
        // 104 kg of beans: 104 / 0.45359237 = 229.28 lb, by the definition of the pound.
        assertThat(text)
                .contains("from 229.3 lb of beans")
                .contains("room 64.8 °F")
                .doesNotContain(" kg of beans");
    }

    @Test
    void what_may_have_arrived_before_says_so_first() {
        Mail mail = MorningSummary.of(MillraceFriday.well(), SHOP, MillraceFriday.quietNight());
        Mail again = mail.withFirstLine("This mail may have reached you already (sent again 06:41).");
        assertThat(again.id()).isEqualTo(mail.id());
        assertThat(again.body().text())
                .startsWith("This mail may have reached you already (sent again 06:41).\n\nAll is well");
        assertThat(again.body().html())
                .contains(
                        "<main>\n<p class=\"notice\">This mail may have reached you already (sent again 06:41).</p>\n<h1>");
    }

    @Test
    void another_language_and_zone_of_the_machine_change_nothing() {
        Locale locale = Locale.getDefault();
        TimeZone zone = TimeZone.getDefault();
        Mail here = MorningSummary.of(MillraceFriday.troubled(), SHOP, MillraceFriday.badNight());
        try {
            Locale.setDefault(Locale.GERMANY);
            TimeZone.setDefault(TimeZone.getTimeZone("Asia/Tokyo"));
            assertThat(MorningSummary.of(MillraceFriday.troubled(), SHOP, MillraceFriday.badNight()))
                    .isEqualTo(here);
        } finally {
            Locale.setDefault(locale);
            TimeZone.setDefault(zone);
        }
    }
}

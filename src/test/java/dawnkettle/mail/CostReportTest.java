package dawnkettle.mail;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.Golden;
import dawnkettle.cost.MadeDay;
import dawnkettle.cost.PriceBook;
import dawnkettle.cost.Sale;
import dawnkettle.cost.Standard;
import dawnkettle.cost.WeekBook;
import dawnkettle.cost.WeekCosts;
import dawnkettle.cost.YieldCourse;
import dawnkettle.draw.ChartPictures;
import dawnkettle.measure.Mass;
import dawnkettle.shop.House;
import dawnkettle.shop.Shop;
import dawnkettle.stock.Fact.Yielded;
import dawnkettle.stock.LotCode;
import dawnkettle.trouble.Table;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TimeZone;
import org.junit.jupiter.api.Test;

class CostReportTest {
    private static final Shop SHOP = Millrace.shop();
    private static final ChartPictures CHARTS = new ChartPictures();
    private static final List<WeekCosts> WEEKS = WeekCosts.byWeek(MillraceHalfYear.days(), SHOP);

    private static Mail report() {
        return CostReport.of(book(), CHARTS);
    }

    /** The week of 19 October, in which the yield of firm fell; three customers, of whom one takes a pack a day. */
    private static WeekBook book() {
        List<WeekCosts> weeks = WEEKS.subList(0, 21);
        LocalDate monday = weeks.get(20).monday();
        List<MadeDay> days = MillraceHalfYear.days().subList(120, 126);
        PriceBook prices = new PriceBook(SHOP, List.of());
        return new WeekBook(
                weeks,
                Optional.of(new Standard(SHOP).week(days)),
                YieldCourse.of(SHOP.recipes(), yields()),
                new WeekBook.Trade(sales(monday), containers(), monday.minusWeeks(20), days, prices),
                SHOP);
    }

    private static List<Yielded> yields() {
        List<Yielded> yields = new ArrayList<>();
        for (int day = 0; day < 21 * 7; day++) {
            LocalDate date = MillraceHalfYear.FIRST.plusDays(day);
            String lot = date.toString().substring(2).replace("-", "") + "-FI01";
            long grams = (day < 20 * 7 ? 78_000 : 74_880) + (day % 5) * 90L;
            yields.add(new Yielded(new LotCode(lot), "firm", Mass.kilograms(30), Mass.grams(grams)));
        }
        return yields;
    }

    private static List<Sale> sales(LocalDate monday) {
        List<Sale> sales = new ArrayList<>();
        for (int day = 0; day < 6; day++) {
            sales.add(sale(monday.plusDays(day), "HERON", "FIRM-12", 700));
            sales.add(sale(monday.plusDays(day), "SOUP", "MILK-1", 420));
            sales.add(sale(monday.plusDays(day), "NOODLE", "FIRM-12", 1));
        }
        sales.add(sale(monday.plusDays(2), "SOUP", "MILK-1", -6));
        return sales;
    }

    private static Sale sale(LocalDate day, String customer, String product, long packs) {
        return new Sale(
                day,
                customer,
                product,
                packs < 0 ? "" : "261019-FI01",
                packs,
                SHOP.product(product).price());
    }

    private static List<Sale.Containers> containers() {
        return List.of(new Sale.Containers("HERON", "FIRM-BK", 40, 31, Millrace.usd("4.00")));
    }

    @Test
    void a_week_in_which_beans_rose_and_the_yield_fell_reads_as_accepted() throws IOException {
        Mail mail = report();
        Golden.check("mail/costs.txt", mail.body().text());
        Golden.check("mail/costs.html", mail.body().html());
        Golden.check("mail/costs.csv", csv(mail));
        Golden.check("mail/deliveries.csv", csv(mail, 1));
        Golden.check("mail/containers.csv", csv(mail, 2));
        Files.write(
                Path.of("target/golden/mail/costs.png"),
                mail.body().pictures().get(0).png().toArray());
    }

    @Test
    void the_subject_says_what_a_kilogram_cost_and_how_that_moved() {
        assertThat(report().subject()).matches("Week 43: [0-9]\\.[0-9]{3} USD a kg, [0-9]+\\.[0-9] % (more|less)");
        assertThat(CostReport.of(WeekBook.of(WEEKS.subList(0, 1), SHOP), CHARTS).subject())
                .matches("Week 23: [0-9]\\.[0-9]{3} USD a kg");
    }

    @Test
    void the_picture_says_in_words_what_it_shows_and_is_the_one_the_html_refers_to() {
        Mail mail = report();
        Mail.Picture picture = mail.body().pictures().get(0);
        assertThat(picture.alternative())
                .contains("Price of beans: 1.540 USD per kg in the week of 1 Jun, 2.002 in the week of 19 Oct");
        assertThat(mail.body().html())
                .contains("<img src=\"cid:" + picture.cid(mail.id()) + "\" alt=\"Cost of a kilogram");
    }

    @Test
    void text_keeps_to_72_columns_and_html_to_60_kilobytes() {
        assertThat(report().body().text().lines()).allMatch(line -> TextColumn.width(line) <= 72);
        assertThat(report().body().html().getBytes(UTF_8).length).isLessThan(60_000);
    }

    @Test
    void the_table_for_the_bookkeeper_adds_up() {
        Mail mail = report();
        assertThat(mail.attachments().get(0).name()).isEqualTo("costs-2026-W43.csv");
        Table table = Table.read("costs.csv", csv(mail));
        assertThat(table.problems()).isEmpty();
        assertThat(table.rows()).hasSize(1 + 21 * 2).allMatch(row -> row.cells().size() == 18);
        for (Table.Row row : table.rows().subList(1, table.rows().size())) {
            BigDecimal parts = row.cells().subList(7, 16).stream()
                    .map(cell -> new BigDecimal(cell.text()))
                    .reduce(BigDecimal.ZERO, BigDecimal::add);
            assertThat(parts).isEqualByComparingTo(row.cells().get(16).text());
        }
    }

    /** RFC 4180 section 2; the formula signs are those for which spreadsheets are known to start a formula. */
    @Test
    void no_cell_acts_as_a_formula_and_quotes_are_doubled() {
        CsvText table = new CsvText(List.of("a", "b"));
        table.row(List.of("=1+1", "a\"b,c"));
        table.row(List.of("\u00A0@SUM(A1)", "\t-5"));
        table.row(List.of("\uFF1D1", "+49 30"));
        table.row(List.of("two\r\nlines", "Firm - soft"));
        table.row(List.of(new BigDecimal("-5.00"), -5L));
        assertThat(table)
                .hasToString("a,b\r\n'=1+1,\"a\"\"b,c\"\r\n'\u00A0@SUM(A1),'\t-5\r\n'\uFF1D1,'+49 30\r\n"
                        + "\"two\r\nlines\",Firm - soft\r\n-5.00,-5\r\n");
    }

    @Test
    void a_product_name_can_carry_no_html_and_no_formula() {
        Shop shop = Millrace.shop(House.Units.METRIC, List.of(Millrace.named("ODD", "=HYPERLINK(\"x\")<b>\r\nBcc: y")));
        var days = MillraceHalfYear.days().stream()
                .map(day -> new dawnkettle.cost.MadeDay(
                        day.date(),
                        List.of(new dawnkettle.cost.MadeDay.Made(
                                "ODD",
                                day.made().get(0).packs(),
                                day.made().get(0).mass(),
                                day.made().get(0).beans(),
                                60,
                                List.of())),
                        day.beans(),
                        day.water(),
                        1))
                .toList();
        Mail mail = CostReport.of(WeekBook.of(WeekCosts.byWeek(days, shop), shop), CHARTS);
        assertThat(mail.body().html())
                .contains("=HYPERLINK(&quot;x&quot;)&lt;b&gt; Bcc: y")
                .doesNotContain("<b>");
        assertThat(csv(mail)).contains("\"'=HYPERLINK(\"\"x\"\")<b> Bcc: y\"");
    }

    @Test
    void another_language_and_zone_of_the_machine_change_nothing() {
        Locale locale = Locale.getDefault();
        TimeZone zone = TimeZone.getDefault();
        Mail here = report();
        try {
            Locale.setDefault(Locale.GERMANY);
            TimeZone.setDefault(TimeZone.getTimeZone("Asia/Tokyo"));
            assertThat(report()).isEqualTo(here);
        } finally {
            Locale.setDefault(locale);
            TimeZone.setDefault(zone);
        }
    }

    private static String csv(Mail mail) {
        return csv(mail, 0);
    }

    private static String csv(Mail mail, int attachment) {
        return new String(mail.attachments().get(attachment).content().toArray(), UTF_8);
    }
}

package dawnkettle.night;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dawnkettle.DemoDay;
import dawnkettle.cost.BeanCourse;
import dawnkettle.cost.CostPart;
import dawnkettle.cost.WeekBook;
import dawnkettle.cost.YieldCourse;
import dawnkettle.draw.ChartPictures;
import dawnkettle.draw.PdfSheets;
import dawnkettle.draw.PdfTypeface;
import dawnkettle.mail.Mail;
import dawnkettle.measure.Mass;
import dawnkettle.measure.Money;
import dawnkettle.plan.DayPlan;
import dawnkettle.sheet.SheetStyle;
import dawnkettle.shop.Shop;
import dawnkettle.stock.Fact;
import dawnkettle.stock.Fact.Yielded;
import dawnkettle.stock.LotCode;
import dawnkettle.stock.Quantity;
import dawnkettle.stock.Recorded;
import dawnkettle.store.Ledger;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/** Half a year in the ledger, with beans that rise by 40 % over eight weeks and a firm yield that falls by 4 %: the report names both. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class ShockAndDriftTest {
    private static final DemoDay DEMO = new DemoDay(LocalDate.of(2026, 12, 4));
    private static final Shop SHOP = DEMO.conf.shop();
    private static final LocalDate FIRST = LocalDate.of(2026, 6, 1);
    private static final int WEEKS = 26;
    private static final int SHOCK = 13;
    private static final int DRIFT = 18;
    private static final LocalDate DUE = FIRST.plusWeeks(WEEKS);

    private WeekBook book;
    private Mail mail;

    @BeforeAll
    void report(@TempDir Path folder) throws IOException {
        try (Ledger ledger = Ledger.open(folder.resolve("ledger.db"))) {
            PastWeeks.load(ledger, halfYear());
            Office office = office(ledger);
            book = new GatherBook(office).before(DUE).orElseThrow();
            mail = new ReportWeek(office).mail(book);
        }
        Files.createDirectories(Path.of("target/golden/night"));
        Files.write(
                Path.of("target/golden/night/costs.pdf"),
                mail.attachments().get(mail.attachments().size() - 1).content().toArray());
    }

    private static Office office(Ledger ledger) {
        PlanForm form = new PlanForm() {
            @Override
            public String write(DayPlan plan) {
                throw new UnsupportedOperationException();
            }

            @Override
            public DayPlan read(String text) {
                throw new UnsupportedOperationException();
            }
        };
        PdfTypeface typeface = PdfTypeface.notoSans();
        Edges edges = new Edges(
                null,
                new Edges.PaperDesk(null, SheetStyle.of(SHOP.house(), typeface)),
                null,
                new Edges.MailDesk(null, new ChartPictures(), new PdfSheets(typeface)),
                form);
        Clock clock = Clock.fixed(noon(DUE), SHOP.house().zone());
        return new Office(
                new Office.Papers(SHOP, DEMO.conf.standing(), DEMO.conf.night()),
                ledger,
                clock,
                edges,
                (at, line) -> {});
    }

    private static Instant noon(LocalDate day) {
        return day.atTime(12, 0).atZone(SHOP.house().zone()).toInstant();
    }

    /** A lot of beans a week; five batches of firm a day, each filled as blocks of 400 g. */
    private static List<Recorded> halfYear() {
        Random chance = new Random(11);
        List<Recorded> facts = new ArrayList<>();
        for (int week = 0; week < WEEKS; week++) {
            LocalDate monday = FIRST.plusWeeks(week);
            int steps = Math.max(0, Math.min(8, week - SHOCK + 1));
            // 1,000 kg at 950.00, and 47.50 more in each of eight weeks: 40 % in all.
            Money paid = Money.minor(95_000 + 4_750L * steps, SHOP.house().currency());
            String lot = "YEL-" + week;
            add(
                    facts,
                    monday.minusDays(1),
                    new Fact.Received("BEAN-YEL", lot, Quantity.of(Mass.kilograms(1_000)), paid));
            for (int day = 0; day < 6; day++) day(facts, monday.plusDays(day), lot, week < DRIFT ? 1 : 0.96, chance);
        }
        return facts;
    }

    private static void day(List<Recorded> facts, LocalDate day, String beanLot, double share, Random chance) {
        add(facts, day, new Fact.Soaked(day, "T01", beanLot, Mass.kilograms(150)));
        for (int batch = 1; batch <= 5; batch++) {
            LotCode lot = lot(day, batch);
            Mass product = Mass.grams(Math.round(30_000 * share * (2.56 + 0.02 * chance.nextGaussian())));
            add(facts, day, new Fact.Yielded(lot, "firm", Mass.kilograms(30), product));
            add(facts, day, new Fact.Packed(lot, "FIRM-400", (int) (product.milligrams() * 0.99 / 400_000)));
            add(facts, day, new Fact.Delivered("S-" + day + batch, 1, "C002", lot, "FIRM-400", 100));
        }
    }

    private static LotCode lot(LocalDate day, int batch) {
        return new LotCode(DateTimeFormatter.ofPattern("yyMMdd", Locale.ROOT).format(day) + "-FI0" + batch);
    }

    private static void add(List<Recorded> facts, LocalDate day, Fact fact) {
        facts.add(new Recorded(fact, noon(day), noon(day), "generated " + facts.size()));
    }

    @Test
    void the_price_shock_is_named_with_its_size_and_week() {
        BeanCourse beans = BeanCourse.of(book.weeks());
        assertThat(beans.movedIn()).contains(FIRST.plusWeeks(SHOCK));
        assertThat(beans.shift().orElseThrow().size()).isCloseTo(0.40, within(0.40 * 0.05));
        assertThat(mail.body().text().replaceAll("\\s+", " "))
                .contains("Beans cost 40.0 % more than before: 1.330 USD a kg, after 0.950, from the week of 31 Aug"
                        + " over 8 weeks.");
    }

    @Test
    void the_yield_drift_is_named_with_its_size_and_week() {
        YieldCourse firm = book.yields().get(0);
        assertThat(firm.recipe().code()).isEqualTo("firm");
        assertThat(firm.movedIn()).contains(FIRST.plusWeeks(DRIFT));
        assertThat(firm.shift().orElseThrow().size()).isCloseTo(-0.04, within(0.04 * 0.05));
        assertThat(firm.alarm()).as("the chart sees it too").isPresent();
        assertThat(firm.isDrifting()).isTrue();
        assertThat(mail.body().text().replaceAll("\\s+", " "))
                .containsPattern("Firm tofu yields (3\\.[89]|4\\.[012]) % less, from the week of 5 Oct: 2\\.4[56][0-9]"
                        + " kg from a kg, after 2\\.5[56][0-9]; that is [0-9]+\\.[0-9]{2} USD of beans a week");
    }

    @Test
    void the_report_says_what_to_do_about_both() {
        String text = mail.body().text().replaceAll("\\s+", " ");
        assertThat(text)
                .contains("Firm tofu: weigh beans and blocks of the next three batches")
                .contains("`cost prices --day 2026-08-31 --beans 1.330`");
    }

    @Test
    void against_the_standard_the_parts_are_beans_and_yield_and_add_up() {
        var moves = dawnkettle.cost.Moves.between(book.standard().orElseThrow(), book.now());
        assertThat(moves.whole())
                .isEqualTo(book.now()
                        .all()
                        .total()
                        .minus(book.standard().orElseThrow().all().total()));
        double beans = book.now().all().part(CostPart.BEANS).minor();
        assertThat(moves.parts().get(dawnkettle.cost.Moves.Cause.BEAN_PRICE).minor() / beans)
                .isCloseTo(0.40 / 1.40, within(0.01));
    }

    @Test
    void the_attachments_are_the_tables_and_the_page() {
        assertThat(mail.attachments())
                .extracting(Mail.Attachment::name)
                .containsExactly("costs-2026-W48.csv", "deliveries-2026-W48.csv", "costs-2026-W48.pdf");
        assertThat(mail.attachments().get(2).content().toArray())
                .startsWith("%PDF".getBytes(java.nio.charset.StandardCharsets.US_ASCII));
    }

    /** Yields that vary as the demonstration's do are found too, though a size of 4 % of 3 % chance is less certain. */
    @Test
    void of_twenty_seeded_drifts_nineteen_are_found_in_their_week_or_the_next_and_none_is_far_off() {
        int found = 0;
        for (int seed = 0; seed < 20; seed++) {
            YieldCourse course =
                    YieldCourse.of(SHOP.recipes(), drifting(new Random(seed))).get(0);
            assertThat(course.shift()).isPresent();
            assertThat(course.shift().get().size()).isBetween(-0.05, -0.03);
            int week = course.shift().get().first();
            if (Math.abs(week - DRIFT) <= 1) found++;
        }
        assertThat(found).isGreaterThanOrEqualTo(19);
    }

    private static List<Yielded> drifting(Random chance) {
        List<Yielded> records = new ArrayList<>();
        for (int day = 0; day < WEEKS * 7; day++)
            for (int batch = 1; batch <= 6; batch++) {
                double mean = 2.56 * (day < DRIFT * 7 ? 1 : 0.96) + 0.08 * chance.nextGaussian();
                if (day % 7 < 6)
                    records.add(new Yielded(
                            lot(FIRST.plusDays(day), batch),
                            "firm",
                            Mass.kilograms(30),
                            Mass.grams(Math.round(30_000 * mean))));
            }
        return records;
    }
}

package dawnkettle.mail;

import static java.nio.charset.StandardCharsets.UTF_8;

import dawnkettle.cost.WeekCosts;
import dawnkettle.mail.Letter.Section;
import dawnkettle.mail.Letter.Shown;
import dawnkettle.mail.Mail.Attachment;
import dawnkettle.mail.Mail.Picture;
import dawnkettle.shop.Shop;
import java.time.LocalDate;
import java.time.temporal.IsoFields;
import java.util.List;
import java.util.Locale;

/** The weekly mail that says what a kilogram cost, what moved it, and what each product leaves. */
public final class CostReport {
    private CostReport() {}

    /**
     * The report of the last of {@code weeks}, not addressed yet.
     *
     * @param weeks the oldest first, at least one; as many as the chart is to show
     */
    public static Mail of(List<WeekCosts> weeks, Shop shop, Charts charts) {
        WeekCosts week = weeks.get(weeks.size() - 1);
        String id = Mail.idOf(week.monday(), "costs", 1);
        CostSections sections = new CostSections(weeks, shop);
        Picture picture = charts.draw(CostChart.of(weeks, shop));
        Letter letter = new Letter(
                shop.house().name() + ", week " + week(week),
                sections.losing().isEmpty(),
                sections.lead(),
                List.of(
                        sections.moved(),
                        new Section(
                                "Half a year", new Shown(picture.cid(id), picture.alternative()), sections.history()),
                        sections.parts(),
                        sections.products(),
                        sections.basis()),
                List.of(
                        "Costs as computed from the plans and the prices written down; not the books, and no advice on tax.",
                        "Prices stay as they are until you change them."));
        return new Mail(
                id,
                List.of(),
                "Week " + week(week) + ": " + sections.verdict(),
                new Mail.Body(LetterText.of(letter), LetterHtml.of(letter), List.of(picture)),
                List.of(csv(weeks, shop, week)));
    }

    private static Attachment csv(List<WeekCosts> weeks, Shop shop, WeekCosts last) {
        String name = "costs-" + isoWeek(last.monday()) + ".csv";
        Bytes content = Bytes.of(CostTable.of(weeks, shop).getBytes(UTF_8));
        return new Attachment(name, "text/csv; charset=utf-8; header=present", content);
    }

    /** A day's week by ISO 8601, as 2026-W53: the year is that of the week's Thursday. */
    static String isoWeek(LocalDate day) {
        return String.format(
                Locale.ROOT,
                "%d-W%02d",
                day.get(IsoFields.WEEK_BASED_YEAR),
                day.get(IsoFields.WEEK_OF_WEEK_BASED_YEAR));
    }

    /** The week's number by ISO 8601. */
    private static int week(WeekCosts week) {
        return week.monday().get(IsoFields.WEEK_OF_WEEK_BASED_YEAR);
    }
}

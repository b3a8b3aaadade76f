package dawnkettle.mail;

import static java.nio.charset.StandardCharsets.UTF_8;

import dawnkettle.cost.CostCharts;
import dawnkettle.cost.WeekBook;
import dawnkettle.cost.WeekCosts;
import dawnkettle.mail.Letter.Block;
import dawnkettle.mail.Letter.Section;
import dawnkettle.mail.Letter.Shown;
import dawnkettle.mail.Mail.Attachment;
import dawnkettle.mail.Mail.Picture;
import java.time.LocalDate;
import java.time.temporal.IsoFields;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The weekly mail that says what a kilogram cost, what moved it, who carries the shop, and what to do. */
public final class CostReport {
    /** Charts of so many yields; those that moved first. */
    private static final int YIELDS_SHOWN = 2;

    private CostReport() {}

    /** The report of the last week of the book, not addressed yet. */
    public static Mail of(WeekBook book, Charts charts) {
        WeekCosts week = book.now();
        String id = Mail.idOf(week.monday(), "costs", 1);
        CostSections sections = new CostSections(book.weeks(), book.shop());
        CostTrade trade = new CostTrade(book);
        Picture history = charts.draw(CostCharts.beansAndCost(book.weeks(), book.shop()));
        Optional<Picture> margins = CostCharts.margins(book).map(charts::draw);
        List<Picture> yields = shownYields(book).stream().map(charts::draw).toList();
        List<Picture> pictures = new ArrayList<>(List.of(history));
        pictures.addAll(yields);
        margins.ifPresent(pictures::add);
        Letter letter = new Letter(
                book.shop().house().name() + ", week " + week(week),
                sections.losing().isEmpty(),
                lead(sections, trade),
                List.of(
                        trade.todo(),
                        sections.moved(),
                        trade.standard(),
                        new Section("Half a year", shown(history, id), sections.history()),
                        trade.yields(yields.stream()
                                .map(picture -> shown(picture, id))
                                .toList()),
                        trade.carry(margins.map(picture -> shown(picture, id)).orElse(Letter.Lines.of())),
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
                new Mail.Body(LetterText.of(letter), LetterHtml.of(letter), pictures),
                tables(book));
    }

    private static Block shown(Picture picture, String id) {
        return new Shown(picture.cid(id), picture.alternative());
    }

    private static List<String> lead(CostSections sections, CostTrade trade) {
        List<String> lead = new ArrayList<>(sections.lead());
        lead.addAll(trade.lead());
        return lead;
    }

    /** The page for the wall says the same as the mail, shorter: its lines by heading. */
    public static List<Wall> wall(WeekBook book) {
        CostSections sections = new CostSections(book.weeks(), book.shop());
        CostTrade trade = new CostTrade(book);
        List<String> moved = new ArrayList<>(sections.movedSentences());
        moved.addAll(new CostTrends(book).sentences());
        return List.of(
                new Wall("", lead(sections, trade)),
                new Wall("What to do", trade.advice()),
                new Wall("What moved it", moved));
    }

    /** Lines under a heading. */
    public record Wall(String heading, List<String> lines) {
        public Wall {
            lines = List.copyOf(lines);
        }
    }

    /** Charts of yields: of those that moved, else of the recipe that takes most. */
    public static List<dawnkettle.cost.Chart> shownYields(WeekBook book) {
        List<dawnkettle.cost.YieldCourse> moved = book.yields().stream()
                .filter(course -> course.shift().isPresent() || course.alarm().isPresent())
                .toList();
        List<dawnkettle.cost.YieldCourse> shown =
                moved.isEmpty() ? book.yields().stream().limit(1).toList() : moved;
        return shown.stream().limit(YIELDS_SHOWN).map(CostCharts::yield).toList();
    }

    private static List<Attachment> tables(WeekBook book) {
        String week = isoWeek(book.now().monday());
        List<Attachment> tables = new ArrayList<>();
        tables.add(csv("costs-" + week + ".csv", CostTable.of(book.weeks(), book.shop())));
        if (!book.trade().sales().isEmpty())
            tables.add(csv("deliveries-" + week + ".csv", TradeTables.deliveries(book)));
        if (!book.trade().containers().isEmpty())
            tables.add(csv("containers-" + week + ".csv", TradeTables.containers(book)));
        return tables;
    }

    private static Attachment csv(String name, String text) {
        return new Attachment(name, "text/csv; charset=utf-8; header=present", Bytes.of(text.getBytes(UTF_8)));
    }

    /** A day's week by ISO 8601, as 2026-W53: the year is that of the week's Thursday. */
    public static String isoWeek(LocalDate day) {
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

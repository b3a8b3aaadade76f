package dawnkettle.night;

import dawnkettle.cost.Bars;
import dawnkettle.cost.Chart;
import dawnkettle.cost.CostCharts;
import dawnkettle.cost.WeekBook;
import dawnkettle.mail.Bytes;
import dawnkettle.mail.CostReport;
import dawnkettle.mail.Mail;
import dawnkettle.sheet.CostPage;
import dawnkettle.sheet.Sheet;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The weekly cost report, of the last whole week: a mail, and the same on one page for the wall. */
public final class ReportWeek implements Work {
    private final Office office;
    private final Letters letters;

    public ReportWeek(Office office) {
        this.office = office;
        this.letters = new Letters(office);
    }

    @Override
    public String run(LocalDate day) {
        Optional<WeekBook> book = new GatherBook(office).before(day);
        if (book.isEmpty()) return "nothing was made in the weeks before; no cost report";
        Mail mail = mail(book.get())
                .addressedTo(office.papers().settings().letters().summaryTo());
        return letters.send(mail);
    }

    /** The report, not addressed. */
    public Mail mail(WeekBook book) {
        return CostReport.of(book, office.edges().mail().charts()).with(page(book));
    }

    private Mail.Attachment page(WeekBook book) {
        byte[] pdf = office.edges().mail().enclosures().draw(sheet(book));
        return new Mail.Attachment(
                "costs-" + CostReport.isoWeek(book.now().monday()) + ".pdf", "application/pdf", Bytes.of(pdf));
    }

    /** The page as marks. */
    public Sheet sheet(WeekBook book) {
        List<CostPage.Part> parts = CostReport.wall(book).stream()
                .map(part -> new CostPage.Part(part.heading(), part.lines()))
                .toList();
        List<Chart> charts = new ArrayList<>(List.of(CostCharts.beansAndCost(book.weeks(), office.shop())));
        CostReport.shownYields(book).stream().limit(1).forEach(charts::add);
        Optional<Bars> bars = CostCharts.margins(book);
        CostPage page =
                new CostPage(office.shop().house(), office.edges().paper().style());
        return page.of(book.now().monday(), parts, new CostPage.Pictures(charts, bars));
    }
}

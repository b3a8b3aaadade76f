package dawnkettle.night;

import dawnkettle.cost.MadeDay;
import dawnkettle.cost.WeekCosts;
import dawnkettle.mail.CostReport;
import dawnkettle.mail.Mail;
import java.time.LocalDate;
import java.util.List;

/** The weekly cost report, of the last whole week. */
public final class ReportWeek implements Work {
    private static final int WEEKS_SHOWN = 26;

    private final Office office;
    private final Letters letters;

    public ReportWeek(Office office) {
        this.office = office;
        this.letters = new Letters(office);
    }

    @Override
    public String run(LocalDate day) {
        LocalDate monday = day.with(java.time.temporal.TemporalAdjusters.previousOrSame(java.time.DayOfWeek.MONDAY));
        PastWeeks past =
                new PastWeeks(office.ledger(), office.shop(), office.edges().plans());
        List<MadeDay> days = past.madeDays(monday.minusWeeks(WEEKS_SHOWN), monday);
        if (days.isEmpty()) return "nothing was made in the weeks before; no cost report";
        List<WeekCosts> weeks = WeekCosts.byWeek(days, office.shop());
        Mail mail = CostReport.of(weeks, office.shop(), office.edges().mail().charts())
                .addressedTo(office.papers().settings().letters().summaryTo());
        return letters.send(mail);
    }
}

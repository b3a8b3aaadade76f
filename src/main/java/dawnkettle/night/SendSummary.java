package dawnkettle.night;

import dawnkettle.mail.Mail;
import dawnkettle.mail.MorningSummary;
import dawnkettle.plan.DayPlan;
import java.time.LocalDate;

/** The mail that the owner reads first. */
final class SendSummary implements Work {
    private final Office office;
    private final Letters letters;

    SendSummary(Office office, Letters letters) {
        this.office = office;
        this.letters = letters;
    }

    @Override
    public String run(LocalDate productionDate) {
        DayPlan plan = office.plan(productionDate)
                .orElseThrow(() -> new IllegalStateException("there is no plan of " + productionDate));
        Mail mail = MorningSummary.of(plan, office.shop(), new GatherReport(office).of(productionDate))
                .addressedTo(office.papers().settings().summaryTo());
        letters.send(mail);
        return mail.subject();
    }
}

package dawnkettle.mail;

import dawnkettle.mail.Letter.Bullets;
import dawnkettle.mail.Letter.Section;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.Heading;
import dawnkettle.shop.Shop;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/** The mail that the owner reads before anything else: whether all is well, and the whole day after it. */
public final class MorningSummary {
    private MorningSummary() {}

    /** The summary of {@code plan}, not addressed yet. */
    public static Mail of(DayPlan plan, Shop shop, NightReport report) {
        LocalDate day = plan.heading().productionDate();
        Verdict verdict = Verdict.of(plan, report);
        Figures figures = new Figures(shop.house(), day);
        Letter letter = new Letter(
                shop.house().name() + ", " + Figures.day(day),
                verdict.isWell(),
                new Lead(plan, shop, report, figures).lines(verdict),
                sections(plan, shop, report, figures),
                foot(plan, shop, figures));
        String id = Mail.idOf(day, "summary", plan.heading().revision());
        Mail.Body body = new Mail.Body(LetterText.of(letter), LetterHtml.of(letter), List.of());
        return new Mail(id, List.of(), subject(plan, verdict, figures), body, List.of());
    }

    private static String subject(DayPlan plan, Verdict verdict, Figures figures) {
        String day = Figures.day(plan.heading().productionDate());
        String van = Lead.first(plan)
                .map(route -> ", first van " + figures.time(route.departs()))
                .orElse(", no van");
        return day + ": " + verdict.words() + (verdict.isWell() ? van : "");
    }

    private static List<Section> sections(DayPlan plan, Shop shop, NightReport report, Figures figures) {
        NightSections night = new NightSections(plan, shop, report, figures);
        TradeSections trade = new TradeSections(plan, shop, figures);
        DaySections day = new DaySections(plan, shop, figures);
        return List.of(
                night.questions(),
                new Section("Take care", new Bullets(plan.warnings())),
                trade.shortages(),
                trade.routes(),
                day.made(),
                day.soak(report.notes().soak()),
                night.orders(),
                night.paper(),
                trade.nearEnd(),
                night.runningLow(),
                night.yields(),
                day.okara());
    }

    private static List<String> foot(DayPlan plan, Shop shop, Figures figures) {
        Heading heading = plan.heading();
        List<String> foot = new ArrayList<>(Cautions.of(plan, shop));
        String replaces = heading.revisionOf().isPresent()
                ? "; it replaces revision " + heading.revisionOf().getAsInt()
                : "";
        foot.add("Revision " + heading.revision() + " of the plan for " + Figures.day(heading.productionDate())
                + ", computed " + figures.time(heading.computedAt()) + " (" + Verdict.mode(heading.mode()) + ")"
                + replaces
                + ".");
        return foot;
    }
}

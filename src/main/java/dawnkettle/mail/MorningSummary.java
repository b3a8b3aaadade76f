package dawnkettle.mail;

import dawnkettle.mail.Letter.Bullets;
import dawnkettle.mail.Letter.Section;
import dawnkettle.mail.Mail.Picture;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.Heading;
import dawnkettle.shop.Shop;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** The mail that the owner reads before anything else: whether all is well, and the whole day after it. */
public final class MorningSummary {
    private MorningSummary() {}

    /** The summary of {@code plan} with its day as a picture, not addressed yet. */
    public static Mail of(DayPlan plan, Shop shop, NightReport report, Charts charts) {
        LocalDate day = plan.heading().productionDate();
        if (plan.operations().isEmpty()) return of(plan, shop, report);
        Figures figures = new Figures(shop.house(), day);
        return of(plan, shop, report, List.of(charts.draw(RunStrip.of(plan, shop, figures))));
    }

    /** The summary in words alone. */
    static Mail of(DayPlan plan, Shop shop, NightReport report) {
        return of(plan, shop, report, List.of());
    }

    /** The day's vans and the okara pick-up for a calendar. */
    public static Mail.Attachment calendar(DayPlan plan, Shop shop) {
        return Invitation.of(plan, shop);
    }

    private static Mail of(DayPlan plan, Shop shop, NightReport report, List<Picture> pictures) {
        LocalDate day = plan.heading().productionDate();
        Verdict verdict = Verdict.of(plan, report);
        Figures figures = new Figures(shop.house(), day);
        String id = Mail.idOf(day, "summary", plan.heading().revision());
        Letter letter = new Letter(
                shop.house().name() + ", " + Figures.day(day),
                verdict.isWell(),
                new Lead(plan, shop, report, figures).lines(verdict),
                Stream.concat(shown(pictures, id), sections(plan, shop, report, figures).stream())
                        .toList(),
                foot(plan, shop, figures));
        Mail.Body body = new Mail.Body(LetterText.of(letter), LetterHtml.of(letter), pictures);
        return new Mail(id, List.of(), subject(plan, verdict, figures), body, List.of());
    }

    private static Stream<Section> shown(List<Picture> pictures, String id) {
        return pictures.stream()
                .map(picture -> new Section("The day", new Letter.Shown(picture.cid(id), picture.alternative())));
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
                day.okara(),
                night.setAside());
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

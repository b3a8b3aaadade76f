package dawnkettle.mail;

import dawnkettle.mail.Letter.Bullets;
import dawnkettle.mail.Letter.Column;
import dawnkettle.mail.Letter.Grid;
import dawnkettle.mail.Letter.Lines;
import dawnkettle.mail.Letter.Section;
import dawnkettle.mail.NightReport.Yielded;
import dawnkettle.measure.Mass;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.PlannedLabel;
import dawnkettle.shop.Recipe;
import dawnkettle.shop.Shop;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What the morning summary says of the night's own work: orders, paper, labels, yesterday's yields, questions. */
final class NightSections {
    private final DayPlan plan;
    private final Shop shop;
    private final NightReport report;
    private final Figures figures;

    NightSections(DayPlan plan, Shop shop, NightReport report, Figures figures) {
        this.plan = plan;
        this.shop = shop;
        this.report = report;
        this.figures = figures;
    }

    Section questions() {
        return new Section("Needs your answer", new Bullets(report.notes().questions()));
    }

    Section orders() {
        NightReport.Orders orders = report.orders();
        return new Section(
                "Orders",
                Lines.of(Figures.count(orders.orders(), "order", "orders") + " with "
                        + Figures.count(orders.lines(), "line", "lines") + " taken, "
                        + Figures.count(orders.refused().size(), "order", "orders") + " refused, "
                        + Figures.count(orders.lateAmendments().size(), "change", "changes") + " after the close."),
                new Bullets(marked("Refused: ", orders.refused())),
                new Bullets(marked("Late: ", orders.lateAmendments())));
    }

    Section setAside() {
        return new Section(
                "Mail set aside, nothing of it planned",
                new Bullets(report.orders().aside()));
    }

    Section paper() {
        int labels = plan.labels().stream().mapToInt(PlannedLabel::count).sum();
        List<String> lines = new ArrayList<>();
        lines.add(
                report.sheets().printed().isEmpty()
                        ? "No sheet has been printed yet."
                        : Figures.count(report.sheets().printed().size(), "sheet", "sheets") + " printed: "
                                + String.join(", ", kinds(report.sheets().printed())) + ".");
        lines.add(report.labels().printed() + " of " + Figures.count(labels, "case label", "case labels")
                + " known to be printed." + rest(labels - report.labels().printed()));
        return new Section(
                "Sheets and labels",
                new Lines(lines),
                new Bullets(marked("Not printed: ", report.sheets().failed())),
                new Bullets(marked("Labels not printed: ", report.labels().failed())),
                new Bullets(marked(
                        "Count these labels before use: ", report.labels().uncertain())));
    }

    /** As "route (5)": what stands before the first dash is a sheet's kind. */
    private static List<String> kinds(List<String> sheets) {
        Map<String, Integer> kinds = new LinkedHashMap<>();
        for (String sheet : sheets) kinds.merge(sheet.split("-")[0], 1, Integer::sum);
        return kinds.entrySet().stream()
                .map(kind -> kind.getKey() + (kind.getValue() > 1 ? " (" + kind.getValue() + ")" : ""))
                .toList();
    }

    private String rest(int due) {
        boolean clear = report.labels().failed().isEmpty()
                && report.labels().uncertain().isEmpty();
        return due > 0 && clear ? " The rest follow lot by lot, before each is packed." : "";
    }

    Section yields() {
        List<List<String>> rows = report.yields().stream().map(this::yieldRow).toList();
        return new Section(
                "Yields written down",
                new Grid(
                        "Product for each kilogram put in",
                        List.of(
                                Column.words("Recipe"),
                                Column.figures("Product " + figures.massUnit()),
                                Column.figures("kg/kg"),
                                Column.figures("Expected")),
                        rows));
    }

    private List<String> yieldRow(Yielded yielded) {
        Recipe recipe = shop.recipe(yielded.recipe());
        return List.of(
                recipe.name() + ", " + Figures.date(yielded.day()),
                figures.massFigure(yielded.product()),
                ratio(yielded.product(), yielded.ground()),
                recipe.yield()
                        .mean()
                        .asDecimal()
                        .setScale(2, RoundingMode.HALF_UP)
                        .toPlainString());
    }

    private static String ratio(Mass product, Mass ground) {
        if (ground.isZero()) return "-";
        return BigDecimal.valueOf(product.milligrams())
                .divide(BigDecimal.valueOf(ground.milligrams()), 2, RoundingMode.HALF_UP)
                .toPlainString();
    }

    Section runningLow() {
        return new Section("Running low", new Bullets(report.notes().runningLow()));
    }

    private static List<String> marked(String mark, List<String> all) {
        return all.stream().map(one -> mark + one).toList();
    }
}

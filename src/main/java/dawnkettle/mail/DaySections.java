package dawnkettle.mail;

import dawnkettle.cost.Okara;
import dawnkettle.mail.Letter.Bullets;
import dawnkettle.mail.Letter.Column;
import dawnkettle.mail.Letter.Grid;
import dawnkettle.mail.Letter.Lines;
import dawnkettle.mail.Letter.Section;
import dawnkettle.measure.Mass;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.PlannedBatch;
import dawnkettle.plan.PlannedBatch.Filled;
import dawnkettle.plan.PlannedOperation;
import dawnkettle.plan.PlannedSoak;
import dawnkettle.shop.Product;
import dawnkettle.shop.Recipe;
import dawnkettle.shop.Shop;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** What the morning summary says of the day's making: kettles, products, times, soak, okara. */
final class DaySections {
    private final DayPlan plan;
    private final Shop shop;
    private final Figures figures;

    DaySections(DayPlan plan, Shop shop, Figures figures) {
        this.plan = plan;
        this.shop = shop;
        this.figures = figures;
    }

    Section made() {
        return new Section("What is made", times(), kettles(), products());
    }

    private Lines times() {
        String grind = firstStart("grind")
                .map(at -> "First grind " + figures.time(at) + ". ")
                .orElse("");
        String end =
                lastEnd().map(at -> "Last step ends " + figures.time(at) + ".").orElse("");
        String bound = plan.quality()
                .map(quality ->
                        "At most " + quality.gapPercent().toPlainString() + " % longer than the shortest possible run.")
                .orElse("");
        return Lines.of(grind + end, bound);
    }

    private Grid kettles() {
        List<List<String>> rows = shop.recipes().stream()
                .filter(recipe -> batchesOf(recipe).findAny().isPresent())
                .map(this::kettleRow)
                .toList();
        return new Grid(
                "Kettles",
                List.of(
                        Column.words("Recipe"),
                        Column.figures("Kettles"),
                        Column.figures("Beans " + figures.massUnit()),
                        Column.figures("Makes " + figures.massUnit())),
                rows);
    }

    private List<String> kettleRow(Recipe recipe) {
        Mass beans = Mass.sum(batchesOf(recipe).map(PlannedBatch::beans).toList());
        Mass makes = Mass.sum(batchesOf(recipe).map(PlannedBatch::expected).toList());
        return List.of(
                recipe.name(),
                String.valueOf(batchesOf(recipe).count()),
                beans.isZero() ? "-" : figures.massFigure(beans),
                figures.massFigure(makes));
    }

    private Grid products() {
        List<List<String>> rows = shop.products().stream()
                .filter(product -> filled(product).findAny().isPresent())
                .map(this::productRow)
                .toList();
        return new Grid(
                "Packs",
                List.of(
                        Column.words("Product"),
                        Column.figures("Packs"),
                        Column.figures("Whole cases"),
                        Column.figures(figures.massUnit())),
                rows);
    }

    private List<String> productRow(Product product) {
        long packs = filled(product).mapToLong(Filled::packs).sum();
        long cases = filled(product).mapToLong(Filled::cases).sum();
        return List.of(
                product.name(),
                String.valueOf(packs),
                String.valueOf(cases),
                figures.massFigure(product.net().times(packs)));
    }

    Section soak(List<String> notes) {
        List<List<String>> rows = plan.soaks().stream()
                .sorted(Comparator.comparing(PlannedSoak::fillAt).thenComparing(PlannedSoak::tub))
                .map(soak -> List.of(
                        soak.tub(),
                        figures.massFigure(soak.beans()),
                        figures.time(soak.fillAt()),
                        figures.time(soak.readyAt()),
                        figures.time(soak.latestGrindAt())))
                .toList();
        Grid tubs = new Grid(
                "Tubs",
                List.of(
                        Column.words("Tub"),
                        Column.figures("Beans " + figures.massUnit()),
                        Column.figures("Filled"),
                        Column.figures("Ready"),
                        Column.figures("Grind by")),
                rows);
        return new Section("Soak", tubs, new Lines(temperatures()), new Bullets(notes));
    }

    private List<String> temperatures() {
        return plan.soaks().stream()
                .map(soak -> "Counted with: room " + figures.temperature(soak.room()) + ", water at filling "
                        + figures.temperature(soak.waterTemperature()) + " (" + soak.source() + ").")
                .distinct()
                .toList();
    }

    Section okara() {
        Mass beans = Mass.sum(plan.batches().stream().map(PlannedBatch::beans).toList());
        if (beans.isZero()) return new Section("Okara");
        String ready = firstEnd("filter")
                .flatMap(first -> lastEnd("filter")
                        .map(last -> "The first is ready at " + figures.time(first) + ", the last at "
                                + figures.time(last) + "."))
                .orElse("");
        return new Section(
                "Okara",
                Lines.of(
                        "About " + figures.mass(Okara.expected(beans)) + " expected from " + figures.mass(beans)
                                + " of beans: " + Okara.BASIS + ".",
                        ready,
                        Okara.CAUTION));
    }

    private Stream<PlannedBatch> batchesOf(Recipe recipe) {
        return plan.batches().stream().filter(batch -> batch.recipe().equals(recipe.code()));
    }

    private Stream<Filled> filled(Product product) {
        return plan.batches().stream()
                .flatMap(batch -> batch.packs().stream())
                .filter(filled -> filled.product().equals(product.code()) && filled.packs() > 0);
    }

    private Stream<PlannedOperation> at(String stage) {
        return plan.operations().stream().filter(operation -> operation.stage().contains(stage));
    }

    private Optional<Instant> firstStart(String stage) {
        return at(stage).map(PlannedOperation::start).min(Comparator.naturalOrder());
    }

    private Optional<Instant> firstEnd(String stage) {
        return at(stage).map(PlannedOperation::end).min(Comparator.naturalOrder());
    }

    private Optional<Instant> lastEnd(String stage) {
        return at(stage).map(PlannedOperation::end).max(Comparator.naturalOrder());
    }

    private Optional<Instant> lastEnd() {
        return plan.operations().stream().map(PlannedOperation::end).max(Comparator.naturalOrder());
    }
}

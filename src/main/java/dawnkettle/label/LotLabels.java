package dawnkettle.label;

import dawnkettle.plan.PlannedLabel;
import dawnkettle.shop.Product;
import dawnkettle.stock.LotCode;
import dawnkettle.trouble.BadFile;
import dawnkettle.trouble.Place;
import dawnkettle.trouble.Problem;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** Makes the run of labels of one product of one lot: a divider slip, the whole cases, the part cases. */
public final class LotLabels {
    private final Designs designs;
    private final CaseLabels labels;
    private final LabelDrawing drawing;

    public LotLabels(Designs designs, CaseLabels labels, LabelDrawing drawing) {
        this.designs = designs;
        this.labels = labels;
        this.drawing = drawing;
    }

    /** @throws BadFile where a date may not be printed or something does not fit */
    public LabelRun run(PlannedLabel planned, Product product) {
        List<LabelCopies> run = new ArrayList<>();
        designs.slip(design(product))
                .ifPresent(slip ->
                        run.add(copies(LabelCopies.Kind.SLIP, slip, LabelSlips.divider(planned, product.name()), 1)));
        run.addAll(cases(planned, product, CaseLabel::text));
        return LabelRun.whole(planned.lot().text(), product.code(), run);
    }

    /** The labels {@code from} to {@code to} once more, each marked as a copy. */
    public LabelRun copies(PlannedLabel planned, Product product, int from, int to) {
        return LabelRun.whole(planned.lot().text(), product.code(), cases(planned, product, CaseLabel::copy))
                .only(from, to)
                .asCopies();
    }

    private List<LabelCopies> cases(PlannedLabel planned, Product product, Function<CaseLabel, LabelText> words) {
        Design design = design(product);
        List<LabelCopies> cases = new ArrayList<>();
        if (planned.cases() > 0)
            cases.add(copies(
                    LabelCopies.Kind.CASE, design, words.apply(labels.wholeCase(planned, product)), planned.cases()));
        alike(planned.partCases())
                .forEach((packs, count) -> cases.add(copies(
                        LabelCopies.Kind.PART_CASE,
                        designs.partCase(design),
                        words.apply(labels.partCase(planned, product, packs)),
                        count)));
        return cases;
    }

    /** Part cases of the same packs have the same label, so that it crosses the line once; the first met comes first. */
    private static Map<Integer, Integer> alike(List<Integer> partCases) {
        Map<Integer, Integer> alike = new LinkedHashMap<>();
        for (int packs : partCases) alike.merge(packs, 1, Integer::sum);
        return alike;
    }

    /** One slip on the product's stock; empty where there is no slip design for it. */
    public Optional<LabelRun> slip(LotCode lot, Product product, LabelText text) {
        return designs.slip(design(product))
                .map(slip -> LabelRun.whole(
                        lot.text(), product.code(), List.of(copies(LabelCopies.Kind.SLIP, slip, text, 1))));
    }

    /** What keeps a product's labels from being printed, tried with a wide lot code and date. */
    public List<Problem> check(Product product) {
        Optional<Design> design = designs.find(product.wording().design());
        if (design.isEmpty())
            return List.of(new Problem(
                    Place.of("products.csv"),
                    "design \"" + product.wording().design() + "\" of \"" + product.code() + "\" is not there",
                    "write one of "
                            + String.join(
                                    ", ",
                                    designs.designs().stream().map(Design::name).toList())));
        PlannedLabel planned = sample(product);
        List<Problem> problems = new ArrayList<>(labels.objections(planned, product));
        if (!problems.isEmpty()) return problems;
        problems.addAll(
                drawing.check(design.get(), labels.wholeCase(planned, product).copy()));
        if (product.packsInCase() > 1)
            problems.addAll(drawing.check(
                    designs.partCase(design.get()),
                    labels.partCase(planned, product, product.packsInCase() - 1).copy()));
        return problems;
    }

    private static PlannedLabel sample(Product product) {
        LocalDate packed = LocalDate.of(2026, 11, 28);
        LocalDate best = CaseLabels.latest(packed, product.keeping());
        LotCode lot = LotCode.of(packed, "WM", 100);
        String head = product.wording().gtin().map(gtin -> "(01)" + gtin).orElse("");
        return new PlannedLabel(
                lot,
                product.code(),
                1,
                List.of(),
                product.packsInCase(),
                packed,
                best,
                product.wording().gtin(),
                head + "(15)" + Gs1Date.write(best) + "(10)" + lot);
    }

    private Design design(Product product) {
        return designs.design(product.wording().design());
    }

    private LabelCopies copies(LabelCopies.Kind kind, Design design, LabelText text, int count) {
        return new LabelCopies(kind, drawing.draw(design, text), design.stock().turned(), count);
    }
}

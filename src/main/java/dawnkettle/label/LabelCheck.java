package dawnkettle.label;

import dawnkettle.plan.PlannedLabel;
import dawnkettle.shop.Product;
import dawnkettle.shop.Shop;
import dawnkettle.stock.LotCode;
import dawnkettle.trouble.Place;
import dawnkettle.trouble.Problem;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Tries every product's labels on their designs, so that what does not fit is known before the night. */
public final class LabelCheck {
    /** A day with a long name of its month and two figures. */
    private static final LocalDate LONG_DAY = LocalDate.of(2026, 9, 24);

    private final Shop shop;
    private final Designs designs;
    private final LabelDrawing drawing;

    public LabelCheck(Shop shop, Designs designs, LabelDrawing drawing) {
        this.shop = shop;
        this.designs = designs;
        this.drawing = drawing;
    }

    /** @param usual design of products that name none */
    public List<Problem> problems(String usual) {
        List<Problem> problems = new ArrayList<>();
        for (Product product : shop.products()) {
            String name = product.wording().design().isEmpty()
                    ? usual
                    : product.wording().design();
            Optional<Design> design = designs.find(name);
            if (design.isPresent()) problems.addAll(problems(product, design.get()));
            else
                problems.add(new Problem(
                        Place.of("products.csv"),
                        "product " + product.code() + " names the label design \"" + name + "\", which is not there",
                        "write one of " + String.join(", ", names())));
        }
        return problems.stream().distinct().toList();
    }

    private List<String> names() {
        return designs.designs().stream()
                .filter(design -> design.role() == Design.Role.CASE)
                .map(Design::name)
                .toList();
    }

    private List<Problem> problems(Product product, Design design) {
        PlannedLabel planned = sample(product);
        CaseLabels labels = new CaseLabels(shop.house());
        List<Problem> objections = labels.objections(planned, product);
        if (!objections.isEmpty()) return objections;
        List<Problem> problems = new ArrayList<>(
                drawing.check(design, labels.wholeCase(planned, product).text()));
        if (product.packsInCase() > 1)
            problems.addAll(drawing.check(
                    designs.partCase(design),
                    labels.partCase(planned, product, product.packsInCase() - 1).text()));
        return problems.stream()
                .map(one -> new Problem(one.place(), "product " + product.code() + ": " + one.what(), one.remedy()))
                .toList();
    }

    private PlannedLabel sample(Product product) {
        LotCode lot = LotCode.of(LONG_DAY, shop.recipeOf(product).mark(), 88);
        LocalDate bestBefore = product.keeping().bestBefore(LONG_DAY);
        return new PlannedLabel(
                lot,
                product.code(),
                1,
                List.of(),
                product.packsInCase(),
                LONG_DAY,
                bestBefore,
                product.wording().gtin(),
                PlannedLabel.elementString(product, bestBefore, lot));
    }
}

package dawnkettle.plan;

import dawnkettle.plan.Heading.Frozen;
import dawnkettle.shop.Product;
import dawnkettle.stock.LotCode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * How the packs of a lot are put into cases: whole ones and a part case for each line, and for what lies in stock. A lot
 * whose labels are printed keeps the cases it has.
 */
final class Cases {
    private final List<OpenLine> lines;
    private final Evening.Committed committed;

    Cases(List<OpenLine> lines, Evening.Committed committed) {
        this.lines = lines;
        this.committed = committed;
    }

    /** Whole cases and the packs in each part case. */
    record Put(int cases, List<Integer> partCases) {
        int loose() {
            return partCases.stream().mapToInt(Integer::intValue).sum();
        }
    }

    private Put put(Brew brew, Product product, int packs, LotCode lot) {
        Optional<PlannedLabel> printed = labelled(lot, product);
        if (printed.isPresent())
            return new Put(printed.get().cases(), printed.get().partCases());
        int cases = 0;
        int free = packs;
        List<Integer> parts = new ArrayList<>();
        for (OpenLine line : lines) {
            if (line.line.isEmpty() || !line.product.code().equals(product.code())) continue;
            for (OpenLine.Gift gift : line.gifts) {
                if (gift.brew().filter(brew::equals).isEmpty()) continue;
                cases += gift.packs() / product.packsInCase();
                if (gift.packs() % product.packsInCase() > 0) parts.add(gift.packs() % product.packsInCase());
                free -= gift.packs();
            }
        }
        if (free % product.packsInCase() > 0) parts.add(free % product.packsInCase());
        return new Put(cases + free / product.packsInCase(), parts);
    }

    private Optional<PlannedLabel> labelled(LotCode lot, Product product) {
        if (!committed.has(Frozen.Kind.LOT_LABELLED, lot.text())) return Optional.empty();
        return committed
                .before()
                .flatMap(plan -> plan.labels().stream()
                        .filter(label ->
                                label.lot().equals(lot) && label.product().equals(product.code()))
                        .findFirst());
    }

    PlannedBatch.Filled filled(Brew brew, Product product, int packs, LotCode lot) {
        Put put = put(brew, product, packs, lot);
        return new PlannedBatch.Filled(product.code(), packs, put.cases(), put.loose());
    }

    PlannedLabel label(Brew brew, Product product, LotCode lot, LocalDate packDate) {
        Put put = put(brew, product, brew.packs.get(product), lot);
        LocalDate bestBefore = product.keeping().bestBefore(packDate);
        return new PlannedLabel(
                lot,
                product.code(),
                put.cases(),
                put.partCases(),
                product.packsInCase(),
                packDate,
                bestBefore,
                product.wording().gtin(),
                PlannedLabel.elementString(product, bestBefore, lot));
    }
}

package dawnkettle.plan;

import dawnkettle.stock.LotCode;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * The case labels of one product of one lot: one for each whole case and one for each part case.
 *
 * @param partCases packs in each part case
 * @param elementString the GS1 element string in brackets, as "(01)…(15)…(10)…"; without (01) where there is no GTIN
 */
public record PlannedLabel(
        LotCode lot,
        String product,
        int cases,
        List<Integer> partCases,
        int packsInCase,
        LocalDate packDate,
        LocalDate bestBefore,
        Optional<String> gtin,
        String elementString) {
    public PlannedLabel {
        partCases = List.copyOf(partCases);
    }

    /** Labels to print. */
    public int count() {
        return cases + partCases.size();
    }

    public int packs() {
        return cases * packsInCase
                + partCases.stream().mapToInt(Integer::intValue).sum();
    }
}

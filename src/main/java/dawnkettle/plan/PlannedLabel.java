package dawnkettle.plan;

import dawnkettle.shop.Product;
import dawnkettle.stock.LotCode;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
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

    /** The element string of a lot's cases: no number of its own, no (01). */
    public static String elementString(Product product, LocalDate bestBefore, LotCode lot) {
        String date = DateTimeFormatter.ofPattern("uuMMdd", Locale.ROOT).format(bestBefore);
        return product.wording().gtin().map(gtin -> "(01)" + gtin).orElse("") + "(15)" + date + "(10)" + lot;
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

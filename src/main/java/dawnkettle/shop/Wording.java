package dawnkettle.shop;

import java.util.List;
import java.util.Optional;

/**
 * What a label says of a product.
 *
 * @param ingredients the ingredient list as it is printed, without its heading
 * @param contains allergens; never empty in a shop that works soybeans
 * @param storage the storage line as it is printed
 * @param design name of the label design, as "case-100x70"
 * @param gtin the case's GTIN-14; empty for a shop without a number of its own
 */
public record Wording(
        String ingredients, List<Allergen> contains, String storage, String design, Optional<String> gtin) {
    public Wording {
        contains = List.copyOf(contains);
    }
}

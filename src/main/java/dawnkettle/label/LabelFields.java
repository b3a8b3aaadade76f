package dawnkettle.label;

import java.util.List;
import java.util.Set;

/** The named fields that a design may show, and those that it must. */
public final class LabelFields {
    private static final Set<String> CASE = Set.of(
            "product",
            "lot",
            "packed",
            "dateWord",
            "date",
            "packs",
            "packsInCase",
            "part",
            "each",
            "net",
            "ingredients",
            "contains",
            "storage",
            "maker",
            "place",
            "gtin",
            "copy");

    private static final List<String> CASE_MUST = List.of(
            "product",
            "lot",
            "dateWord",
            "date",
            "net",
            "ingredients",
            "contains",
            "storage",
            "maker",
            "place",
            "copy");

    private static final Set<String> SLIP = Set.of("heading", "lot", "product", "line1", "line2", "line3");

    private LabelFields() {}

    public static Set<String> known(Design.Role role) {
        return role == Design.Role.SLIP ? SLIP : CASE;
    }

    /** Fields without which a label would not say all it must. */
    public static List<String> required(Design.Role role) {
        return switch (role) {
            case CASE -> CASE_MUST;
            case PART_CASE ->
                List.of(
                        "part",
                        "product",
                        "lot",
                        "dateWord",
                        "date",
                        "net",
                        "ingredients",
                        "contains",
                        "storage",
                        "maker",
                        "place",
                        "copy");
            case SLIP -> List.of("heading", "lot", "product");
        };
    }
}

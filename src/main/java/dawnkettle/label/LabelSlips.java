package dawnkettle.label;

import dawnkettle.plan.PlannedLabel;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Words of the slips that come out among labels and are not labels. */
public final class LabelSlips {
    private LabelSlips() {}

    /** Opens a lot. */
    static LabelText divider(PlannedLabel planned, String product) {
        int parts = planned.partCases().size();
        String whole = planned.cases() == 1 ? "1 whole case" : planned.cases() + " whole cases";
        String part = parts == 0 ? "" : parts == 1 ? ", 1 part case" : ", " + parts + " part cases";
        return slip(
                "NEW LOT – not a label",
                planned.lot().text(),
                product,
                counted(planned.count()) + " follow: " + whole + part,
                "used ____  destroyed ____  = printed " + planned.count());
    }

    /** For a lot that is void: its labels must not reach a case. */
    public static LabelText destroy(String lot, String product, int labels) {
        return slip(
                "DESTROY these labels",
                lot,
                product,
                counted(labels) + " of this lot are void",
                "destroyed ____ of " + labels + "  by ____",
                "Keep this slip with the run sheet");
    }

    /**
     * For a run with labels in doubt.
     *
     * @param counted what became of them, in their order, as "1 to 37 printed", "look at 38", "39 to 60 printed"
     */
    public static LabelText count(String lot, String product, List<String> counted) {
        int first = Math.min(counted.size(), 3);
        return slip(
                "COUNT these labels",
                lot,
                product,
                String.join(", ", counted.subList(0, first)),
                String.join(", ", counted.subList(first, counted.size())));
    }

    private static String counted(int labels) {
        return labels == 1 ? "1 label" : labels + " labels";
    }

    private static LabelText slip(String heading, String lot, String product, String... lines) {
        return new LabelText(
                Map.of(
                        "heading",
                        heading,
                        "lot",
                        lot,
                        "product",
                        product,
                        "line1",
                        lines[0],
                        "line2",
                        lines[1],
                        "line3",
                        "Keep this slip with the run sheet"),
                Optional.empty());
    }
}

package dawnkettle.label;

import dawnkettle.plan.PlannedLabel;
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

    /** For a run that broke off: what is certain, what to look at, what was not printed. */
    public static LabelText brokenOff(LabelRun run, Confirmed doubtful) {
        String certain = doubtful.first() == 1 ? "none is certain" : "1 to " + (doubtful.first() - 1) + " printed";
        String after = doubtful.last() == run.last()
                ? ""
                : (doubtful.last() + 1) + " to " + run.last() + " not printed before this slip";
        return slip(
                "COUNT these labels",
                run.lot(),
                run.product(),
                certain + ", look at " + doubtful,
                after,
                "Keep this slip with the run sheet");
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

package dawnkettle.draw;

import dawnkettle.label.CaseLabel;
import dawnkettle.label.Design;
import dawnkettle.label.Designs;
import dawnkettle.label.Dots;
import dawnkettle.label.Element;
import dawnkettle.label.ElementString;
import dawnkettle.label.LabelText;
import dawnkettle.label.Pitch;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;

/** Labels of an invented shop, for tests. GTINs are of the demonstration prefix 952. */
public final class SampleLabels {
    public static final ElementString ELEMENTS = ElementString.of(
            Element.gtin("19521234500015"), Element.bestBefore(LocalDate.of(2026, 12, 14)), Element.lot("261204-FI03"));

    private SampleLabels() {}

    public static Designs designs() {
        return LabelDesigns.read(Path.of("labels"));
    }

    public static CaseLabel label(int packs) {
        return new CaseLabel(
                "Firm tofu, 12 oz blocks",
                new CaseLabel.Dated("261204-FI03", "DEC 04 2026", "BEST if Used by", "DEC 14 2026"),
                new CaseLabel.Holds(
                        packs, 12, "11.9 oz (340 g)", packs == 12 ? "8.99 lb (4.08 kg)" : "3.74 lb (1.7 kg)"),
                new CaseLabel.Says(
                        "Water, soybeans, magnesium chloride (coagulant), sea salt",
                        "SOY",
                        "Keep refrigerated at or below 41 °F (5 °C)",
                        "Millrace Tofu Works",
                        "12 Sluice Lane, Quillhaven, OR 97999"),
                packs == 12 ? Optional.of(ELEMENTS) : Optional.empty());
    }

    public static LabelText slip() {
        return new LabelText(
                Map.of(
                        "heading", "NEW LOT – not a label",
                        "lot", "261204-FI03",
                        "product", "Firm tofu, 12 oz blocks",
                        "line1", "48 labels follow: 47 whole cases, 1 part case",
                        "line2", "used ____  destroyed ____  = printed 48",
                        "line3", "Keep this slip with the run sheet"),
                Optional.empty());
    }

    public static LabelText textFor(Design design) {
        return switch (design.role()) {
            case CASE -> label(12).text();
            case PART_CASE -> label(5).text();
            case SLIP -> slip();
        };
    }

    /** A design's sample at eight dots a millimetre, as it is read. */
    public static Dots drawn(String name) {
        Design design = designs().design(name);
        return new DotDrawing(LabelTypefaces.ours(), new Pitch(8_000), 1_588).draw(design, textFor(design));
    }
}

package dawnkettle.draw;

import dawnkettle.label.Design;
import dawnkettle.label.Dots;
import dawnkettle.label.Label;
import dawnkettle.label.LabelDrawing;
import dawnkettle.label.LabelText;
import dawnkettle.label.Mark;
import dawnkettle.label.Pitch;
import dawnkettle.trouble.BadFile;
import dawnkettle.trouble.Problem;
import java.util.List;

/** Draws labels in dots at one pitch: what is previewed is what is printed. */
public final class DotDrawing implements LabelDrawing {
    private final LabelTypefaces typefaces;
    private final Pitch pitch;
    private final int leastXHeight;

    /** @param leastXHeight height of a small x in micrometres that no required text may go below */
    public DotDrawing(LabelTypefaces typefaces, Pitch pitch, int leastXHeight) {
        this.typefaces = typefaces;
        this.pitch = pitch;
        this.leastXHeight = leastXHeight;
    }

    @Override
    public Dots draw(Design design, LabelText text) {
        return dots(lay(design, text));
    }

    @Override
    public List<Problem> check(Design design, LabelText text) {
        return layout(design, text).problems();
    }

    /** The label as marks. @throws BadFile where something does not fit */
    public Label lay(Design design, LabelText text) {
        LabelLayout layout = layout(design, text);
        if (!layout.problems().isEmpty()) throw new BadFile(layout.problems());
        return layout.label();
    }

    private LabelLayout layout(Design design, LabelText text) {
        return new LabelLayout(new LabelGauge(typefaces, pitch, leastXHeight), design, text);
    }

    private Dots dots(Label label) {
        Dots.Ink ink = new Dots.Ink(label.widthDots(), label.heightDots());
        for (Mark mark : label.marks()) {
            if (mark instanceof Mark.Box box) ink.fill(box.x(), box.y(), box.width(), box.height());
            if (mark instanceof Mark.Symbol symbol) ink.stamp(symbol.dots(), symbol.x(), symbol.y(), true);
            if (mark instanceof Mark.Text text)
                typefaces.set(
                        ink,
                        new LabelTypefaces.LineOfText(
                                text.words(),
                                text.x(),
                                text.baseline(),
                                text.size(),
                                text.ink().isBold(),
                                text.ink().isWhite()));
        }
        return ink.dry();
    }
}

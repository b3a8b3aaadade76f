package dawnkettle.draw;

import dawnkettle.label.Design;
import dawnkettle.label.DesignPart;
import dawnkettle.label.Label;
import dawnkettle.label.LabelText;
import dawnkettle.label.Mark;
import dawnkettle.trouble.Place;
import dawnkettle.trouble.Problem;
import java.util.ArrayList;
import java.util.List;

/** One design, filled with one text, laid out in dots; what does not fit is named with the millimetres it needs. */
final class LabelLayout {
    private final LabelGauge gauge;
    private final Design design;
    private final LabelText text;
    private final List<Mark> marks = new ArrayList<>();
    private final List<Problem> problems = new ArrayList<>();

    LabelLayout(LabelGauge gauge, Design design, LabelText text) {
        this.gauge = gauge;
        this.design = design;
        this.text = text;
        for (DesignPart part : design.parts()) {
            if (part instanceof DesignPart.Block block) lay(block);
            if (part instanceof DesignPart.Words words) lay(words);
            if (part instanceof DesignPart.Bars bars) lay(bars);
        }
    }

    Label label() {
        return new Label(
                gauge.dots(design.stock().width()), gauge.dots(design.stock().height()), marks);
    }

    List<Problem> problems() {
        return List.copyOf(problems);
    }

    private void lay(DesignPart.Block block) {
        int x = gauge.dots(block.area().x());
        int y = gauge.dots(block.area().y());
        marks.add(new Mark.Box(
                x,
                y,
                Math.max(1, gauge.dots(block.area().right()) - x),
                Math.max(1, gauge.dots(block.area().bottom()) - y)));
    }

    private void lay(DesignPart.Words words) {
        String filled = words.filled(text.fields());
        if (filled.isEmpty()) return;
        var objection = gauge.typefaces().objection(filled);
        if (objection.isPresent()) {
            problem(words, objection.get(), "write it in letters that need none, or name a typeface that has it");
            return;
        }
        boolean isRequired = design.role() != Design.Role.SLIP;
        LabelParagraph paragraph = new LabelParagraph(gauge, words, filled, isRequired);
        if (paragraph.fits()) marks.addAll(paragraph.marks());
        else problem(words, paragraph.objection(), "shorten it or give its box in the design more room");
    }

    private void lay(DesignPart.Bars bars) {
        var carried = text.elements()
                .flatMap(elements ->
                        bars.carries().isEmpty() ? java.util.Optional.of(elements) : elements.only(bars.carries()));
        if (carried.isEmpty()) return;
        LabelSymbol symbol = new LabelSymbol(gauge, bars, carried.get());
        if (symbol.objection().isPresent())
            problem(bars, symbol.objection().get(), "give its box more room, or carry fewer identifiers in it");
        else marks.addAll(symbol.marks());
    }

    private void problem(DesignPart part, String what, String remedy) {
        problems.add(new Problem(new Place("labels/" + design.name() + ".svg", part.line(), 0), what, remedy));
    }
}

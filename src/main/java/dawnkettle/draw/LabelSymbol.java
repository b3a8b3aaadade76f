package dawnkettle.draw;

import dawnkettle.label.Area;
import dawnkettle.label.DesignPart;
import dawnkettle.label.Dots;
import dawnkettle.label.ElementString;
import dawnkettle.label.Mark;
import dawnkettle.label.Symbology;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** One symbol in its box: the widest modules of whole dots that fit, never narrower than what scans. */
final class LabelSymbol {
    /** Em of the text under bars, in micrometres. */
    private static final int TEXT_SIZE = 3_200;

    /** From the bars to the foot of the text under them, in micrometres. */
    private static final int TEXT_ROOM = 4_000;

    private final LabelGauge gauge;
    private final DesignPart.Bars bars;
    private final ElementString elements;
    private final Symbology.Limits limits;
    private final Dots modules;
    private final int leastModule;
    private final int module;

    LabelSymbol(LabelGauge gauge, DesignPart.Bars bars, ElementString elements) {
        this.gauge = gauge;
        this.bars = bars;
        this.elements = elements;
        this.limits = bars.symbology().limits();
        this.modules = DotSymbols.modules(bars.symbology(), elements);
        this.leastModule = gauge.pitch()
                .dotsReaching(Math.max(limits.leastModule(), bars.module().least()));
        int most = gauge.pitch()
                .dotsWithin(Math.min(limits.mostModule(), bars.module().most()));
        int fitting = most;
        while (fitting > leastModule && !fits(fitting)) fitting--;
        this.module = fitting;
    }

    /** What keeps it from being drawn, with the millimetres it needs. */
    Optional<String> objection() {
        String named = bars.symbology().word() + " symbol \"" + elements.bracketed() + "\" ";
        if (bars.symbology().isLinear() && elements.characters() > Symbology.MOST_LINEAR_CHARACTERS)
            return Optional.of(named + "has " + elements.characters() + " characters, and "
                    + Symbology.MOST_LINEAR_CHARACTERS + " is the most");
        if (module < leastModule) return Optional.of(named + "wants modules that " + gauge.pitch() + " cannot print");
        if (isTooLong(leastModule))
            return Optional.of(
                    named + "needs " + gauge.millimetres(across(leastModule)) + " mm, and 165.1 is the most");
        if (fits(module)) return Optional.empty();
        return Optional.of(named + "needs " + gauge.millimetres(across(leastModule)) + " by "
                + gauge.millimetres(needed(leastModule)) + " mm and has " + gauge.millimetres(width()) + " by "
                + gauge.millimetres(height()) + " mm");
    }

    List<Mark> marks() {
        int down = bars.symbology().isLinear() ? barHeight() : module;
        Dots dots = DotSymbols.enlarged(modules, module, down);
        Area area = bars.area();
        int x = gauge.dots(area.x()) + (width() - dots.width()) / 2;
        int y = gauge.dots(area.y()) + (bars.symbology().isLinear() ? 0 : (height() - dots.height()) / 2);
        List<Mark> marks = new ArrayList<>();
        marks.add(new Mark.Symbol(elements.bracketed(), dots, x, y, module));
        if (bars.symbology().isLinear()) marks.add(readable(y + dots.height()));
        return marks;
    }

    /** The same data for people, its identifiers in brackets (not part of the data). */
    private Mark readable(int foot) {
        String text = elements.elements().stream()
                .map(element -> "(" + element.code() + ") " + element.value())
                .collect(Collectors.joining("  "));
        int size = gauge.dots(TEXT_SIZE);
        while (size > 8 && gauge.typefaces().width(text, size, false) > width()) size--;
        int x = gauge.dots(bars.area().x()) + (width() - gauge.typefaces().width(text, size, false)) / 2;
        return new Mark.Text(text, x, foot + (int) Math.ceil(size * 0.95), size, Mark.Ink.REGULAR);
    }

    private boolean fits(int dots) {
        return across(dots) <= width() && needed(dots) <= height() && !isTooLong(dots);
    }

    private boolean isTooLong(int dots) {
        return bars.symbology().isLinear() && gauge.pitch().micrometres(across(dots)) > Symbology.LONGEST_LINEAR;
    }

    private int across(int dots) {
        return (modules.width() + 2 * limits.quietModules()) * dots;
    }

    private int needed(int dots) {
        return bars.symbology().isLinear()
                ? gauge.pitch().dotsReaching(limits.leastHeight()) + gauge.dots(TEXT_ROOM)
                : across(dots);
    }

    private int barHeight() {
        return height() - gauge.dots(TEXT_ROOM);
    }

    private int width() {
        return gauge.dots(bars.area().right()) - gauge.dots(bars.area().x());
    }

    private int height() {
        return gauge.dots(bars.area().bottom()) - gauge.dots(bars.area().y());
    }
}

package dawnkettle.draw;

import dawnkettle.label.Dots;
import dawnkettle.label.ElementString;
import dawnkettle.label.Symbology;
import java.util.stream.Collectors;
import uk.org.okapibarcode.backend.Code128;
import uk.org.okapibarcode.backend.DataMatrix;
import uk.org.okapibarcode.backend.HumanReadableLocation;
import uk.org.okapibarcode.backend.Symbol;
import uk.org.okapibarcode.graphics.Rectangle;

/** Symbols as modules, one dot each; a linear symbol is one row. */
final class DotSymbols {
    private DotSymbols() {}

    static Dots modules(Symbology symbology, ElementString elements) {
        Symbol symbol = symbology.isLinear() ? new Code128() : square();
        symbol.setDataType(Symbol.DataType.GS1);
        symbol.setHumanReadableLocation(HumanReadableLocation.NONE);
        symbol.setModuleWidth(1);
        symbol.setBarHeight(1);
        symbol.setContent(elements.elements().stream()
                .map(element -> "[" + element.code() + "]" + element.value())
                .collect(Collectors.joining()));
        return drawn(symbol);
    }

    private static DataMatrix square() {
        DataMatrix matrix = new DataMatrix();
        matrix.setForceMode(DataMatrix.ForceMode.SQUARE);
        return matrix;
    }

    private static Dots drawn(Symbol symbol) {
        Dots.Ink ink = new Dots.Ink(symbol.getWidth(), symbol.getHeight());
        for (Rectangle bar : symbol.getRectangles())
            ink.fill((int) bar.x, (int) bar.y, (int) bar.width, (int) bar.height);
        return ink.dry();
    }

    /** Each module as a block of {@code across} by {@code down} dots. */
    static Dots enlarged(Dots modules, int across, int down) {
        Dots.Ink ink = new Dots.Ink(modules.width() * across, modules.height() * down);
        for (int y = 0; y < modules.height(); y++)
            for (int x = 0; x < modules.width(); x++)
                if (modules.isBlack(x, y)) ink.fill(x * across, y * down, across, down);
        return ink.dry();
    }
}

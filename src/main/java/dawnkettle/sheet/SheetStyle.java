package dawnkettle.sheet;

import dawnkettle.shop.House;

/** How the shop wants its sheets: paper in the tray, units, language, typeface. */
public record SheetStyle(PaperSize paper, House.Units units, String language, Typeface typeface) {
    public static SheetStyle of(House house, Typeface typeface) {
        return new SheetStyle(PaperSize.of(house.paper()), house.units(), house.language(), typeface);
    }
}

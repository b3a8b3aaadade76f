package dawnkettle.sheet;

import dawnkettle.shop.House;

/** How the shop wants its sheets: paper in the tray, units, languages, typeface. */
public record SheetStyle(PaperSize paper, House.Units units, SheetSettings settings, Typeface typeface) {
    public static SheetStyle of(House house, Typeface typeface) {
        return of(house, SheetSettings.in(house.language()), typeface);
    }

    public static SheetStyle of(House house, SheetSettings settings, Typeface typeface) {
        return new SheetStyle(PaperSize.of(house.paper()), house.units(), settings, typeface);
    }
}

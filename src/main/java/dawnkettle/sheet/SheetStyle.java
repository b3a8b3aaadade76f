package dawnkettle.sheet;

import dawnkettle.shop.House;
import java.util.Optional;

/**
 * How the shop wants its sheets: paper in the tray, units, languages, typeface.
 *
 * @param ordersOnly the number of the orders-only sheet that was printed before a plan came, where one was
 */
public record SheetStyle(
        PaperSize paper, House.Units units, SheetSettings settings, Typeface typeface, Optional<String> ordersOnly) {
    public SheetStyle(PaperSize paper, House.Units units, SheetSettings settings, Typeface typeface) {
        this(paper, units, settings, typeface, Optional.empty());
    }

    public static SheetStyle of(House house, Typeface typeface) {
        return of(house, SheetSettings.in(house.language()), typeface);
    }

    public static SheetStyle of(House house, SheetSettings settings, Typeface typeface) {
        return new SheetStyle(PaperSize.of(house.paper()), house.units(), settings, typeface);
    }

    /** The same, not measuring anything twice. */
    SheetStyle remembering() {
        return new SheetStyle(paper, units, settings, Wrapping.of(typeface), ordersOnly);
    }

    /** The same for sheets that take the place of an orders-only sheet, and say so. */
    public SheetStyle inPlaceOf(String number) {
        return new SheetStyle(paper, units, settings, typeface, Optional.of(number));
    }
}

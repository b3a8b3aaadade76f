package dawnkettle.sheet;

import dawnkettle.shop.House;
import java.util.Optional;

/**
 * How the shop wants its sheets: paper in the tray, units, languages, typeface.
 *
 * @param tray what lies there already, and whether the date holds
 */
public record SheetStyle(PaperSize paper, House.Units units, SheetSettings settings, Typeface typeface, InTray tray) {
    /** Whether the date of a sheet is known to be right. */
    public enum Dating {
        SURE,
        /** It was made while the clock was in doubt, and says so on each page. */
        NOT_CONFIRMED,
        /** It is sure now, and sheets that say otherwise may still hang. */
        CONFIRMED_SINCE
    }

    /**
     * What a sheet has to say of others of its day.
     *
     * @param ordersOnly the number of the orders-only sheet that was printed before a plan came, where one was
     */
    public record InTray(Optional<String> ordersOnly, Dating dating) {
        static final InTray NOTHING = new InTray(Optional.empty(), Dating.SURE);
    }

    public SheetStyle(PaperSize paper, House.Units units, SheetSettings settings, Typeface typeface) {
        this(paper, units, settings, typeface, InTray.NOTHING);
    }

    public static SheetStyle of(House house, Typeface typeface) {
        return of(house, SheetSettings.in(house.language()), typeface);
    }

    public static SheetStyle of(House house, SheetSettings settings, Typeface typeface) {
        return new SheetStyle(PaperSize.of(house.paper()), house.units(), settings, typeface);
    }

    /** The same, not measuring anything twice. */
    SheetStyle remembering() {
        return new SheetStyle(paper, units, settings, Wrapping.of(typeface), tray);
    }

    /** The same for sheets that take the place of an orders-only sheet, and say so. */
    public SheetStyle inPlaceOf(String number) {
        return with(new InTray(Optional.of(number), tray.dating()));
    }

    /** The same for sheets whose date is, or is not, known to be right. */
    public SheetStyle dated(Dating dating) {
        return with(new InTray(tray.ordersOnly(), dating));
    }

    private SheetStyle with(InTray other) {
        return new SheetStyle(paper, units, settings, typeface, other);
    }
}

package dawnkettle.shop;

import java.time.ZoneId;
import java.util.Currency;
import java.util.List;

/**
 * The shop itself.
 *
 * @param address lines as a label prints them
 * @param language of the sheets and mails, a BCP 47 tag
 * @param market whose label wording holds, the name of a preset
 */
public record House(
        String name,
        List<String> address,
        ZoneId zone,
        String language,
        Currency currency,
        Units units,
        Paper paper,
        String market) {
    public House {
        address = List.copyOf(address);
    }

    /** Which units the sheets show first. */
    public enum Units {
        METRIC,
        US_CUSTOMARY
    }

    /** What paper lies in the tray. */
    public enum Paper {
        LETTER,
        A4
    }
}

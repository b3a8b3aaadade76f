package dawnkettle.book;

import dawnkettle.book.Sense.Kind;
import java.util.List;
import java.util.regex.Pattern;

/** What stands below a mail: a farewell, a name, an address, a telephone, opening hours. */
final class Signature {
    /** Words of a name behind a farewell (common practice, no source). */
    private static final int MOST_OF_NAMES = 6;

    private static final Pattern TELEPHONE =
            Pattern.compile(".*\\b\\d{3}[ .-]\\d{3,4}\\b.*|.*\\S@\\S+\\.\\S.*|.*\\bwww\\..*");
    private static final Kind[] OF_ORDER = {
        Kind.KIND, Kind.CODE, Kind.FORM, Kind.CASE, Kind.SET, Kind.SET_TO, Kind.DROP, Kind.FORGET, Kind.ONLY, Kind.OLD
    };
    private static final Kind[] OF_NAME = {
        Kind.NOISE, Kind.UNKNOWN, Kind.COMMA, Kind.STOP, Kind.DASH, Kind.BRACKET, Kind.MONTH, Kind.PARTED
    };

    private Signature() {}

    /** A line with a farewell, or with nothing but the customer's name, that no line of an order follows. */
    static boolean begins(List<Sense> senses, String line) {
        if (senses.isEmpty() || senses.stream().anyMatch(s -> s.is(OF_ORDER))) return false;
        long names = senses.stream().filter(s -> s.is(Kind.UNKNOWN)).count();
        boolean figures = senses.stream().anyMatch(s -> s.is(Kind.NUMBER, Kind.UNSURE, Kind.NO));
        boolean bye = senses.get(0).is(Kind.BYE)
                && (!figures || TELEPHONE.matcher(line).matches());
        boolean name = senses.stream().allMatch(s -> s.is(OF_NAME))
                && senses.stream().anyMatch(s -> Asking.says(s, "name"))
                && senses.stream().noneMatch(Asking::is);
        return names <= MOST_OF_NAMES && (bye || name);
    }

    /** "Tel. 555 0188", "Mon-Sat 8 to 6" */
    static boolean isAddress(List<Sense> senses, String line) {
        if (senses.stream().anyMatch(s -> s.is(OF_ORDER))) return false;
        return TELEPHONE.matcher(line).matches() && senses.stream().noneMatch(Asking::is) || hasHours(senses);
    }

    private static boolean hasHours(List<Sense> senses) {
        boolean days = false;
        boolean hours = false;
        for (int i = 2; i < senses.size(); i++) {
            boolean range = senses.get(i - 1).is(Kind.DASH, Kind.TO, Kind.UNSURE);
            days |= range && senses.get(i).is(Kind.WEEKDAY) && senses.get(i - 2).is(Kind.WEEKDAY);
            hours |= range
                    && senses.get(i).is(Kind.NUMBER, Kind.CLOCK)
                    && senses.get(i - 2).is(Kind.NUMBER, Kind.CLOCK);
        }
        return days && hours;
    }
}

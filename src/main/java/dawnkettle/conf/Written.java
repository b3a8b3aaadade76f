package dawnkettle.conf;

import dawnkettle.measure.Celsius;
import dawnkettle.measure.Mass;
import dawnkettle.measure.Money;
import dawnkettle.measure.Share;
import dawnkettle.shop.Opening;
import dawnkettle.trouble.Place;
import java.math.BigDecimal;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * One value as the owner wrote it. It turns itself into what it should be; where it cannot, it notes why and gives a
 * stand-in that its reader must not use.
 *
 * @param name key or column
 * @param text what stands there
 * @param kind how it was written
 */
record Written(String name, String text, Kind kind, Place place, Problems problems) {
    /** What a missing text gives; no file can hold it. */
    static final String NOTHING = "\u0000";

    private static final String TIME = "([01][0-9]|2[0-3]):[0-5][0-9]";
    private static final BigDecimal HEAVIEST_KG = new BigDecimal("100000");

    /** How a value was written; a cell of a table may be anything, and what is missing was already noted. */
    enum Kind {
        TEXT,
        NUMBER,
        TRUTH,
        CELL,
        OTHER,
        MISSING
    }

    /** Text that says something. */
    String words() {
        if (kind == Kind.MISSING) return NOTHING;
        if (kind != Kind.TEXT && kind != Kind.CELL) return bad(NOTHING, "is not a text", "write it in quotes");
        if (text.chars().anyMatch(Character::isISOControl)) {
            problems.add(place, name + " holds a line break or another control character", "write it in one line");
            return NOTHING;
        }
        return text.isBlank() ? bad(NOTHING, "is empty", "fill it in") : text;
    }

    /** A short code without spaces. */
    String code() {
        String code = words();
        return code.equals(NOTHING) || code.matches("[A-Za-z0-9][A-Za-z0-9_.-]{0,23}")
                ? code
                : bad(code, "is not a code", "write 1 to 24 letters, digits, - _ or . without spaces");
    }

    int whole(int least, int most) {
        return number(0, BigDecimal.valueOf(least), BigDecimal.valueOf(most)).intValueExact();
    }

    /** A number with at most {@code places} after the point. */
    BigDecimal number(int places, BigDecimal least, BigDecimal most) {
        if (kind == Kind.MISSING) return least;
        String what = places == 0
                ? "a whole number"
                : "a number with at most " + places + (places == 1 ? " decimal" : " decimals");
        String remedy = "write " + what + " from " + least.toPlainString() + " to " + most.toPlainString();
        Optional<BigDecimal> value = kind == Kind.TEXT ? Optional.empty() : decimal();
        if (value.isEmpty() || value.get().stripTrailingZeros().scale() > places)
            return bad(least, "is not " + what, kind == Kind.TEXT ? remedy + ", without quotes" : remedy);
        if (value.get().compareTo(least) < 0 || value.get().compareTo(most) > 0)
            return bad(least, "is out of range", remedy);
        return value.get();
    }

    private Optional<BigDecimal> decimal() {
        return text.matches("[+-]?[0-9]{1,12}([.][0-9]{1,12})?([eE][+-]?[0-9]{1,2})?")
                ? Optional.of(new BigDecimal(text))
                : Optional.empty();
    }

    Mass kilograms() {
        return Mass.kilograms(number(3, new BigDecimal("0.001"), HEAVIEST_KG));
    }

    Mass grams() {
        return Mass.grams(whole(1, 1_000_000));
    }

    /** A mass ratio between {@code least} and {@code most}. */
    Share ratio(String least, String most) {
        return Share.of(number(4, new BigDecimal(least), new BigDecimal(most)));
    }

    /** Grams in a kilogram. */
    Share gramsPerKilogram(String most) {
        return Share.of(number(3, new BigDecimal("0.001"), new BigDecimal(most)).movePointLeft(3));
    }

    Money money(Currency currency) {
        Money none = Money.zero(currency);
        String named = text.replaceAll("[0-9., ]", "");
        if (kind != Kind.MISSING && named.matches("[A-Z]{3}|[$€£¥]"))
            return bad(
                    none,
                    named.equals(currency.getCurrencyCode()) ? "names its currency" : "is in another currency",
                    "write it in " + currency.getCurrencyCode() + ", the number alone");
        return Money.of(
                number(currency.getDefaultFractionDigits(), BigDecimal.ZERO, new BigDecimal("1000000")), currency);
    }

    Celsius celsius(int least, int most) {
        return Celsius.of(number(1, BigDecimal.valueOf(least), BigDecimal.valueOf(most)));
    }

    /** People, in half people. */
    int halfHands(int mostPeople) {
        BigDecimal twice =
                number(1, BigDecimal.ZERO, BigDecimal.valueOf(mostPeople)).multiply(BigDecimal.valueOf(2));
        return twice.stripTrailingZeros().scale() <= 0
                ? twice.intValueExact()
                : bad(0, "is neither whole nor half people", "write 0.5, 1, 1.5 …");
    }

    boolean truth() {
        if (kind == Kind.MISSING) return false;
        if (kind == Kind.TRUTH) return Boolean.parseBoolean(text);
        if (kind == Kind.CELL && (text.equals("yes") || text.equals("no"))) return text.equals("yes");
        return kind == Kind.CELL
                ? bad(false, "is neither yes nor no", "write yes or no")
                : bad(false, "is neither true nor false", "write true or false, without quotes");
    }

    LocalTime time() {
        if (kind == Kind.MISSING) return LocalTime.MIDNIGHT;
        return kind != Kind.NUMBER && text.matches(TIME)
                ? LocalTime.parse(text)
                : bad(LocalTime.MIDNIGHT, "is not a time", "write it as 02:30 or 15:00");
    }

    Opening opening() {
        Opening never = new Opening(LocalTime.MIDNIGHT, LocalTime.NOON);
        if (kind == Kind.MISSING) return never;
        if (!text.matches(TIME + "-" + TIME)) return bad(never, "is not a stretch of time", "write it as 02:30-15:00");
        LocalTime from = LocalTime.parse(text.substring(0, 5));
        LocalTime until = LocalTime.parse(text.substring(6));
        return from.isBefore(until)
                ? new Opening(from, until)
                : bad(never, "does not run forward within one day", "split it at midnight");
    }

    LocalDate date() {
        if (kind == Kind.MISSING) return LocalDate.EPOCH;
        try {
            return LocalDate.parse(text);
        } catch (DateTimeParseException e) {
            return bad(LocalDate.EPOCH, "is not a date", "write it as 2026-12-03");
        }
    }

    DayOfWeek weekday() {
        if (kind == Kind.MISSING) return DayOfWeek.MONDAY;
        return Stream.of(DayOfWeek.values())
                .filter(day -> shortName(day).equals(text))
                .findFirst()
                .orElseGet(() -> bad(DayOfWeek.MONDAY, "is not a weekday", "write mon tue wed thu fri sat or sun"));
    }

    static String shortName(DayOfWeek day) {
        return day.name().substring(0, 3).toLowerCase(Locale.ROOT);
    }

    <E extends Enum<E>> E oneOf(Class<E> choice) {
        E first = choice.getEnumConstants()[0];
        if (kind == Kind.MISSING) return first;
        List<String> words =
                Stream.of(choice.getEnumConstants()).map(Written::word).toList();
        int index = words.indexOf(text);
        return index < 0
                ? bad(first, "is not known", "write one of: " + String.join(", ", words))
                : choice.getEnumConstants()[index];
    }

    static String word(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The parts between semicolons, each at its own place; none where nothing is written. */
    List<Written> parts() {
        List<Written> parts = new ArrayList<>();
        if (text.isBlank() || kind == Kind.MISSING) return parts;
        int at = 0;
        for (String part : text.split(";", -1)) {
            int lead = part.length() - part.stripLeading().length();
            Place start = new Place(place.file(), place.line(), place.column() + at + lead);
            parts.add(new Written(name, part.strip(), Kind.CELL, start, problems));
            at += part.length() + 1;
        }
        return parts;
    }

    boolean isBlank() {
        return kind == Kind.MISSING || text.isBlank();
    }

    /** Notes what is wrong with this value and gives the stand-in. */
    <T> T bad(T standIn, String what, String remedy) {
        problems.add(place, name + " \"" + shown(text) + "\" " + what, remedy);
        return standIn;
    }

    /** A text as a problem quotes it: not too long, and without what would upset a terminal. */
    static String shown(String text) {
        String plain = text.length() <= 60 ? text : text.substring(0, 60) + "…";
        return plain.replaceAll("\\p{Cntrl}", "?");
    }
}

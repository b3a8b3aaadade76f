package dawnkettle.stock;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.regex.Pattern;

/** The code of a batch's lot, as 261204-FI03: production day, the recipe's mark, and a number within the day. */
public record LotCode(String text) implements Comparable<LotCode> {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("uuMMdd", Locale.ROOT);

    private static final Pattern FORM = Pattern.compile("[0-9]{6}-[A-Z]{2}[0-9]{2,3}");

    public LotCode {
        if (!isOne(text)) throw new IllegalArgumentException("lot code \"" + text + "\" is not like 261125-TF03");
    }

    /** Whether a text has the form of a lot's code. */
    public static boolean isOne(String text) {
        return FORM.matcher(text).matches();
    }

    /** What the codes of a production day begin with. */
    public static String dayOf(LocalDate productionDate) {
        return DAY.format(productionDate);
    }

    public static LotCode of(LocalDate productionDate, String mark, int number) {
        return new LotCode(String.format(Locale.ROOT, "%s-%s%02d", DAY.format(productionDate), mark, number));
    }

    /** @throws java.time.DateTimeException where its digits are no day, which {@link #of} never gives */
    public LocalDate productionDate() {
        return LocalDate.parse(text.substring(0, 6), DAY);
    }

    @Override
    public int compareTo(LotCode other) {
        return text.compareTo(other.text);
    }

    @Override
    public String toString() {
        return text;
    }
}

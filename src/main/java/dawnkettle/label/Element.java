package dawnkettle.label;

import dawnkettle.measure.Mass;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.Locale;

/**
 * One element of an element string: an application identifier and its value, checked.
 *
 * @param code the identifier's digits, as "01" or "3102"
 */
public record Element(String code, String value) {
    public Element {
        Identifier.find(code)
                .orElseThrow(() -> new IllegalArgumentException(
                        "(" + code + ") is not an identifier that we know; write one as (01), (10), (15)"))
                .check(code, value);
    }

    public static Element gtin(String gtin) {
        return new Element("01", gtin);
    }

    public static Element sscc(String sscc) {
        return new Element("00", sscc);
    }

    public static Element content(String gtin) {
        return new Element("02", gtin);
    }

    public static Element lot(String lot) {
        return new Element("10", lot);
    }

    public static Element packed(LocalDate day) {
        return new Element("13", Gs1Date.write(day));
    }

    public static Element bestBefore(LocalDate day) {
        return new Element("15", Gs1Date.write(day));
    }

    public static Element useBy(LocalDate day) {
        return new Element("17", Gs1Date.write(day));
    }

    public static Element serial(String serial) {
        return new Element("21", serial);
    }

    public static Element count(int count) {
        return new Element("37", Integer.toString(count));
    }

    /** Net mass in kilograms with {@code places} decimals (0 to 5), rounded down so that it never says too much. */
    public static Element netKilograms(Mass net, int places) {
        return measure("310", places, net.inKilograms(places, RoundingMode.DOWN));
    }

    /** Net mass in pounds with {@code places} decimals (0 to 5), rounded down so that it never says too much. */
    public static Element netPounds(Mass net, int places) {
        return measure("320", places, net.inPounds(places, RoundingMode.DOWN));
    }

    private static Element measure(String prefix, int places, BigDecimal amount) {
        if (places < 0 || places > 5)
            throw new IllegalArgumentException("decimals \"" + places + "\" are not 0 to 5; write 0 to 5");
        String digits = String.format(Locale.ROOT, "%06d", amount.unscaledValue());
        return new Element(prefix + places, digits);
    }

    /** Whether the value's end is known from its identifier alone. */
    boolean isPredefined() {
        return Identifier.predefinedLength(code) != 0;
    }

    String joined() {
        return code + value;
    }
}

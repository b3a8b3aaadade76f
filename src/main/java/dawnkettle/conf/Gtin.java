package dawnkettle.conf;

import dawnkettle.label.CheckDigit;

/** A case number of 14 digits whose last is the check digit. */
final class Gtin {
    private Gtin() {}

    static String read(Written gtin) {
        String digits = gtin.text();
        if (!digits.matches("[0-9]{14}")) return gtin.bad(digits, "is not a GTIN-14", "write 14 digits, or nothing");
        if (CheckDigit.holds(digits)) return digits;
        int right = CheckDigit.of(digits.substring(0, 13));
        return gtin.bad(
                digits, "has a wrong check digit", "its last digit would be " + right + "; look which digit is wrong");
    }
}

package dawnkettle.conf;

/** A case number of 14 digits whose last is the check digit. */
final class Gtin {
    private Gtin() {}

    static String read(Written gtin) {
        String digits = gtin.text();
        if (!digits.matches("[0-9]{14}")) return gtin.bad(digits, "is not a GTIN-14", "write 14 digits, or nothing");
        int right = checkDigit(digits.substring(0, 13));
        return right == digits.charAt(13) - '0'
                ? digits
                : gtin.bad(
                        digits,
                        "has a wrong check digit",
                        "its last digit would be " + right + "; look which digit is wrong");
    }

    /** GS1 General Specifications 7.9: weights 3 and 1 from the right, up to the next ten (from memory). */
    static int checkDigit(String body) {
        int sum = 0;
        for (int i = 0; i < body.length(); i++)
            sum += (body.charAt(body.length() - 1 - i) - '0') * (i % 2 == 0 ? 3 : 1);
        return (10 - sum % 10) % 10;
    }
}

package dawnkettle.label;

/**
 * The check digit of GTIN, SSCC and GLN: from the right, weights 3, 1, 3, 1 …; the digit fills up to the next ten (GS1
 * General Specifications 7.9; the rule read at gs1hk.org and gs1india.org).
 */
public final class CheckDigit {
    private CheckDigit() {}

    /** The digit that belongs after {@code digits}. */
    public static int of(String digits) {
        int sum = 0;
        for (int i = 0; i < digits.length(); i++) {
            int weight = (digits.length() - i) % 2 == 1 ? 3 : 1;
            sum += weight * digit(digits, i);
        }
        return (10 - sum % 10) % 10;
    }

    /** Whether the last digit of {@code number} is the right one. */
    public static boolean holds(String number) {
        if (number.length() < 2) return false;
        int last = number.length() - 1;
        return digit(number, last) == of(number.substring(0, last));
    }

    private static int digit(String digits, int at) {
        char c = digits.charAt(at);
        if (c < '0' || c > '9')
            throw new IllegalArgumentException(
                    "\"" + digits + "\" has \"" + c + "\" at position " + (at + 1) + "; write digits only");
        return c - '0';
    }
}

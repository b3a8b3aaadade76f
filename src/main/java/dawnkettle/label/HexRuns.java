package dawnkettle.label;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * Rows as hexadecimal digits with counts before digits that repeat: G to Y stand for 1 to 19, g to z for 20 to 400; a
 * comma for white to the row's end, an exclamation mark for black, a colon for a row like the one before.
 */
final class HexRuns {
    private static final int SMALL = 20;
    private static final int LARGEST = 400;
    private final StringBuilder text = new StringBuilder();
    private byte[] before = new byte[0];

    void row(byte[] row) {
        if (Arrays.equals(row, before)) text.append(':');
        else runs(digits(row));
        before = row.clone();
    }

    byte[] bytes() {
        return text.toString().getBytes(StandardCharsets.US_ASCII);
    }

    private void runs(String digits) {
        int at = 0;
        while (at < digits.length()) {
            char digit = digits.charAt(at);
            int end = at;
            while (end < digits.length() && digits.charAt(end) == digit) end++;
            if (end == digits.length() && (digit == '0' || digit == 'F')) text.append(digit == '0' ? ',' : '!');
            else run(digit, end - at);
            at = end;
        }
    }

    private void run(char digit, int count) {
        int left = count;
        while (left > LARGEST + SMALL - 1) {
            text.append('z').append(digit);
            left -= LARGEST;
        }
        if (left <= 2) {
            text.append(String.valueOf(digit).repeat(left));
            return;
        }
        if (left >= SMALL) text.append((char) ('g' + left / SMALL - 1));
        if (left % SMALL > 0) text.append((char) ('G' + left % SMALL - 1));
        text.append(digit);
    }

    private static String digits(byte[] row) {
        StringBuilder digits = new StringBuilder();
        for (byte one : row)
            digits.append(Character.toUpperCase(Character.forDigit(one >> 4 & 0xF, 16)))
                    .append(Character.toUpperCase(Character.forDigit(one & 0xF, 16)));
        return digits.toString();
    }
}

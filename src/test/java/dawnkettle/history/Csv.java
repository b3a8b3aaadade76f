package dawnkettle.history;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.stream.Collectors;

/** A history file as text: what it is, then its columns, then its rows. */
final class Csv {
    private final StringBuilder text = new StringBuilder();
    private final String columns;
    private int rows;

    Csv(String columns, String... notes) {
        this.columns = columns;
        for (String note : notes) text.append("# ").append(note).append('\n');
        text.append(columns).append('\n');
    }

    /** Nothing in these files needs quotes. */
    void row(Object... cells) {
        if (cells.length != columns.split(",").length) throw new IllegalArgumentException("not " + columns);
        text.append(Arrays.stream(cells).map(Object::toString).collect(Collectors.joining(",")))
                .append('\n');
        rows++;
    }

    int rows() {
        return rows;
    }

    static String kilograms(long grams) {
        return BigDecimal.valueOf(grams, 3).stripTrailingZeros().toPlainString();
    }

    @Override
    public String toString() {
        return text.toString();
    }
}

package dawnkettle.mail;

import java.math.BigDecimal;
import java.util.Collection;
import java.util.List;
import java.util.stream.Collectors;

/** A table as comma-separated text (RFC 4180), in which no cell that somebody wrote can act as a formula. */
final class CsvText {
    /** Signs with which a spreadsheet begins a formula, in both widths. */
    private static final String FORMULA = "=+-@\uFF1D\uFF0B\uFF0D\uFF20\t\r";

    private final StringBuilder text = new StringBuilder();
    private final int columns;

    CsvText(List<String> header) {
        columns = header.size();
        row(header);
    }

    /** @param cells text, or figures of our own: whole or decimal */
    CsvText row(Collection<?> cells) {
        if (cells.size() != columns) throw new IllegalArgumentException("a row has " + columns + " cells");
        text.append(cells.stream().map(CsvText::cell).collect(Collectors.joining(",")))
                .append("\r\n");
        return this;
    }

    private static String cell(Object cell) {
        if (cell instanceof BigDecimal figure) return figure.toPlainString();
        if (cell instanceof Long || cell instanceof Integer) return cell.toString();
        String harmless = harmless(cell.toString());
        boolean bare = harmless.chars().noneMatch(c -> c == ',' || c == '"' || c == '\r' || c == '\n');
        return bare ? harmless : "\"" + harmless.replace("\"", "\"\"") + "\"";
    }

    /** Blanks before the sign do not stop every program, so they do not stop us. */
    private static String harmless(String text) {
        int at = 0;
        while (at < text.length() && isBlank(text.charAt(at))) at++;
        boolean acts = at < text.length() && FORMULA.indexOf(text.charAt(at)) >= 0
                || !text.isEmpty() && FORMULA.indexOf(text.charAt(0)) >= 0;
        return acts ? "'" + text : text;
    }

    private static boolean isBlank(char c) {
        return Character.isWhitespace(c) || Character.isSpaceChar(c) || c == '\uFEFF' || c == '\u200B';
    }

    @Override
    public String toString() {
        return text.toString();
    }
}

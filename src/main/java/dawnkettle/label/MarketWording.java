package dawnkettle.label;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.NoSuchElementException;
import java.util.Optional;

/**
 * What a market wants said on a label. A preset is a starting point: the owner confirms it with the local authority.
 *
 * @param market its name in {@code conf/}
 * @param source what it follows, and what of it is from memory
 * @param words before the date
 * @param order of day and month
 * @param type smallest letters and which units come first
 */
public record MarketWording(String market, String source, DateWords words, Order order, Type type) {
    /**
     * @param quality before a date up to which the product is at its best
     * @param qualityMonth the same where only a month is given
     * @param safety before a date after which it must not be eaten
     */
    public record DateWords(String quality, String qualityMonth, String safety) {}

    /** Which part of a date comes first; the month is always in letters (Codex CXS 1-1985 4.7, wording from memory). */
    public enum Order {
        DAY_FIRST,
        MONTH_FIRST
    }

    /**
     * @param leastXHeight height of a small x in micrometres that no required text may go below
     * @param usUnitsFirst whether pounds stand before kilograms
     * @param allergensInCapitals whether the ingredient list shows allergens in capitals
     */
    public record Type(int leastXHeight, boolean usUnitsFirst, boolean allergensInCapitals) {}

    /** 1/16 inch, measured on the small o (21 CFR 101.2(c): its twin 501.2 read, 101.2 cut off before the figure). */
    private static final int SIXTEENTH_INCH = 1_588;

    /** 1.2 mm, the small x (Regulation (EU) 1169/2011 article 13, read in summaries). */
    private static final int EU_X_HEIGHT = 1_200;

    private static final List<MarketWording> PRESETS = List.of(
            new MarketWording(
                    "us",
                    "no federal date wording but for infant formula (from memory); states differ; 21 CFR 101 type size",
                    new DateWords("Best if used by", "Best if used by", "Use by"),
                    Order.MONTH_FIRST,
                    new Type(SIXTEENTH_INCH, true, false)),
            new MarketWording(
                    "us-california",
                    "California Food and Agricultural Code 82001, in force for food made from 2026-07-01 (read in a copy)",
                    new DateWords("BEST if Used by", "BEST if Used by", "USE by"),
                    Order.MONTH_FIRST,
                    new Type(SIXTEENTH_INCH, true, false)),
            new MarketWording(
                    "eu",
                    "Regulation (EU) 1169/2011 annex X, articles 13, 21 and 24 (read in quotations and summaries)",
                    new DateWords("Best before", "Best before end", "Use by"),
                    Order.DAY_FIRST,
                    new Type(EU_X_HEIGHT, false, true)),
            new MarketWording(
                    "uk",
                    "the same rules as kept in law there (from memory)",
                    new DateWords("Best before", "Best before end", "Use by"),
                    Order.DAY_FIRST,
                    new Type(EU_X_HEIGHT, false, true)),
            new MarketWording(
                    "codex",
                    "Codex CXS 1-1985, revised 2018 (definitions read; letter height from the EU rule)",
                    new DateWords("Best before", "Best before end", "Use by"),
                    Order.DAY_FIRST,
                    new Type(EU_X_HEIGHT, false, true)));

    private static final List<String> MONTHS =
            List.of("JAN", "FEB", "MAR", "APR", "MAY", "JUN", "JUL", "AUG", "SEP", "OCT", "NOV", "DEC");

    public static Optional<MarketWording> find(String market) {
        return PRESETS.stream().filter(preset -> preset.market.equals(market)).findFirst();
    }

    public static MarketWording of(String market) {
        return find(market).orElseThrow(() -> new NoSuchElementException("no market " + market));
    }

    public static List<String> markets() {
        return PRESETS.stream().map(MarketWording::market).toList();
    }

    /** A day with its month in letters, so that nobody takes one for the other. */
    public String date(LocalDate day) {
        String month = MONTHS.get(day.getMonthValue() - 1);
        return order == Order.DAY_FIRST
                ? String.format(Locale.ROOT, "%02d %s %d", day.getDayOfMonth(), month, day.getYear())
                : String.format(Locale.ROOT, "%s %02d %d", month, day.getDayOfMonth(), day.getYear());
    }

    /** What to tell the owner who uses this preset. */
    public String caution() {
        return "label wording for market \"" + market + "\" follows: " + source
                + "; confirm it with your local authority before you sell under it";
    }
}

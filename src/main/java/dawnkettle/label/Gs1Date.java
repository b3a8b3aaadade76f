package dawnkettle.label;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Dates of element strings, as YYMMDD. We always write a real day; a day 00 is only read, as the month's last. */
public final class Gs1Date {
    private static final DateTimeFormatter YYMMDD = DateTimeFormatter.ofPattern("uuMMdd", Locale.ROOT);

    private Gs1Date() {}

    public static String write(LocalDate day) {
        return YYMMDD.format(day);
    }

    /** Reads {@code yymmdd} as seen in {@code yearNow}. */
    public static LocalDate read(String yymmdd, int yearNow) {
        if (!yymmdd.matches("[0-9]{6}")) throw notADate(yymmdd);
        try {
            YearMonth month = YearMonth.of(
                    year(Integer.parseInt(yymmdd.substring(0, 2)), yearNow), Integer.parseInt(yymmdd.substring(2, 4)));
            int day = Integer.parseInt(yymmdd.substring(4));
            return day == 0 ? month.atEndOfMonth() : month.atDay(day);
        } catch (DateTimeException e) {
            throw notADate(yymmdd, e);
        }
    }

    /** Whether {@code yymmdd} names a day of the calendar, or a month where the day is 00. */
    static boolean isDate(String yymmdd) {
        try {
            // Two-digit years repeat their leap days within the century that the numbers stand for: 2000 is leap.
            read(yymmdd, 2049);
            return true;
        } catch (IllegalArgumentException e) {
            return false;
        }
    }

    /**
     * The year that {@code yy} means: from 49 years back to 50 years ahead (GS1 General Specifications 7.12, as cited by
     * three public programs; the figure itself was not read).
     */
    static int year(int yy, int yearNow) {
        int century = yearNow - yearNow % 100;
        int ahead = yy - yearNow % 100;
        if (ahead >= 51) return century - 100 + yy;
        return ahead <= -50 ? century + 100 + yy : century + yy;
    }

    private static IllegalArgumentException notADate(String text) {
        return notADate(text, null);
    }

    private static IllegalArgumentException notADate(String text, Exception cause) {
        return new IllegalArgumentException("\"" + text + "\" is not a date; write YYMMDD, as 270131", cause);
    }
}

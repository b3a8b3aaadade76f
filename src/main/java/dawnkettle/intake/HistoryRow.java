package dawnkettle.intake;

import dawnkettle.book.Admission;
import dawnkettle.measure.Mass;
import dawnkettle.measure.Money;
import dawnkettle.shop.Material;
import dawnkettle.stock.LotCode;
import dawnkettle.stock.Quantity;
import dawnkettle.trouble.Place;
import dawnkettle.trouble.Problem;
import dawnkettle.trouble.Table;
import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Currency;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** One row of history by its columns. A bad cell is noted, makes the row bad, and has a stand-in for its value. */
final class HistoryRow {
    private static final LotCode NO_LOT = new LotCode("000000-XX00");
    private static final int MOST_PACKS = 1_000_000;

    private final List<String> columns;
    private final Table.Row row;
    private final List<Problem> problems;
    private boolean bad;

    HistoryRow(List<String> columns, Table.Row row, List<Problem> problems) {
        this.columns = columns;
        this.row = row;
        this.problems = problems;
    }

    boolean isBad() {
        return bad;
    }

    String text(String column) {
        return row.cells().get(columns.indexOf(column)).text();
    }

    /** A code that {@code find} knows. */
    <T> Optional<T> known(String column, Function<String, Optional<T>> find, String remedy) {
        Optional<T> found = find.apply(text(column));
        if (found.isEmpty()) note(column, "is not known", remedy);
        return found;
    }

    String name(String column) {
        if (text(column).isEmpty()) note(column, "is no name", "write the code");
        return text(column);
    }

    LocalDate day(String column) {
        return read(column, LocalDate::parse, LocalDate.EPOCH, "is not a date", "write it as 2026-11-25");
    }

    LotCode lot(String column) {
        return read(
                column,
                HistoryRow::lotCode,
                NO_LOT,
                "is not a lot code",
                "write it as 261125-FI03: day, recipe's mark, number");
    }

    private static LotCode lotCode(String text) {
        LotCode lot = new LotCode(text);
        lot.productionDate();
        return lot;
    }

    /** A count of at least one. */
    int count(String column) {
        return read(
                column,
                text -> {
                    int count = Integer.parseInt(text);
                    if (count < 1 || count > MOST_PACKS) throw new IllegalArgumentException();
                    return count;
                },
                1,
                "is not a count",
                "write a whole number from 1 to " + MOST_PACKS);
    }

    Mass kilograms(String column) {
        return read(
                column,
                text -> {
                    Mass mass = Mass.kilograms(new BigDecimal(text));
                    if (mass.isZero()) throw new IllegalArgumentException();
                    return mass;
                },
                Mass.ZERO,
                "is not a mass",
                "write kilograms above 0, as 27.5");
    }

    Quantity units(String column, Material.Unit unit) {
        return read(
                column,
                text -> {
                    BigDecimal units = new BigDecimal(text);
                    return switch (unit) {
                        case KILOGRAM -> Quantity.of(Mass.kilograms(units));
                        case LITRE -> new Quantity(units.movePointRight(3).longValueExact(), unit);
                        case PIECE -> Quantity.pieces(units.longValueExact());
                    };
                },
                new Quantity(0, unit),
                "is not a quantity",
                "write " + unit.name().toLowerCase(java.util.Locale.ROOT) + "s, 0 or more");
    }

    Money money(String column, Currency currency) {
        return read(
                column,
                text -> {
                    Money money = Money.of(new BigDecimal(text), currency);
                    if (money.isNegative()) throw new IllegalArgumentException();
                    return money;
                },
                Money.zero(currency),
                "is not an amount",
                "write it in " + currency.getCurrencyCode() + " with at most " + currency.getDefaultFractionDigits()
                        + " decimals, 0 or more");
    }

    private <T> T read(String column, Function<String, T> parse, T standIn, String what, String remedy) {
        try {
            return parse.apply(text(column));
        } catch (IllegalArgumentException | ArithmeticException | DateTimeException unreadable) {
            note(column, what, remedy);
            return standIn;
        }
    }

    /** Says of a cell what is wrong with it. */
    void note(String column, String what, String remedy) {
        Place place = row.cells().get(columns.indexOf(column)).place();
        problems.add(new Problem(place, column + " \"" + Admission.quotable(text(column)) + "\" " + what, remedy));
        bad = true;
    }
}

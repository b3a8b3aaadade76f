package dawnkettle.store;

import dawnkettle.measure.Celsius;
import dawnkettle.measure.Mass;
import dawnkettle.stock.LotCode;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Locale;
import java.util.Optional;

/** One row of an answer, its columns by name in the shop's types. */
final class Row {
    private final ResultSet results;

    Row(ResultSet results) {
        this.results = results;
    }

    /** Makes a value of a row. */
    interface Reader<T> {
        T read(Row row) throws SQLException;
    }

    String text(String column) throws SQLException {
        return results.getString(column);
    }

    Optional<String> findText(String column) throws SQLException {
        return Optional.ofNullable(results.getString(column));
    }

    int whole(String column) throws SQLException {
        return Math.toIntExact(results.getLong(column));
    }

    long number(String column) throws SQLException {
        return results.getLong(column);
    }

    boolean flag(String column) throws SQLException {
        return results.getLong(column) != 0;
    }

    byte[] bytes(String column) throws SQLException {
        return results.getBytes(column);
    }

    Instant instant(String column) throws SQLException {
        return Instant.ofEpochMilli(results.getLong(column));
    }

    Optional<Instant> findInstant(String column) throws SQLException {
        long millis = results.getLong(column);
        return results.wasNull() ? Optional.empty() : Optional.of(Instant.ofEpochMilli(millis));
    }

    LocalDate day(String column) throws SQLException {
        return LocalDate.parse(results.getString(column));
    }

    Optional<LocalDate> findDay(String column) throws SQLException {
        return findText(column).map(LocalDate::parse);
    }

    Mass mass(String column) throws SQLException {
        return Mass.milligrams(results.getLong(column));
    }

    Celsius celsius(String column) throws SQLException {
        return Celsius.tenths(whole(column));
    }

    LotCode lot(String column) throws SQLException {
        return new LotCode(results.getString(column));
    }

    <E extends Enum<E>> E word(String column, Class<E> of) throws SQLException {
        return Enum.valueOf(
                of, results.getString(column).toUpperCase(Locale.ROOT).replace('-', '_'));
    }
}

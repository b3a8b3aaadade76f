package dawnkettle.conf;

import dawnkettle.shop.Rate;
import java.util.Currency;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reads {@code rates.csv}: wages, energy and the like that changed on a day. The file may be left out. */
final class ReadRates {
    static final String FILE = "rates.csv";
    static final List<String> COLUMNS = List.of("rate", "amount", "from");

    private final Currency currency;
    private final Map<String, Integer> lines = new HashMap<>();

    ReadRates(Currency currency) {
        this.currency = currency;
    }

    List<Rate> read(Rows rows) {
        return rows.cells().stream().flatMap(row -> one(row).stream()).toList();
    }

    private Optional<Rate> one(Cells row) {
        int before = row.problems().count();
        Rate.Kind kind = row.in("rate").oneOf(Rate.Kind.class);
        var amount = row.in("amount").money(currency);
        Written from = row.in("from");
        var day = from.date();
        if (row.problems().count() > before) return Optional.empty();
        Integer other = lines.putIfAbsent(kind + " " + day, row.place().line());
        if (other == null) return Optional.of(new Rate(kind, amount, day));
        from.bad(0, "already has a rate of this kind in line " + other, "keep one");
        return Optional.empty();
    }
}

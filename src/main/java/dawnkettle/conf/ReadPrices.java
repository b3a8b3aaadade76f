package dawnkettle.conf;

import dawnkettle.shop.ListPrice;
import java.util.Currency;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reads {@code prices.csv}: what differs from the everyday prices, list by list and from a day on. */
final class ReadPrices {
    static final String FILE = "prices.csv";
    static final List<String> COLUMNS = List.of("price_list", "product", "price", "from");

    /** The list that every product has its price on, in {@code products.csv}. */
    static final String EVERYDAY = "everyday";

    private final Known known;
    private final Currency currency;
    private final Map<String, Integer> lines = new HashMap<>();

    ReadPrices(Known known, Currency currency) {
        this.known = known;
        this.currency = currency;
    }

    List<ListPrice> read(Rows rows) {
        if (!rows.whole()) known.priceLists.notWhole();
        known.priceLists.admit(EVERYDAY);
        return rows.cells().stream().flatMap(row -> one(row).stream()).toList();
    }

    private Optional<ListPrice> one(Cells row) {
        int before = row.problems().count();
        String list = known.priceLists.admit(row.in("price_list"));
        String product = known.products.refer(row.in("product"));
        var price = row.in("price").money(currency);
        Written from = row.in("from");
        var day = from.date();
        Integer other =
                lines.putIfAbsent(list + " " + product + " " + day, row.place().line());
        if (other != null && row.problems().count() == before)
            from.bad(
                    0,
                    "already has a price of \"" + product + "\" on list \"" + list + "\" in line " + other,
                    "keep one");
        if (row.problems().count() > before) return Optional.empty();
        return Optional.of(new ListPrice(list, product, price, day));
    }
}

package dawnkettle.stock;

import dawnkettle.book.Admission;
import dawnkettle.shop.Shop;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Where a record is written down: of which shop, when, and beside which lots. */
public record Desk(Shop shop, Instant now, KnownLots lots) {
    private static final DateTimeFormatter LOCAL = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT);

    ZoneId zone() {
        return shop.house().zone();
    }

    LocalDate today() {
        return LocalDate.ofInstant(now, zone());
    }

    Admission admission() {
        return new Admission(shop, today());
    }

    /** An instant as the shop's clock shows it. */
    String local(Instant instant) {
        return LOCAL.format(instant.atZone(zone()));
    }

    /** A fact with its two times. */
    Recorded write(Fact fact, Instant happenedAt) {
        return new Recorded(fact, happenedAt, now, "command line " + now);
    }
}

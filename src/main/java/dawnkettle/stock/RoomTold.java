package dawnkettle.stock;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Says in a sentence who is away or what is down, in a record and on a plan. */
public final class RoomTold {
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);

    private final ZoneId zone;

    public RoomTold(ZoneId zone) {
        this.zone = zone;
    }

    String of(Fact fact) {
        if (fact instanceof Fact.Away f)
            return away(f.halfHands(), f.from(), f.until()) + " on " + f.productionDate() + because(f.why())
                    + "; the day is planned again without";
        if (fact instanceof Fact.Down f)
            return down(f.station(), f.from(), f.until()) + " on " + f.productionDate() + because(f.why())
                    + "; the day is planned again without it, and when it works again write: record up " + f.station();
        Fact.Up f = (Fact.Up) fact;
        return "station " + f.station() + " works again from " + time(f.from()) + " on " + f.productionDate();
    }

    /** Who is away, as on the plan. */
    public String away(int halfHands, Instant from, Instant until) {
        String people = BigDecimal.valueOf(halfHands)
                .divide(BigDecimal.valueOf(2))
                .stripTrailingZeros()
                .toPlainString();
        return people + (halfHands > 2 ? " hands are" : " hand is") + " away from " + time(from) + " to " + time(until);
    }

    /** What is down, as on the plan. */
    public String down(String station, Instant from, Instant until) {
        return "station " + station + " is down from " + time(from) + " to " + time(until);
    }

    private String time(Instant instant) {
        return TIME.format(instant.atZone(zone));
    }

    private static String because(String why) {
        return why.isEmpty() ? "" : " (" + why + ")";
    }
}

package dawnkettle.stock;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Who is away and what is down on a making day, by its records. Who is away adds up. A station that was said to be down from
 * the same time twice is down until the later record says, and one that is up again is down no longer.
 */
public record Missing(List<Fact.Away> away, List<Fact.Down> down) {
    public Missing {
        away = List.copyOf(away);
        down = List.copyOf(down);
    }

    /** @param records of one making day, those that count, in the order in which they were written down */
    public static Missing of(List<Recorded> records) {
        List<Fact.Away> away = new ArrayList<>();
        Map<String, Fact.Down> down = new LinkedHashMap<>();
        for (Recorded one : records) {
            if (one.fact() instanceof Fact.Away fact) away.add(fact);
            if (one.fact() instanceof Fact.Down fact) down.put(fact.station() + " " + fact.from(), fact);
            if (one.fact() instanceof Fact.Up fact) down.replaceAll((key, stands) -> ended(stands, fact));
        }
        return new Missing(away, List.copyOf(down.values()));
    }

    private static Fact.Down ended(Fact.Down down, Fact.Up up) {
        boolean ends = down.station().equals(up.station())
                && up.from().isAfter(down.from())
                && up.from().isBefore(down.until());
        return ends ? until(down, up.from()) : down;
    }

    private static Fact.Down until(Fact.Down down, Instant until) {
        return new Fact.Down(down.productionDate(), down.station(), down.from(), until, down.why());
    }
}

package dawnkettle.plan;

import dawnkettle.stock.LotCode;
import java.time.LocalDate;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Ids and lot codes of a day's batches: in the order of their first steps, those of a plan before kept. */
final class Names {
    private final Map<Brew, String> ids = new HashMap<>();
    private final Map<Brew, LotCode> lots = new HashMap<>();

    /** Keeps what a batch was called before. */
    void keep(Brew brew, String id, LotCode lot) {
        ids.put(brew, id);
        lots.put(brew, lot);
    }

    /** Names all that have no name yet, in the order given. */
    void name(List<Brew> brews, LocalDate day) {
        int next = highest(ids.values()) + 1;
        for (Brew brew : brews) {
            if (ids.containsKey(brew)) continue;
            ids.put(brew, String.format(Locale.ROOT, "B%02d", next++));
            lots.put(brew, LotCode.of(day, brew.recipe.mark(), nextLot(brew.recipe.mark())));
        }
    }

    private int nextLot(String mark) {
        return lots.values().stream()
                        .map(LotCode::text)
                        .filter(lot -> lot.startsWith(mark, 7))
                        .mapToInt(lot -> Integer.parseInt(lot.substring(9)))
                        .max()
                        .orElse(0)
                + 1;
    }

    private static int highest(Collection<String> ids) {
        return ids.stream()
                .mapToInt(id -> Integer.parseInt(id.substring(1)))
                .max()
                .orElse(0);
    }

    String id(Brew brew) {
        return ids.get(brew);
    }

    LotCode lot(Brew brew) {
        return lots.get(brew);
    }
}

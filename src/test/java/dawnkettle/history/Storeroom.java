package dawnkettle.history;

import dawnkettle.shop.Material;
import dawnkettle.shop.ShopCalendar;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** One material as it is bought in even lots and used up, the oldest first. */
final class Storeroom {
    final List<Bought> lots = new ArrayList<>();
    /** What each making day took of which lot, in grams. */
    final Map<LocalDate, Map<Bought, Long>> taken = new TreeMap<>();

    /** On which day a lot was empty. */
    final Map<Bought, LocalDate> emptied = new LinkedHashMap<>();

    private final Material material;

    /**
     * How it is bought.
     *
     * @param packs of the supplier's in each lot
     * @param leastKilograms that must be left over for the days after; the next lot comes before
     * @param lastKilograms about what is left of the last lot but one when all is told
     */
    record Habit(int packs, int leastKilograms, int lastKilograms) {}

    /** @param use by making day, in grams; taken the evening before */
    Storeroom(Material material, Habit habit, Map<LocalDate, Long> use, ShopCalendar calendar) {
        this.material = material;
        long lot = 1_000L * habit.packs() * material.packSize();
        long all = use.values().stream().mapToLong(Long::longValue).sum();
        long first = (all + 1_000L * habit.lastKilograms()) % lot;
        buy(Span.FIRST.minusDays(4), (int) (first / (1_000L * material.packSize())) + 1);
        for (Map.Entry<LocalDate, Long> day : use.entrySet()) {
            LocalDate before = calendar.previous(day.getKey());
            while (left() - day.getValue() < 1_000L * habit.leastKilograms()) buy(before, habit.packs());
            taken.put(day.getKey(), take(day.getKey(), day.getValue()));
        }
    }

    private void buy(LocalDate on, int packs) {
        double dearness =
                (isOfBeans() ? Span.beanPrice(on) : 1) * new Chance("price " + material.code(), on).around(0.002);
        if (!lots.isEmpty() && !lots.get(lots.size() - 1).on.isBefore(on))
            throw new IllegalStateException("two lots of " + material.code() + " on " + on);
        lots.add(Bought.of(material, on, packs, dearness));
    }

    private Map<Bought, Long> take(LocalDate day, long wanted) {
        Map<Bought, Long> parts = new LinkedHashMap<>();
        long still = wanted;
        for (Bought lot : lots) {
            if (still == 0 || lot.left() == 0) continue;
            long part = lot.take(still);
            still -= part;
            parts.put(lot, part);
            if (lot.left() == 0) emptied.put(lot, day);
        }
        if (still > 0) throw new IllegalStateException(still + " g of " + material.code() + " missing on " + day);
        return parts;
    }

    boolean isOfBeans() {
        return material.kind() == Material.Kind.BEANS;
    }

    private long left() {
        return lots.stream().mapToLong(Bought::left).sum();
    }
}

package dawnkettle.history;

import dawnkettle.shop.Shop;
import dawnkettle.shop.Tub;
import java.time.LocalDate;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Which tub took how much of which lot of beans for which making day. */
final class Tubs {
    /** A tub is filled in these steps. */
    private static final long STEP_GRAMS = 5_000;

    final List<Filled> filled = new ArrayList<>();
    private final Map<LocalDate, Deque<Tub>> free = new TreeMap<>();
    private final Shop shop;

    /** One lot in a tub. */
    record Filled(LocalDate making, String tub, Bought lot, long grams) {}

    Tubs(Shop shop) {
        this.shop = shop;
    }

    /** All tubs of a day for beans of one soak group. */
    void fill(LocalDate making, Map<Bought, Long> beans) {
        Deque<Tub> tubs = free.computeIfAbsent(
                making, day -> new ArrayDeque<>(shop.floor().tubs()));
        long all = beans.values().stream().mapToLong(Long::longValue).sum();
        long most = tubs.element().mostBeans().inGrams();
        long count = (all + most - 1) / most;
        long steps = all / STEP_GRAMS;
        Deque<Map.Entry<Bought, Long>> lots = new ArrayDeque<>();
        beans.forEach((lot, grams) -> lots.add(Map.entry(lot, grams)));
        for (long tub = 0; tub < count; tub++) {
            long grams = (steps / count + (tub < steps % count ? 1 : 0)) * STEP_GRAMS;
            pour(making, tubs.remove().code(), grams, lots);
        }
    }

    private void pour(LocalDate making, String tub, long wanted, Deque<Map.Entry<Bought, Long>> lots) {
        long still = wanted;
        while (still > 0) {
            Map.Entry<Bought, Long> lot = lots.remove();
            long part = Math.min(still, lot.getValue());
            filled.add(new Filled(making, tub, lot.getKey(), part));
            still -= part;
            if (part < lot.getValue()) lots.addFirst(Map.entry(lot.getKey(), lot.getValue() - part));
        }
    }
}

package dawnkettle.cost;

import dawnkettle.cost.MadeDay.Made;
import dawnkettle.cost.MadeDay.Used;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Prices what days used, day by day, at what was paid for the lots it came from: the lot that came first is used first, and
 * a count says what was left. Where more is used than came in, the last lot's price goes on; where none came, nothing is
 * known.
 */
public final class LotPrices {
    private final Map<String, List<Lot>> lots = new TreeMap<>();
    private final List<Receipt> coming;
    private final List<Receipt.Counted> counts;

    /** A lot as it goes down. */
    private static final class Lot {
        private final Receipt receipt;
        private BigDecimal left;

        Lot(Receipt receipt) {
            this.receipt = receipt;
            this.left = receipt.units();
        }
    }

    public LotPrices(List<Receipt> receipts, List<Receipt.Counted> counts) {
        this.coming = new ArrayList<>(
                receipts.stream().sorted(Comparator.comparing(Receipt::date)).toList());
        this.counts = new ArrayList<>(counts.stream()
                .sorted(Comparator.comparing(Receipt.Counted::date))
                .toList());
    }

    /** @param days the oldest first; each once */
    public List<MadeDay> price(List<MadeDay> days) {
        return days.stream().map(this::price).toList();
    }

    private MadeDay price(MadeDay day) {
        bringIn(day.date());
        count(day.date());
        Map<String, BigDecimal> units = new TreeMap<>();
        for (Made made : day.made())
            for (Used used : made.used()) units.merge(used.material(), used.units(), BigDecimal::add);
        Map<String, BigDecimal> each = new TreeMap<>();
        units.forEach((material, all) -> {
            if (lots.containsKey(material) && all.signum() > 0)
                each.put(material, take(material, all).divide(all, UnitPrice.CARRIED, RoundingMode.HALF_EVEN));
        });
        return new MadeDay(
                day.date(),
                day.made().stream().map(made -> priced(made, each)).toList(),
                day.beans(),
                day.water(),
                day.routes());
    }

    private void bringIn(LocalDate date) {
        while (!coming.isEmpty() && !coming.get(0).date().isAfter(date)) {
            Receipt receipt = coming.remove(0);
            lots.computeIfAbsent(receipt.material(), any -> new ArrayList<>()).add(new Lot(receipt));
        }
    }

    /** Counts of the days before: a day's own was made when the day was over. */
    private void count(LocalDate date) {
        while (!counts.isEmpty() && counts.get(0).date().isBefore(date)) {
            Receipt.Counted count = counts.remove(0);
            for (Lot lot : lots.getOrDefault(count.material(), List.of()))
                if (lot.receipt.lot().equals(count.lot())) lot.left = count.left();
        }
    }

    /** What {@code units} cost by the lots they came from. */
    private BigDecimal take(String material, BigDecimal units) {
        BigDecimal minor = BigDecimal.ZERO;
        BigDecimal still = units;
        List<Lot> own = lots.get(material);
        for (Lot lot : own) {
            BigDecimal taken = still.min(lot.left);
            lot.left = lot.left.subtract(taken);
            still = still.subtract(taken);
            minor = minor.add(taken.multiply(lot.receipt.each()));
        }
        return minor.add(still.multiply(own.get(own.size() - 1).receipt.each()));
    }

    private static Made priced(Made made, Map<String, BigDecimal> each) {
        List<Used> used = made.used().stream()
                .map(one -> each.containsKey(one.material())
                        ? new Used(
                                one.material(),
                                one.units(),
                                java.util.Optional.of(one.units().multiply(each.get(one.material()))))
                        : one)
                .toList();
        return new Made(made.product(), made.packs(), made.mass(), made.beans(), made.handSeconds(), used, made.bill());
    }
}

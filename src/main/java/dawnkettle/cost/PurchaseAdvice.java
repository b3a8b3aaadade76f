package dawnkettle.cost;

import dawnkettle.shop.Material;
import dawnkettle.shop.Shop;
import dawnkettle.stock.MaterialBook;
import dawnkettle.stock.MaterialBook.Cause;
import dawnkettle.stock.MaterialBook.Holding;
import dawnkettle.stock.MaterialBook.Move;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Which material to order by when, how much and why: from what the shop used in the last weeks, the days it takes to come, a
 * safety stock, and the supplier's packs. It orders nothing.
 */
public final class PurchaseAdvice {
    /** Eight weeks: long enough for a mean, short enough to follow the shop (common practice, no source). */
    private static final int WEEKS_LOOKED_BACK = 8;

    private static final int DAYS_A_WEEK = 7;
    private static final int DAYS_A_YEAR = 365;

    /** Fewer days of use tell nothing of how it varies (common practice, no source). */
    private static final int FEWEST_DAYS = 5;

    private static final MathContext FINE = MathContext.DECIMAL64;

    private final Shop shop;
    private final MaterialBook book;
    private final Buying buying;
    private final LocalDate today;

    public PurchaseAdvice(Shop shop, MaterialBook book, Buying buying, LocalDate today) {
        this.shop = shop;
        this.book = book;
        this.buying = buying;
        this.today = today;
    }

    /**
     * What is known of a material's use, in its own unit.
     *
     * @param aDay mean of all days, closed ones with them
     * @param deviation of a day
     */
    public record Use(BigDecimal aDay, BigDecimal deviation) {
        static final Use NONE = new Use(BigDecimal.ZERO, BigDecimal.ZERO);
    }

    /**
     * One material.
     *
     * @param left in its own unit
     * @param point stock at which to order
     * @param safety the part of that which only chance needs
     * @param orderBy the last day to order; empty where nothing is used and the owner's own level is not reached
     * @param packs supplier's packs to order then
     */
    public record Line(
            Material material,
            BigDecimal left,
            Use use,
            BigDecimal point,
            BigDecimal safety,
            Optional<LocalDate> orderBy,
            int packs) {

        public boolean isDueBy(LocalDate day) {
            return orderBy.filter(by -> !by.isAfter(day)).isPresent();
        }

        /** What is left; how much to order by when, and why; in one sentence. */
        public String said() {
            String unit = unit(material);
            String why = use.aDay().signum() == 0
                    ? "no use written down, your own level is " + material.reorder()
                    : text(use.aDay()) + " a day used, " + material.leadDays() + " days to come, " + text(safety)
                            + " for safety";
            String what = orderBy.map(day -> "order " + packs + " x " + material.packSize() + " " + unit + " by " + day)
                    .orElse("nothing to order");
            return material.name() + ": " + text(left) + " " + unit + " left; " + what + " (" + why + ")";
        }

        private static String unit(Material material) {
            return switch (material.unit()) {
                case KILOGRAM -> "kg";
                case LITRE -> "l";
                case PIECE -> "pieces";
            };
        }

        private static String text(BigDecimal amount) {
            int places = amount.compareTo(BigDecimal.TEN) < 0 ? 1 : 0;
            return amount.setScale(places, RoundingMode.HALF_UP).toPlainString();
        }
    }

    /** Every material that was ever booked in, the most urgent first; of the others nobody knows. */
    public List<Line> lines() {
        Map<String, Long> left = new HashMap<>();
        for (Holding lot : book.holdings()) left.merge(lot.material(), Math.max(0, lot.left()), Long::sum);
        Map<String, Use> uses = uses();
        List<Line> lines = new ArrayList<>();
        for (Material material : shop.materials())
            if (left.containsKey(material.code()))
                lines.add(line(
                        material,
                        units(material, left.get(material.code())),
                        uses.getOrDefault(material.code(), Use.NONE)));
        lines.sort(java.util.Comparator.comparing((Line line) -> line.orderBy().orElse(LocalDate.MAX)));
        return lines;
    }

    private static BigDecimal units(Material material, long smallest) {
        return switch (material.unit()) {
            case KILOGRAM -> BigDecimal.valueOf(smallest, 6);
            case LITRE -> BigDecimal.valueOf(smallest, 3);
            case PIECE -> BigDecimal.valueOf(smallest);
        };
    }

    private Line line(Material material, BigDecimal left, Use use) {
        BigDecimal safety =
                OrderQuantity.safety(use.deviation(), material.leadDays(), OrderQuantity.NINETY_FIVE_PERCENT);
        BigDecimal point = OrderQuantity.reorderPoint(use.aDay(), material.leadDays(), safety)
                .max(BigDecimal.valueOf(material.reorder()));
        return new Line(
                material, left, use, point, safety, orderBy(left, use, point), packs(material, left, use, point));
    }

    private Optional<LocalDate> orderBy(BigDecimal left, Use use, BigDecimal point) {
        if (left.compareTo(point) <= 0) return Optional.of(today);
        if (use.aDay().signum() == 0) return Optional.empty();
        long days = left.subtract(point)
                .divide(use.aDay(), 0, RoundingMode.DOWN)
                .min(BigDecimal.valueOf(DAYS_A_YEAR))
                .longValue();
        return Optional.of(today.plusDays(days));
    }

    /** At least enough to come above the point again, in whole packs. */
    private int packs(Material material, BigDecimal left, Use use, BigDecimal point) {
        BigDecimal most = use.aDay().multiply(BigDecimal.valueOf(buying.mostDays()));
        BigDecimal wanted = economic(material, use)
                .orElse(use.aDay().multiply(BigDecimal.valueOf(buying.coverDays())))
                .min(most)
                .max(point.subtract(left));
        return Math.max(
                1,
                wanted.divide(BigDecimal.valueOf(material.packSize()), 0, RoundingMode.UP)
                        .intValue());
    }

    private Optional<BigDecimal> economic(Material material, Use use) {
        BigDecimal price =
                BigDecimal.valueOf(material.price().minor()).divide(BigDecimal.valueOf(material.packSize()), FINE);
        BigDecimal holding = price.multiply(BigDecimal.valueOf(buying.holdingPercent(), 2));
        if (buying.orderCost().isEmpty() || holding.signum() == 0) return Optional.empty();
        return Optional.of(OrderQuantity.economic(
                use.aDay().multiply(BigDecimal.valueOf(DAYS_A_YEAR)),
                BigDecimal.valueOf(buying.orderCost().get().minor()),
                holding));
    }

    /** Day by day since the first of them, at most eight weeks; closed days used nothing, and count. */
    private Map<String, Use> uses() {
        Map<String, Map<LocalDate, Long>> byDay = new HashMap<>();
        Map<String, String> materials = new HashMap<>();
        book.holdings().forEach(lot -> materials.put(lot.lot(), lot.material()));
        LocalDate from = today.minusWeeks(WEEKS_LOOKED_BACK);
        for (Move move : book.moves()) {
            LocalDate day = LocalDate.ofInstant(move.at(), shop.house().zone());
            if (isUse(move.cause()) && !day.isBefore(from) && day.isBefore(today))
                byDay.computeIfAbsent(materials.get(move.lot()), any -> new HashMap<>())
                        .merge(day, -move.change(), Long::sum);
        }
        Map<String, Use> uses = new HashMap<>();
        byDay.forEach((material, days) ->
                shop.findMaterial(material).ifPresent(known -> uses.put(material, use(known, days))));
        return uses;
    }

    private static boolean isUse(Cause cause) {
        return cause != Cause.CAME && cause != Cause.COUNTED && cause != Cause.UNEXPLAINED;
    }

    private Use use(Material material, Map<LocalDate, Long> days) {
        LocalDate first = days.keySet().stream().min(LocalDate::compareTo).orElseThrow();
        long count = Math.max(DAYS_A_WEEK, ChronoUnit.DAYS.between(first, today));
        BigDecimal n = BigDecimal.valueOf(count);
        BigDecimal sum = BigDecimal.ZERO;
        BigDecimal squares = BigDecimal.ZERO;
        for (long used : days.values()) {
            BigDecimal units = units(material, used);
            sum = sum.add(units);
            squares = squares.add(units.multiply(units));
        }
        BigDecimal mean = sum.divide(n, FINE);
        BigDecimal variance = squares.subtract(sum.multiply(mean)).divide(n.subtract(BigDecimal.ONE), FINE);
        boolean isKnown = days.size() >= FEWEST_DAYS && variance.signum() > 0;
        return new Use(mean, isKnown ? variance.sqrt(FINE) : BigDecimal.ZERO);
    }
}

package dawnkettle.stock;

import dawnkettle.shop.Material;
import dawnkettle.shop.Product;
import dawnkettle.shop.Shop;
import dawnkettle.stock.MaterialBook.Cause;
import dawnkettle.stock.MaterialBook.Move;
import dawnkettle.stock.Web.Batch;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * Accounts for all there was of every lot of a recall: what came in is what went out and what is here.
 *
 * @param balances one for the mass of each batch, one for the packs of each of its products, one for a bought lot
 */
public record Reconciliation(List<Balance> balances) {
    private static final String DIFFERENCE = "difference";

    public Reconciliation {
        balances = List.copyOf(balances);
    }

    /**
     * In and out of one thing.
     *
     * @param unit milligrams, millilitres, pieces or packs
     */
    public record Balance(String of, String unit, long in, List<Part> parts) {
        public Balance {
            parts = List.copyOf(parts);
        }

        public long accounted() {
            return parts.stream().mapToLong(Part::amount).sum();
        }

        public boolean isWhole() {
            return in == accounted();
        }
    }

    /** Where some of it is. */
    public record Part(String where, long amount) {}

    public static Reconciliation of(Recall recall, Web web, MaterialBook materials, Shop shop) {
        List<Balance> balances = new ArrayList<>();
        recall.boughtLot().ifPresent(lot -> balances.add(bought(lot, materials)));
        for (Batch batch : recall.batches(web)) {
            balances.add(mass(batch, web, shop));
            batch.packs().forEach((product, state) -> balances.add(packs(batch.lot(), product, state)));
        }
        return new Reconciliation(balances);
    }

    /** Of a bought lot: what came in, with what counts changed, is what was taken, lost and is left. */
    public static Balance bought(String lot, MaterialBook materials) {
        long in = 0;
        long[] out = new long[Cause.values().length];
        for (Move move : materials.moves()) {
            if (!move.lot().equals(lot)) continue;
            if (isIn(move.cause())) in += move.change();
            else out[move.cause().ordinal()] -= move.change();
        }
        List<Part> parts = new ArrayList<>();
        for (Cause cause : Cause.values())
            if (out[cause.ordinal()] != 0) parts.add(new Part(word(cause), out[cause.ordinal()]));
        var holding = materials.find(lot);
        holding.ifPresent(left -> parts.add(new Part("left here", left.left())));
        String unit = holding.map(left -> unit(left.unit())).orElse("mg");
        return new Balance("bought lot " + lot, unit, in, parts);
    }

    private static boolean isIn(Cause cause) {
        return cause == Cause.CAME || cause == Cause.COUNTED || cause == Cause.UNEXPLAINED;
    }

    private static String word(Cause cause) {
        return switch (cause) {
            case SOAKED -> "in tubs";
            case DOSED -> "coagulant in batches";
            case ADDED -> "added to batches";
            case PACKED -> "packed with batches";
            case USED -> "used by hand";
            default -> "lost";
        };
    }

    static String unit(Material.Unit unit) {
        return switch (unit) {
            case KILOGRAM -> "mg";
            case LITRE -> "ml";
            case PIECE -> "pieces";
        };
    }

    /** Of a batch: what it gave is in packs, in other batches, thrown away or cut off. */
    public static Balance mass(Batch batch, Web web, Shop shop) {
        List<Part> parts = new ArrayList<>();
        for (Map.Entry<String, PackBook.State> packs : batch.packs().entrySet())
            shop.findProduct(packs.getKey())
                    .map(Product::net)
                    .ifPresent(net -> parts.add(new Part(
                            "filled as " + packs.getKey(),
                            net.times(packs.getValue().in().filled()).milligrams())));
        web.childrenOf(batch.lot())
                .forEach(feed -> parts.add(
                        new Part("made into " + feed.into(), feed.mass().milligrams())));
        if (!batch.gave().wasted().isZero())
            parts.add(new Part("thrown away", batch.gave().wasted().milligrams()));
        long in = batch.gave().product().milligrams();
        long rest = in - parts.stream().mapToLong(Part::amount).sum();
        if (rest > 0) parts.add(new Part("trimmed, and what fills no pack", rest));
        return new Balance("mass of " + batch.lot(), "mg", in, parts);
    }

    /** Of the packs of a product of a lot. */
    public static Balance packs(LotCode lot, String product, PackBook.State state) {
        List<Part> parts = new ArrayList<>();
        add(parts, "with customers", state.withCustomers());
        add(parts, "came back, destroyed", state.back().destroyed());
        add(parts, "came back, here", state.back().returned() - state.back().destroyed());
        add(parts, "sold over the counter", state.out().sold());
        add(parts, "lost", state.out().lost());
        add(parts, "destroyed", state.out().destroyed());
        add(parts, "here, promised", state.here().allocated());
        add(parts, "here, free", state.here().inStock());
        return new Balance(product + " of " + lot, "packs", state.in().all(), parts);
    }

    private static void add(List<Part> parts, String where, long amount) {
        if (amount != 0) parts.add(new Part(where, amount));
    }

    public boolean isWhole() {
        return balances.stream().allMatch(Balance::isWhole);
    }

    /** What could not be accounted for, each in words. */
    public List<String> missing() {
        return balances.stream()
                .filter(balance -> !balance.isWhole())
                .map(balance -> balance.of() + ": " + balance.in() + " " + balance.unit() + " in, "
                        + balance.accounted() + " accounted for; the " + DIFFERENCE + " is "
                        + (balance.in() - balance.accounted()))
                .toList();
    }

    /** The share of the mass that is accounted for, in percent to one place; what is found twice counts against it. */
    public BigDecimal percentOfMass() {
        long all = 0;
        long wrong = 0;
        for (Balance balance : balances) {
            if (!balance.unit().equals("mg")) continue;
            all += balance.in();
            wrong += Math.abs(balance.in() - balance.accounted());
        }
        if (all == 0) return new BigDecimal("100.0");
        return BigDecimal.valueOf(Math.max(0, all - wrong))
                .multiply(BigDecimal.valueOf(100))
                .divide(BigDecimal.valueOf(all), 1, RoundingMode.DOWN);
    }
}

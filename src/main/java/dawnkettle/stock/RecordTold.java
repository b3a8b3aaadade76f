package dawnkettle.stock;

import dawnkettle.measure.Mass;
import dawnkettle.shop.Shop;
import java.math.BigDecimal;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Says in a sentence what was written down, as the ledger took it. */
public final class RecordTold {
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT);

    private final Shop shop;

    public RecordTold(Shop shop) {
        this.shop = shop;
    }

    public String of(Recorded recorded) {
        return "Written down for "
                + TIME.format(recorded.happenedAt().atZone(shop.house().zone())) + ": "
                + said(recorded.fact()) + ".";
    }

    /** What all receipts of the same lot come to, where there were others. */
    public static String allOf(Recorded receipt, KnownLots lots) {
        Fact.Received came = (Fact.Received) receipt.fact();
        Quantity all = lots.findBought(came.lot()).orElseThrow().received();
        return all.equals(came.quantity()) ? "" : " With what came before it is " + text(all) + ".";
    }

    private String said(Fact fact) {
        return switch (fact.kind()) {
            case AWAY, DOWN -> new RoomTold(shop.house().zone()).of(fact);
            default -> isOfBatch(fact) ? batch(fact) : goods(fact);
        };
    }

    private static boolean isOfBatch(Fact fact) {
        return switch (fact.kind()) {
            case YIELDED, COOKED, COOLED -> true;
            default -> fact instanceof Fact.LostBatch;
        };
    }

    private static String batch(Fact fact) {
        if (fact instanceof Fact.Yielded f)
            return "lot " + f.lot() + " gave " + text(f.product()) + " from " + text(f.input());
        if (fact instanceof Fact.Cooked f)
            return "lot " + f.lot() + " reached " + f.reached() + " in the cooker for " + f.minutes() + " minutes";
        if (fact instanceof Fact.Cooled f) return "lot " + f.lot() + " had come down to " + f.reached();
        Fact.LostBatch f = (Fact.LostBatch) fact;
        return "the whole lot " + f.lot() + " is lost (" + f.why() + "); nothing of it is planned any more";
    }

    private static String goods(Fact fact) {
        if (fact instanceof Fact.Received f)
            return text(f.quantity()) + " " + f.material() + " came in as lot " + f.lot() + " for " + f.paid()
                    + f.bestBefore().map(day -> ", to be used until " + day).orElse("");
        if (fact instanceof Fact.CountedMaterial f)
            return text(f.left()) + " " + f.material() + " of lot " + f.lot() + " are left" + because(f.why());
        if (fact instanceof Fact.CountedPacks f)
            return f.packs() + " packs " + f.product() + " of lot " + f.lot() + " are in the cold room"
                    + because(f.why());
        if (fact instanceof Fact.LostPacks f)
            return f.packs() + " packs " + f.product() + " of lot " + f.lot() + " are lost (" + f.why() + ")";
        if (fact instanceof Fact.Sold f)
            return f.packs() + " packs " + f.product() + " of lot " + f.lot() + " were sold";
        if (!(fact instanceof Fact.Returned f)) return KeepingTold.of(fact);
        if (f.what() == Fact.Returned.What.SHORT)
            return f.count() + " packs " + f.product() + " did not get to " + f.customer() + " (" + f.why() + ")";
        return f.customer() + " gave back " + f.count() + " " + f.product()
                + (f.what() == Fact.Returned.What.CONTAINERS ? " containers" : " (" + f.why() + "), never sold again");
    }

    private static String because(String why) {
        return why.isEmpty() ? "" : " (" + why + ")";
    }

    public static String text(Quantity quantity) {
        return switch (quantity.unit()) {
            case KILOGRAM -> text(Mass.milligrams(quantity.smallest()));
            case LITRE -> plain(BigDecimal.valueOf(quantity.smallest(), 3)) + " l";
            case PIECE -> quantity.smallest() + " pieces";
        };
    }

    static String text(Mass mass) {
        return plain(BigDecimal.valueOf(mass.milligrams(), 6)) + " kg";
    }

    private static String plain(BigDecimal amount) {
        return amount.signum() == 0 ? "0" : amount.stripTrailingZeros().toPlainString();
    }
}

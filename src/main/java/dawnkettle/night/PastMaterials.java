package dawnkettle.night;

import dawnkettle.cost.LotPrices;
import dawnkettle.cost.Receipt;
import dawnkettle.shop.Material;
import dawnkettle.shop.Shop;
import dawnkettle.stock.Fact;
import dawnkettle.stock.Quantity;
import dawnkettle.stock.Recorded;
import dawnkettle.store.Ledger;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** What was bought and counted besides beans, as the ledger remembers it. */
final class PastMaterials {
    private final Ledger ledger;
    private final Shop shop;

    PastMaterials(Ledger ledger, Shop shop) {
        this.ledger = ledger;
        this.shop = shop;
    }

    /** Of which material each lot is. */
    Map<String, String> materials() {
        Map<String, String> materials = new HashMap<>();
        for (Recorded recorded : ledger.records().all(Fact.Kind.RECEIVED))
            if (recorded.fact() instanceof Fact.Received received)
                materials.putIfAbsent(received.lot(), received.material());
        return materials;
    }

    LotPrices prices() {
        List<Receipt> receipts = new ArrayList<>();
        List<Receipt.Counted> counts = new ArrayList<>();
        for (Recorded recorded : ledger.records().all(Fact.Kind.RECEIVED, Fact.Kind.COUNTED)) {
            if (recorded.fact() instanceof Fact.Received in && isPriced(in.material(), in.quantity()))
                receipts.add(new Receipt(in.material(), in.lot(), day(recorded), units(in.quantity()), in.paid()));
            if (recorded.fact() instanceof Fact.CountedMaterial count)
                counts.add(new Receipt.Counted(count.material(), count.lot(), day(recorded), units(count.left())));
        }
        return new LotPrices(receipts, counts);
    }

    /** Beans have their price by the tub they went into. */
    private boolean isPriced(String material, Quantity quantity) {
        return quantity.smallest() > 0
                && shop.findMaterial(material)
                        .filter(known -> known.kind() != Material.Kind.BEANS && known.unit() == quantity.unit())
                        .isPresent();
    }

    private static BigDecimal units(Quantity quantity) {
        return BigDecimal.valueOf(
                quantity.smallest(),
                switch (quantity.unit()) {
                    case KILOGRAM -> 6;
                    case LITRE -> 3;
                    case PIECE -> 0;
                });
    }

    private LocalDate day(Recorded recorded) {
        return recorded.happenedAt().atZone(shop.house().zone()).toLocalDate();
    }
}

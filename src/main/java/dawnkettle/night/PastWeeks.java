package dawnkettle.night;

import dawnkettle.cost.MadeDay;
import dawnkettle.cost.RecordedDay;
import dawnkettle.cost.UnitPrice;
import dawnkettle.measure.Mass;
import dawnkettle.plan.Allowances.LateDay;
import dawnkettle.shop.Material;
import dawnkettle.shop.Shop;
import dawnkettle.stock.Fact;
import dawnkettle.stock.Recorded;
import dawnkettle.store.Ledger;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** The weeks behind us, as the ledger remembers them: what was made, at what bean price, and what came late. */
public final class PastWeeks {
    private final Ledger ledger;
    private final Shop shop;
    private final Optional<PlanForm> plans;

    /** Of days that have records alone. */
    public PastWeeks(Ledger ledger, Shop shop) {
        this(ledger, shop, Optional.empty());
    }

    /** @param plans reads the plans of days for which nobody wrote down what was filled; they count as planned */
    public PastWeeks(Ledger ledger, Shop shop, PlanForm plans) {
        this(ledger, shop, Optional.of(plans));
    }

    private PastWeeks(Ledger ledger, Shop shop, Optional<PlanForm> plans) {
        this.ledger = ledger;
        this.shop = shop;
        this.plans = plans;
    }

    /**
     * Writes what is read from elsewhere into the ledger, all or nothing; what is there already is left as it is.
     *
     * @return how many records were new
     */
    public static int load(Ledger ledger, List<Recorded> facts) {
        return ledger.inTransaction(() -> {
            int fresh = 0;
            for (Recorded fact : facts) if (ledger.records().add(fact)) fresh++;
            return fresh;
        });
    }

    /** All making days, the oldest first. */
    public List<MadeDay> madeDays() {
        return madeDays(LocalDate.MIN, LocalDate.MAX);
    }

    /**
     * Making days of a stretch, the oldest first. Whatever recorded days before it used of a lot is gone; what days before
     * it used that are only planned is not looked at.
     */
    public List<MadeDay> madeDays(LocalDate fromInclusive, LocalDate untilExclusive) {
        Map<LocalDate, MadeDay> days = new TreeMap<>();
        Map<String, UnitPrice> prices = beanPrices();
        recordedDays().forEach((date, day) -> {
            if (date.isBefore(untilExclusive) && day.isWhole()) days.put(date, day.made(prices));
        });
        plans.ifPresent(form -> ledger.plans().days().stream()
                .filter(date -> isWithin(date, fromInclusive, untilExclusive) && !days.containsKey(date))
                .forEach(date -> days.put(
                        date,
                        MadeDay.of(
                                form.read(ledger.plans()
                                        .latest(date)
                                        .orElseThrow()
                                        .json()),
                                shop,
                                prices))));
        return priced(List.copyOf(days.values())).stream()
                .filter(day -> isWithin(day.date(), fromInclusive, untilExclusive))
                .toList();
    }

    /** By the lots that were used, as far as they were written down. */
    private List<MadeDay> priced(List<MadeDay> days) {
        return new PastMaterials(ledger, shop).prices().price(days);
    }

    private static boolean isWithin(LocalDate date, LocalDate fromInclusive, LocalDate untilExclusive) {
        return !date.isBefore(fromInclusive) && date.isBefore(untilExclusive);
    }

    private Map<LocalDate, RecordedDay> recordedDays() {
        Map<LocalDate, RecordedDay> days = new TreeMap<>();
        Map<String, String> materials = new PastMaterials(ledger, shop).materials();
        for (Recorded recorded : ledger.records().all(Fact.Kind.SOAKED, Fact.Kind.YIELDED, Fact.Kind.PACKED)) {
            if (recorded.fact() instanceof Fact.Soaked tub)
                day(days, tub.productionDate(), materials).add(tub);
            if (recorded.fact() instanceof Fact.Yielded batch)
                day(days, batch.lot().productionDate(), materials).add(batch);
            if (recorded.fact() instanceof Fact.Packed filled)
                day(days, filled.lot().productionDate(), materials).add(filled);
        }
        return days;
    }

    private RecordedDay day(Map<LocalDate, RecordedDay> days, LocalDate date, Map<String, String> materials) {
        return days.computeIfAbsent(date, any -> new RecordedDay(date, shop, materials));
    }

    /** What was paid for each lot of beans, of all that came of it. */
    public Map<String, UnitPrice> beanPrices() {
        Map<String, UnitPrice> prices = new HashMap<>();
        for (Recorded recorded : ledger.records().all(Fact.Kind.RECEIVED))
            if (recorded.fact() instanceof Fact.Received received && isBeans(received))
                prices.merge(
                        received.lot(),
                        new UnitPrice(
                                received.paid(),
                                Mass.milligrams(received.quantity().smallest())),
                        (one, more) -> new UnitPrice(
                                one.paid().plus(more.paid()), one.mass().plus(more.mass())));
        return prices;
    }

    private boolean isBeans(Fact.Received received) {
        return received.quantity().unit() == Material.Unit.KILOGRAM
                && received.quantity().smallest() > 0
                && shop.findMaterial(received.material())
                        .filter(material -> material.kind() == Material.Kind.BEANS)
                        .isPresent();
    }

    /**
     * What came after the close of each making day the ledger knows, for every product, the oldest first; 0 where nothing
     * did.
     */
    public List<LateDay> lateDays() {
        Map<LocalDate, Map<String, Integer>> late = new HistoryOfLateOrders(ledger, shop).packs();
        recordedDays().keySet().forEach(date -> late.computeIfAbsent(date, any -> new HashMap<>()));
        List<LateDay> days = new ArrayList<>();
        new TreeMap<>(late)
                .forEach((date, packs) -> shop.products()
                        .forEach(product -> days.add(new LateDay(
                                product.code(), date, Math.max(0, packs.getOrDefault(product.code(), 0))))));
        return days;
    }
}

package dawnkettle.cost;

import dawnkettle.measure.Mass;
import dawnkettle.measure.Money;
import dawnkettle.plan.PlannedSoak;
import dawnkettle.shop.Material;
import dawnkettle.shop.Shop;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Map;

/** What the beans in the tubs cost: the price of their lot, or the standard price where that is not known. */
final class BeanPrices {
    private final Shop shop;
    private final Map<String, UnitPrice> lots;

    BeanPrices(Shop shop, Map<String, UnitPrice> lots) {
        this.shop = shop;
        this.lots = lots;
    }

    UnitPrice of(List<PlannedSoak> soaks) {
        Mass beans = Mass.sum(soaks.stream().map(PlannedSoak::beans).toList());
        if (beans.isZero()) return standard();
        BigDecimal minor = soaks.stream().map(this::minorOf).reduce(BigDecimal.ZERO, BigDecimal::add);
        long paid = minor.setScale(0, RoundingMode.HALF_UP).longValueExact();
        return new UnitPrice(Money.minor(paid, shop.house().currency()), beans);
    }

    /** @param soaked so much of which lots */
    UnitPrice of(Map<String, Mass> soaked) {
        Mass beans = Mass.sum(soaked.values());
        if (beans.isZero()) return standard();
        BigDecimal minor = soaked.entrySet().stream()
                .map(lot -> lots.getOrDefault(lot.getKey(), standard()).minorOf(lot.getValue()))
                .reduce(BigDecimal.ZERO, BigDecimal::add);
        long paid = minor.setScale(0, RoundingMode.HALF_UP).longValueExact();
        return new UnitPrice(Money.minor(paid, shop.house().currency()), beans);
    }

    /** A tub of two lots is counted half and half: the plan does not say how much of each it holds. */
    private BigDecimal minorOf(PlannedSoak soak) {
        if (soak.beanLots().isEmpty()) return standard().minorOf(soak.beans());
        return soak.beanLots().stream()
                .map(lot -> lots.containsKey(lot) ? lots.get(lot) : standard())
                .map(price -> price.minorOf(soak.beans()))
                .reduce(BigDecimal.ZERO, BigDecimal::add)
                .divide(BigDecimal.valueOf(soak.beanLots().size()), UnitPrice.CARRIED, RoundingMode.HALF_EVEN);
    }

    private UnitPrice standard() {
        return shop.materials().stream()
                .filter(material -> material.kind() == Material.Kind.BEANS)
                .findFirst()
                .map(beans -> new UnitPrice(beans.price(), Mass.kilograms(beans.packSize())))
                .orElseThrow(() -> new IllegalStateException("a shop buys beans"));
    }
}

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
import java.util.TreeMap;

/** What the beans of a day cost, by their soak group: the price of their lot, or the standard price where that is not known. */
final class BeanPrices {
    private final Shop shop;
    private final Map<String, UnitPrice> lots;
    private final Map<String, Mass> masses = new TreeMap<>();
    private final Map<String, BigDecimal> minor = new TreeMap<>();

    /** @param lots what each lot cost, as far as it is known */
    BeanPrices(Shop shop, Map<String, UnitPrice> lots) {
        this.shop = shop;
        this.lots = lots;
    }

    /** Of each lot what the tub holds of it; half and half where a plan of old does not say. */
    BeanPrices add(List<PlannedSoak> soaks) {
        for (PlannedSoak soak : soaks) {
            List<Mass> parts = parts(soak);
            for (int i = 0; i < parts.size(); i++) {
                String lot = soak.beanLots().isEmpty() ? "" : soak.beanLots().get(i);
                add(soak.soakGroup(), lot, parts.get(i));
            }
        }
        return this;
    }

    private static List<Mass> parts(PlannedSoak soak) {
        if (soak.beanLots().isEmpty()) return List.of(soak.beans());
        if (soak.lotBeans().size() == soak.beanLots().size()) return soak.lotBeans();
        int count = soak.beanLots().size();
        return Split.of(soak.beans().milligrams(), java.util.Collections.nCopies(count, BigDecimal.ONE)).stream()
                .map(Mass::milligrams)
                .toList();
    }

    /** @param lot may be one that nobody knows */
    void add(String group, String lot, Mass beans) {
        UnitPrice price = lots.getOrDefault(lot, standard(group));
        masses.merge(group, beans, Mass::plus);
        minor.merge(group, price.minorOf(beans), BigDecimal::add);
    }

    /** Of all beans of the day together. */
    UnitPrice all() {
        Mass beans = Mass.sum(masses.values());
        if (beans.isZero()) return standard("");
        BigDecimal paid = minor.values().stream().reduce(BigDecimal.ZERO, BigDecimal::add);
        long whole = paid.setScale(0, RoundingMode.HALF_UP).longValueExact();
        return new UnitPrice(Money.minor(whole, shop.house().currency()), beans);
    }

    /** What so many beans of the groups cost, in minor units and parts of them. */
    BigDecimal minorOf(Map<String, Mass> beans) {
        return beans.entrySet().stream()
                .map(group -> minorOf(group.getKey(), group.getValue()))
                .reduce(BigDecimal.ZERO, BigDecimal::add);
    }

    private BigDecimal minorOf(String group, Mass beans) {
        Mass soaked = masses.getOrDefault(group, Mass.ZERO);
        if (soaked.isZero()) return standard(group).minorOf(beans);
        return minor.get(group)
                .multiply(BigDecimal.valueOf(beans.milligrams()))
                .divide(BigDecimal.valueOf(soaked.milligrams()), UnitPrice.CARRIED, RoundingMode.HALF_EVEN);
    }

    /** Of the group's own beans, or of the first that the shop buys. */
    private UnitPrice standard(String group) {
        List<Material> beans = shop.materials().stream()
                .filter(material -> material.kind() == Material.Kind.BEANS)
                .toList();
        Material own = beans.stream()
                .filter(material -> material.soakGroup().equals(group))
                .findFirst()
                .orElseGet(() ->
                        beans.stream().findFirst().orElseThrow(() -> new IllegalStateException("a shop buys beans")));
        return new UnitPrice(own.price(), Mass.kilograms(own.packSize()));
    }
}

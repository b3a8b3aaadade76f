package dawnkettle.cost;

import dawnkettle.cost.MadeDay.Made;
import dawnkettle.cost.MadeDay.Used;
import dawnkettle.measure.Mass;
import dawnkettle.measure.Money;
import dawnkettle.shop.Costs;
import dawnkettle.shop.Material;
import dawnkettle.shop.Shop;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.EnumMap;
import java.util.Map;

/**
 * What each product of one day cost, in minor units and parts of them, not rounded yet. Beans, heat, water and okara go by
 * the dry beans in a product, which is by its solids; work and materials by what it took; vans and overhead by its mass.
 */
final class DayCosts {
    /** Heat to bring the 11 kg of slurry of 1 kg of beans from 15 to 100 °C, by its heat capacity of 3.91 kJ/(kg K). */
    static final BigDecimal MEGAJOULES_A_KILOGRAM_OF_BEANS = new BigDecimal("3.65");

    private static final BigDecimal MEGAJOULES_A_KILOWATT_HOUR = new BigDecimal("3.6");
    private static final BigDecimal SECONDS_AN_HOUR = new BigDecimal(3_600);
    private static final int DIGITS = UnitPrice.CARRIED;

    private final MadeDay day;
    private final Shop shop;
    private final Costs costs;
    private final Mass mass;
    private final Mass beans;

    DayCosts(MadeDay day, Shop shop) {
        this.day = day;
        this.shop = shop;
        this.costs = shop.costs().on(day.date());
        this.mass = Mass.sum(day.made().stream().map(Made::mass).toList());
        this.beans = Mass.sum(day.made().stream().map(Made::beans).toList());
    }

    Map<CostPart, BigDecimal> of(Made made) {
        Map<CostPart, BigDecimal> parts = new EnumMap<>(CostPart.class);
        parts.put(
                CostPart.BEANS, made.bill().beans().orElseGet(() -> day.beans().minorOf(made.beans())));
        parts.put(CostPart.ADDITIONS, materials(made, false));
        parts.put(CostPart.PACKAGING, materials(made, true));
        parts.put(CostPart.ENERGY, minor(costs.energyPerKilowattHour()).multiply(kilowattHours(made)));
        parts.put(
                CostPart.WATER, byBeans(made, minor(costs.waterPerCubicMetre()).multiply(cubicMetres())));
        parts.put(CostPart.LABOUR, work(made));
        parts.put(CostPart.DELIVERY, byMass(made, minor(costs.perRoute().times(day.routes()))));
        parts.put(CostPart.OVERHEAD, byMass(made, minor(costs.overheadPerDay())));
        parts.put(CostPart.OKARA, okara(made));
        return parts;
    }

    private BigDecimal materials(Made made, boolean packaging) {
        BigDecimal sum = BigDecimal.ZERO;
        for (Used used : made.used()) {
            Material material = shop.material(used.material());
            if ((material.kind() == Material.Kind.PACKAGING) == packaging)
                sum = sum.add(used.minor().orElseGet(() -> standard(material, used.units())));
        }
        return sum;
    }

    static BigDecimal standard(Material material, BigDecimal units) {
        return minor(material.price())
                .multiply(units)
                .divide(BigDecimal.valueOf(material.packSize()), DIGITS, RoundingMode.HALF_EVEN);
    }

    private static BigDecimal megajoules(Made made) {
        if (made.bill().kilojoules().isPresent())
            return BigDecimal.valueOf(made.bill().kilojoules().getAsLong()).movePointLeft(3);
        return kilograms(made.beans()).multiply(MEGAJOULES_A_KILOGRAM_OF_BEANS);
    }

    private BigDecimal kilowattHours(Made made) {
        return megajoules(made)
                .divide(
                        MEGAJOULES_A_KILOWATT_HOUR.multiply(
                                costs.cookerEfficiency().asDecimal()),
                        DIGITS,
                        RoundingMode.HALF_EVEN);
    }

    /** A cubic metre of water weighs a tonne, near enough for a bill. */
    private BigDecimal cubicMetres() {
        return kilograms(day.water()).movePointLeft(3);
    }

    private BigDecimal work(Made made) {
        return minor(costs.hourlyWage())
                .multiply(BigDecimal.valueOf(made.handSeconds()))
                .divide(SECONDS_AN_HOUR, DIGITS, RoundingMode.HALF_EVEN);
    }

    private BigDecimal okara(Made made) {
        return minor(costs.okaraPerKilogram())
                .multiply(kilograms(Okara.expected(made.beans())))
                .negate();
    }

    private BigDecimal byBeans(Made made, BigDecimal whole) {
        return beans.isZero() ? byMass(made, whole) : share(whole, made.beans(), beans);
    }

    private BigDecimal byMass(Made made, BigDecimal whole) {
        return mass.isZero() ? BigDecimal.ZERO : share(whole, made.mass(), mass);
    }

    private static BigDecimal share(BigDecimal whole, Mass part, Mass all) {
        return whole.multiply(BigDecimal.valueOf(part.milligrams()))
                .divide(BigDecimal.valueOf(all.milligrams()), DIGITS, RoundingMode.HALF_EVEN);
    }

    private static BigDecimal kilograms(Mass mass) {
        return mass.inKilograms(6, RoundingMode.UNNECESSARY);
    }

    private static BigDecimal minor(Money money) {
        return BigDecimal.valueOf(money.minor());
    }
}

package dawnkettle.plan;

import dawnkettle.measure.Mass;
import dawnkettle.measure.Share;
import dawnkettle.shop.Shop;
import dawnkettle.stock.BeanLot;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Which lots of beans go into which tub, the oldest first; and a tub's row in the plan. */
final class BeanLots {
    /** Litres of water a kilogram of dry beans: three times its mass (engineering figure, from 2.3 at least). */
    private static final int WATER_PER_BEANS = 3;

    /** Kilograms of water that a kilogram of dry beans displaces: true density 1250 kg/m3 (Wandkar 2012). */
    private static final Share LITRES_OF_BEANS = Share.of("0.8");

    private final Shop shop;
    private final Evening evening;
    private final Map<BeanLot, Mass> left = new LinkedHashMap<>();

    BeanLots(Shop shop, Evening evening) {
        this.shop = shop;
        this.evening = evening;
        evening.larder().beans().forEach(lot -> left.put(lot, lot.left()));
    }

    /**
     * A tub's row.
     *
     * @param batches ids of the batches ground from it
     * @param firstGrind minute at which the first of them is ground
     */
    PlannedSoak planned(TubDraft tub, DayClock clock, List<String> batches, int firstGrind) {
        List<String> lots = tub.beanLots.isEmpty() ? take(tub) : tub.beanLots;
        Temperatures temperatures = evening.soakRoom().temperatures();
        SoakBelief belief = evening.soakRoom().beliefs().of(tub.soakGroup);
        return new PlannedSoak(
                tub.tub.code(),
                tub.soakGroup,
                tub.beans,
                lots,
                water(tub),
                tub.water,
                temperatures.room(),
                temperatures.source(),
                clock.instant(tub.fill),
                clock.instant(tub.ready),
                clock.instant(tub.latest),
                belief.law()
                        .equivalentMinutes(
                                TubWater.of(tub.water, temperatures, tub.tub, clock.instant(tub.fill)),
                                firstGrind - tub.fill),
                batches.isEmpty() && !tub.committed ? Mass.ZERO : tub.left(),
                batches,
                Optional.of(certainty(tub, clock, belief)),
                tub.lotBeans.size() > 1 ? tub.lotBeans : List.of());
    }

    /** How sure it is when the beans are ready, by the mean of the water from filling to ready. */
    private PlannedSoak.Certainty certainty(TubDraft tub, DayClock clock, SoakBelief belief) {
        TubWater water = TubWater.of(tub.water, evening.soakRoom().temperatures(), tub.tub, clock.instant(tub.fill));
        double factor = belief.factor(belief.law().course(water).mean());
        int minutes = tub.ready - tub.fill;
        return new PlannedSoak.Certainty(
                clock.instant(tub.fill + (int) Math.round(minutes / factor)),
                clock.instant(tub.fill + (int) Math.round(minutes * factor)),
                belief.observations());
    }

    /** Three times the beans, or what the tub holds beside them. */
    private static Mass water(TubDraft tub) {
        long litres = tub.tub.volume().inLitres(0, RoundingMode.DOWN).longValueExact();
        Mass taken = tub.beans.times(LITRES_OF_BEANS, RoundingMode.UP);
        Mass room = Mass.kilograms(litres).minusOrZero(taken);
        return Mass.grams(Mass.min(tub.beans.times(WATER_PER_BEANS), room).inGrams(RoundingMode.DOWN));
    }

    private List<String> take(TubDraft tub) {
        List<String> lots = new ArrayList<>();
        Mass wanted = tub.beans;
        for (var lot : left.entrySet()) {
            if (wanted.isZero()) break;
            if (lot.getValue().isZero() || !serves(lot.getKey(), tub.soakGroup)) continue;
            Mass taken = Mass.grams(Mass.min(wanted, lot.getValue()).inGrams(RoundingMode.DOWN));
            if (taken.isZero()) continue;
            lot.setValue(lot.getValue().minus(taken));
            wanted = wanted.minus(taken);
            lots.add(lot.getKey().lot());
            tub.lotBeans.add(taken);
        }
        if (!wanted.isZero()) tub.lotBeans.clear(); // more is wanted than was booked in: nobody knows of which lot
        tub.beanLots.addAll(lots);
        return lots;
    }

    private boolean serves(BeanLot lot, String soakGroup) {
        return shop.findMaterial(lot.material())
                .filter(material -> material.soakGroup().equals(soakGroup))
                .isPresent();
    }
}

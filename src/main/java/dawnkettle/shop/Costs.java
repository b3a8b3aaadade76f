package dawnkettle.shop;

import dawnkettle.measure.Money;
import dawnkettle.measure.Share;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;

/**
 * What things cost that are not bought by lot: the standard, from which dated rates differ.
 *
 * @param hourlyWage one person for one hour, with all that goes on top
 * @param energyPerKilowattHour price of energy for the cookers
 * @param cookerEfficiency share of that energy which reaches the kettle
 * @param waterPerCubicMetre water and sewer
 * @param overheadPerDay rent, repairs, insurance of a making day
 * @param perRoute one van for one round
 * @param okaraPerKilogram what okara brings; may be zero
 */
public record Costs(
        Money hourlyWage,
        Money energyPerKilowattHour,
        Share cookerEfficiency,
        Money waterPerCubicMetre,
        Money overheadPerDay,
        Money perRoute,
        Money okaraPerKilogram,
        Details details) {

    /**
     * What the owner may write down besides.
     *
     * @param rates those that hold from a day on
     * @param packing what products are packed in
     * @param priceStep prices that are proposed are whole multiples of it, in minor units
     */
    public record Details(List<Rate> rates, List<PackUse> packing, long priceStep) {
        /** Five cents (common practice, no source). */
        public static final long USUAL_STEP = 5;

        public static final Details NONE = new Details(List.of(), List.of(), USUAL_STEP);

        public Details {
            rates = rates.stream().sorted(Comparator.comparing(Rate::from)).toList();
            packing = List.copyOf(packing);
            if (priceStep < 1) throw new IllegalArgumentException("a price step is at least one");
        }
    }

    /** Without dated rates and packing. */
    public Costs(
            Money hourlyWage,
            Money energyPerKilowattHour,
            Share cookerEfficiency,
            Money waterPerCubicMetre,
            Money overheadPerDay,
            Money perRoute,
            Money okaraPerKilogram) {
        this(
                hourlyWage,
                energyPerKilowattHour,
                cookerEfficiency,
                waterPerCubicMetre,
                overheadPerDay,
                perRoute,
                okaraPerKilogram,
                Details.NONE);
    }

    /** The rates that hold on {@code day}. */
    public Costs on(LocalDate day) {
        return new Costs(
                on(day, Rate.Kind.HOURLY_WAGE, hourlyWage),
                on(day, Rate.Kind.ENERGY_PER_KWH, energyPerKilowattHour),
                cookerEfficiency,
                on(day, Rate.Kind.WATER_PER_M3, waterPerCubicMetre),
                on(day, Rate.Kind.OVERHEAD_PER_DAY, overheadPerDay),
                on(day, Rate.Kind.PER_ROUTE, perRoute),
                on(day, Rate.Kind.OKARA_PER_KG, okaraPerKilogram),
                details);
    }

    private Money on(LocalDate day, Rate.Kind kind, Money standard) {
        Money amount = standard;
        for (Rate rate : details.rates())
            if (rate.kind() == kind && !rate.from().isAfter(day)) amount = rate.amount();
        return amount;
    }

    /** The standard alone: no dated rates. */
    public Costs standard() {
        return new Costs(
                hourlyWage,
                energyPerKilowattHour,
                cookerEfficiency,
                waterPerCubicMetre,
                overheadPerDay,
                perRoute,
                okaraPerKilogram,
                new Details(List.of(), details.packing(), details.priceStep()));
    }
}

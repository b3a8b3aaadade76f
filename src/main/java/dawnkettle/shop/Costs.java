package dawnkettle.shop;

import dawnkettle.measure.Money;
import dawnkettle.measure.Share;

/**
 * What things cost that are not bought by lot.
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
        Money okaraPerKilogram) {}

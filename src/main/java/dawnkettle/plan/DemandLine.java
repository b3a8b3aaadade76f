package dawnkettle.plan;

import dawnkettle.measure.Mass;
import java.time.LocalDate;

/**
 * What one product needs for one delivery date: firm + standing + allowance = from stock + declined + to make.
 *
 * @param allowancePacks what usually comes after the close
 * @param mass net mass of {@code toMakePacks}
 */
public record DemandLine(
        String product,
        LocalDate deliveryDate,
        int firmPacks,
        int standingPacks,
        int allowancePacks,
        int fromStockPacks,
        int declinedPacks,
        int toMakePacks,
        Mass mass) {}

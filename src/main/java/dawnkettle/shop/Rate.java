package dawnkettle.shop;

import dawnkettle.measure.Money;
import java.time.LocalDate;

/** A rate that holds from a day on, in the place of the one that {@link Costs} names. */
public record Rate(Kind kind, Money amount, LocalDate from) {
    /** What has a rate. */
    public enum Kind {
        HOURLY_WAGE,
        ENERGY_PER_KWH,
        WATER_PER_M3,
        OVERHEAD_PER_DAY,
        PER_ROUTE,
        OKARA_PER_KG
    }
}

package dawnkettle.plan;

/**
 * The heat that brings a kettle to the boil, in MJ, and the water that steam blown straight into it leaves behind.
 * Specific heat by Siebel's line, 0.837 + 3.349 w kJ/kg K (from memory, sure), within 4 % of milk's (Geankoplis A.4).
 */
public final class KettleHeat {
    /** Where slurry boils, in °C. */
    public static final double BOILING = 100;

    /** Heat that a kilogram of steam gives up when it turns to water at 100 °C, in kJ (from memory, sure). */
    public static final double STEAM = 2_257;

    private static final double MEGAJOULES_A_KILOWATT_HOUR = 3.6;

    private KettleHeat() {}

    /** Specific heat in kJ/kg K of food with {@code water} as a share of its mass. */
    public static double specificHeat(double water) {
        return 0.837 + 3.349 * water;
    }

    /** MJ that warm {@code kilograms} with {@code water} as a share, from one temperature to another. */
    public static double megajoules(double kilograms, double water, double from, double to) {
        return kilograms * specificHeat(water) * (to - from) / 1000;
    }

    public static double kilowattHours(double megajoules) {
        return megajoules / MEGAJOULES_A_KILOWATT_HOUR;
    }

    /** Kilograms of steam that have to turn to water to give so much heat. */
    public static double steam(double megajoules) {
        return megajoules / (STEAM / 1000);
    }
}

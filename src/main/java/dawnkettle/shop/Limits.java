package dawnkettle.shop;

import dawnkettle.measure.Celsius;

/**
 * What a measured batch must have reached, as the shop's own plan has it validated; outside of it the lot is held.
 *
 * @param cook the coolest that the cooker may have been
 * @param cookMinutes the shortest that it was held there
 * @param cooling how fast it must have cooled
 */
public record Limits(Celsius cook, int cookMinutes, Cooling cooling) {
    /**
     * 98 °C for 5 minutes: careful beside published 95 to 100 °C for 3 to 5 minutes, and two minutes of boiling in Japan
     * (Notification 370); the floor of 5 minutes is an engineering figure.
     */
    public static final Limits CAREFUL = new Limits(Celsius.degrees(98), 5, Cooling.FOOD_CODE);

    /**
     * Cooling in two steps, both counted from its start.
     *
     * @param warm to be reached within {@code warmMinutes}
     * @param cold to be reached within {@code coldMinutes} in all
     */
    public record Cooling(Celsius warm, int warmMinutes, Celsius cold, int coldMinutes) {
        /** FDA Food Code 3-501.14(A), as adopted by Delaware (16 Del. Admin. Code) and Wisconsin (ATCP 75). */
        public static final Cooling FOOD_CODE = new Cooling(Celsius.degrees(21), 120, Celsius.degrees(5), 360);

        /** Where the clock of the same rule starts. */
        public static final Celsius HOT = Celsius.degrees(57);
    }
}

package dawnkettle.plan;

import dawnkettle.measure.Celsius;
import dawnkettle.shop.Tub;

/**
 * How beans take up water: Peleg's law with an Arrhenius rate, in a tub whose water drifts from its filling temperature
 * to the room's (Newton). The state is <em>equivalent soak time</em>: the time at 20 °C that would have given the same
 * uptake, a figure that a person can check.
 *
 * @param equilibrium kg of water per kg of beans as bought, after for ever
 * @param rateHours Peleg's k1 at 20 °C, in hours
 * @param activationJoules activation energy in J/mol
 * @param target kg of water per kg of beans at which the beans are ready
 */
public record SoakLaw(double equilibrium, double rateHours, double activationJoules, double target) {
    /**
     * A guess until the shop's own observations have moved it. k1 is derived from the published 7.5 h to +100 % at 20 °C
     * (Korean soybeans, 1987, JAKO198703041926616); the energy lies between Kubota 1979 (29 kJ/mol) and a trade table's
     * 38; published energies run from 14 to 60 kJ/mol. The target 1.15 was chosen with the trade's 30/20/10 h in view.
     */
    public static final SoakLaw DEFAULT = new SoakLaw(1.40, 2.14, 33_000, 1.15);

    /** Above a mean of this, warm water is never used to hurry (the shop's rule, common practice, no source). */
    public static final double WARMEST_MEAN = 25.0;

    /** A tub must stay usable for at least this long (common practice, no source). */
    public static final int NARROWEST_WINDOW_MINUTES = 120;

    /** One, less what adding up minutes as fractions loses. */
    private static final double WHOLE = 1 - 1e-9;

    /** In J/(mol K): exact in the SI of 2019 (CODATA 2018, from memory). */
    static final double GAS_CONSTANT = 8.314462618;

    /** 20 °C, at which k1 is told. */
    static final double REFERENCE_KELVIN = 293.15;

    /** Kelvin at 0 °C. */
    static final double ZERO_KELVIN = 273.15;

    /** After four days nothing more is looked for. */
    private static final int LONGEST_MINUTES = 4 * 24 * 60;

    /** No published observation of the soak lies below this (the coldest is 5 °C): colder water is a guess of a guess. */
    public static final double COLDEST_SEEN = 5;

    /**
     * Hours after which soaking beans are lost, by temperature: engineering limits, about half-way between sources that
     * disagree by a factor of two (Mulyowidarso: 30 °C and 24 h is full fermentation).
     */
    private static final double[][] LIMIT_HOURS = {{5, 36}, {10, 28}, {15, 22}, {20, 18}, {25, 13}, {30, 10}};

    /**
     * What a tub does.
     *
     * @param readyMinutes from filling until the target is reached
     * @param latestMinutes from filling until the beans are over-soaked
     * @param mean mean temperature of the water from filling to ready, in °C
     */
    public record Course(int readyMinutes, int latestMinutes, double mean) {
        public int windowMinutes() {
            return latestMinutes - readyMinutes;
        }
    }

    /** Minutes at 20 °C until the beans are ready. */
    public double readyEquivalentMinutes() {
        return 60 * rateHours * target / (1 - target / equilibrium);
    }

    /** Water taken up, in kg per kg of beans, after {@code minutes} at a steady temperature. */
    public double uptake(double minutes, double celsius) {
        double hours = minutes / 60 * speed(celsius);
        return hours / (rateHours + hours / equilibrium);
    }

    /** Hours at a steady temperature until {@code uptake} kg per kg is reached. */
    public double hoursTo(double uptake, double celsius) {
        return rateHours * uptake / (1 - uptake / equilibrium) / speed(celsius);
    }

    /** The course of a tub filled with water of one temperature in a room of another. */
    public Course course(Celsius water, Celsius room, Tub tub) {
        return course(TubWater.inSteadyRoom(water, room, tub));
    }

    /** The course of a tub whose water is known minute by minute. */
    Course course(TubWater water) {
        double needed = readyEquivalentMinutes();
        double soaked = 0;
        double spent = 0;
        double warmth = 0;
        int ready = -1;
        for (int minute = 0; minute < LONGEST_MINUTES; minute++) {
            double celsius = water.at(minute);
            if (ready < 0 && soaked >= needed) ready = minute;
            if (ready < 0) warmth += celsius;
            if (spent >= WHOLE) return new Course(ready < 0 ? minute : ready, minute, warmth / Math.max(1, ready));
            soaked += speed(celsius);
            spent += 1 / (60 * limitHours(celsius));
        }
        throw new IllegalStateException("a tub at " + water.at(0) + " °C is neither ready nor over within four days");
    }

    /** Minutes at 20 °C that the first {@code minutes} after filling are worth. */
    public int equivalentMinutes(Celsius water, Celsius room, Tub tub, int minutes) {
        return equivalentMinutes(TubWater.inSteadyRoom(water, room, tub), minutes);
    }

    /** Minutes at 20 °C that the first {@code minutes} in such water are worth. */
    int equivalentMinutes(TubWater water, int minutes) {
        double soaked = 0;
        for (int minute = 0; minute < minutes; minute++) soaked += speed(water.at(minute));
        return (int) Math.round(soaked);
    }

    /** Hours in such water until the target is reached, to the part of a minute. */
    double hoursToReady(TubWater water) {
        double left = readyEquivalentMinutes();
        for (int minute = 0; ; minute++) {
            double more = speed(water.at(minute));
            if (more >= left) return (minute + left / more) / 60;
            left -= more;
        }
    }

    /** How much faster than at 20 °C. */
    private double speed(double celsius) {
        return StrictMath.exp(activationJoules / GAS_CONSTANT * (1 / REFERENCE_KELVIN - 1 / (celsius + ZERO_KELVIN)));
    }

    /** Hours that beans keep in water of a steady temperature; above 30 °C the line goes on down, not below one hour. */
    static double limitHours(double celsius) {
        int last = LIMIT_HOURS.length - 1;
        if (celsius <= LIMIT_HOURS[0][0]) return LIMIT_HOURS[0][1];
        for (int i = 1; i <= last; i++) {
            if (celsius <= LIMIT_HOURS[i][0] || i == last) {
                double[] low = LIMIT_HOURS[i - 1];
                double[] high = LIMIT_HOURS[i];
                return Math.max(1, low[1] + (high[1] - low[1]) * (celsius - low[0]) / (high[0] - low[0]));
            }
        }
        throw new IllegalStateException("not reached");
    }
}

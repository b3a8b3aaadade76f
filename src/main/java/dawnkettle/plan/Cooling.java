package dawnkettle.plan;

import dawnkettle.shop.BlockSize;
import java.util.stream.DoubleStream;

/**
 * How a block cools in moving cold water: the first term of the series for a brick (strong convection), its centre.
 * Checked against the published two-step limit; a shop's own probe readings go before this.
 */
public final class Cooling {
    /** Thermal diffusivity of tofu in mm²/s (1.35e-7 m²/s: from memory, fair). */
    private static final double DIFFUSIVITY = 0.135;

    /** A block leaves the press at about this (engineering figure). */
    private static final double FROM = 75;

    /**
     * FDA Food Code 3-501.14(A): 57 to 21 °C within 2 h, 57 to 5 °C within 6 h in all. The clock is started when the block
     * goes into the bath, when its skin is below 57 °C at once though its centre is not: the careful reading.
     */
    private static final double FIRST_STEP = 21;

    private static final int FIRST_STEP_MINUTES = 120;
    private static final int BOTH_STEPS_MINUTES = 360;

    /** Cold holding at 5 °C or less: Food Code 3-501.16 (from memory, sure). */
    public static final double COLD = 5;

    private Cooling() {}

    /** Rate constant of the first term, in 1/h. */
    static double ratePerHour(BlockSize block) {
        return Math.PI
                * Math.PI
                * DIFFUSIVITY
                * 3600
                * edges(block).map(edge -> 1 / (edge * edge)).sum();
    }

    /** Minutes from leaving the press until the centre is at 5 °C in water of {@code bath} °C. */
    public static int minutesToCold(BlockSize block, double bath) {
        return (int) Math.ceil(minutes(block, bath, FROM, COLD));
    }

    /** Whether the centre meets both steps of the published limit in water of {@code bath} °C. */
    public static boolean meetsTwoSteps(BlockSize block, double bath) {
        return minutes(block, bath, FROM, FIRST_STEP) <= FIRST_STEP_MINUTES
                && minutes(block, bath, FROM, COLD) <= BOTH_STEPS_MINUTES;
    }

    /** The largest height in mm (below the present one) with which a block of this length and width meets both steps. */
    public static int largestHeight(BlockSize block, double bath) {
        for (int height = block.heightMm() - 1; height > 1; height--)
            if (meetsTwoSteps(new BlockSize(block.lengthMm(), block.widthMm(), height), bath)) return height;
        return 1;
    }

    /** A slab between two cooled faces, by the same term: minutes for the middle of one so thick. */
    static double slabMinutes(double thickMm, double bath, double from, double until) {
        double rate = Math.PI * Math.PI * DIFFUSIVITY * 3600 / (thickMm * thickMm);
        return 60 / rate * StrictMath.log(4 / Math.PI * (from - bath) / (until - bath));
    }

    /** Newton's law: what cools at {@code ratePerHour} in surroundings of one temperature, after some hours. */
    public static double newton(double from, double surroundings, double ratePerHour, double hours) {
        return surroundings + (from - surroundings) * StrictMath.exp(-ratePerHour * hours);
    }

    /** The slowest Newton rate, in 1/h, that meets both steps from 57 °C in surroundings of one temperature. */
    public static double slowestRate(double surroundings) {
        double first = StrictMath.log((57 - surroundings) / (FIRST_STEP - surroundings)) / (FIRST_STEP_MINUTES / 60.0);
        double both = StrictMath.log((57 - surroundings) / (COLD - surroundings)) / (BOTH_STEPS_MINUTES / 60.0);
        return Math.max(first, both);
    }

    private static double minutes(BlockSize block, double bath, double from, double until) {
        if (until <= bath) throw new IllegalArgumentException("a bath of " + bath + " °C never cools to " + until);
        double lag = StrictMath.pow(4 / Math.PI, 3);
        return 60 / ratePerHour(block) * StrictMath.log(lag * (from - bath) / (until - bath));
    }

    private static DoubleStream edges(BlockSize block) {
        return DoubleStream.of(block.lengthMm(), block.widthMm(), block.heightMm());
    }
}

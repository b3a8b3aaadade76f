package dawnkettle.plan;

/** The normal distribution, as far as the shop needs it. */
final class Normal {
    private Normal() {}

    /** The share of a standard normal that lies below {@code z}: the series about zero, beyond 7 nothing is left. */
    static double below(double z) {
        if (z < -7) return 0;
        if (z > 7) return 1;
        double term = z;
        double sum = z;
        for (int i = 1; Math.abs(term) > 1e-17; i++) {
            term *= z * z / (2 * i + 1);
            sum += term;
        }
        return 0.5 + sum * StrictMath.exp(-z * z / 2) / StrictMath.sqrt(2 * Math.PI);
    }
}

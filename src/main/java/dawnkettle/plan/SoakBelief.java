package dawnkettle.plan;

import java.util.Locale;

/**
 * How fast this shop's beans are taken to soak, and how sure that is.
 *
 * @param law the constants that are planned with
 * @param spread standard deviations of what is not known for sure
 * @param observations how often somebody looked and wrote it down
 */
public record SoakBelief(SoakLaw law, Spread spread, int observations) {
    /**
     * What published figures alone say. The sources have 4 and 7.5 hours to double the weight near 20 °C and energies from
     * 14 to 60 kJ/mol: the spreads are the half of that.
     */
    public static final SoakBelief PUBLISHED = new SoakBelief(SoakLaw.DEFAULT, new Spread(0.30, 10_000, 0), 0);

    /** Of five such nights, four lie within so many standard deviations (normal distribution). */
    private static final double FOUR_OF_FIVE = 1.2816;

    /**
     * What is not known for sure.
     *
     * @param rate of the logarithm of k1 at 20 °C
     * @param joules of the activation energy
     * @param together covariance of both
     */
    public record Spread(double rate, double joules, double together) {}

    /** Standard deviation of the logarithm of the hours that beans need at a steady temperature. */
    double logSpread(double celsius) {
        double pull = (1 / (celsius + SoakLaw.ZERO_KELVIN) - 1 / SoakLaw.REFERENCE_KELVIN) / SoakLaw.GAS_CONSTANT;
        double variance = spread.rate() * spread.rate()
                + pull * pull * spread.joules() * spread.joules()
                + 2 * pull * spread.together();
        return StrictMath.sqrt(Math.max(0, variance));
    }

    /** In four nights of five the hours lie between the planned ones divided and multiplied by this. */
    public double factor(double celsius) {
        return StrictMath.exp(FOUR_OF_FIVE * logSpread(celsius));
    }

    /** Beans that soak through in a minute or so: for asking what a day would be like if they stood ready. */
    SoakBelief readyAtOnce() {
        SoakLaw quick = new SoakLaw(law.equilibrium(), 1e-3, 0, law.target());
        return new SoakBelief(quick, new Spread(0, 0, 0), observations);
    }

    /** How sure the soak is at a steady temperature, for the sheet. */
    public String sentence(double celsius) {
        double hours = law.hoursTo(law.target(), celsius);
        double factor = factor(celsius);
        String known = observations == 0
                ? "Published figures alone, nothing observed here yet"
                : observations == 1 ? "One look at this shop's beans" : observations + " looks at this shop's beans";
        return String.format(
                Locale.ROOT,
                "%s: at %.1f °C beans are taken to need %.1f h; in four nights of five %.1f to %.1f h.",
                known,
                celsius,
                hours,
                hours / factor,
                hours * factor);
    }

    /** What moved from an earlier belief to this one, in a sentence; nothing moves without it. */
    public String movedFrom(SoakBelief before) {
        return String.format(
                Locale.ROOT,
                "Soak constants by %d observation%s: k1 at 20 °C from %.2f to %.2f h, activation energy from %.1f to %.1f"
                        + " kJ/mol; at 10 °C beans now take %.1f h instead of %.1f, at 20 °C %.1f instead of %.1f.",
                observations,
                observations == 1 ? "" : "s",
                before.law.rateHours(),
                law.rateHours(),
                before.law.activationJoules() / 1000,
                law.activationJoules() / 1000,
                law.hoursTo(law.target(), 10),
                before.law.hoursTo(before.law.target(), 10),
                law.hoursTo(law.target(), 20),
                before.law.hoursTo(before.law.target(), 20));
    }
}

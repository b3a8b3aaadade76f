package dawnkettle.plan;

import java.util.ArrayList;
import java.util.List;

/**
 * Moves the soak constants by what the shop saw. Every pair of a k1 and an activation energy on a grid is weighed by how
 * well the published figures and the observations agree with it; the new constants are the weighted means. That is damped
 * three ways: the published figures keep their weight; an observation pulls less the farther it lies from the hours in
 * doubt; and one in ten is taken to be a slip, so that a wild one hardly moves anything. It is computed anew from all
 * observations each time: their order does not matter, and one that is taken back is as if it had never been.
 */
public final class SoakLearning {
    /** Published activation energies of soybeans: 14 (Kim 1990) to 60 kJ/mol (Cimini 2021). */
    private static final double LEAST_JOULES = 14_000;

    private static final double MOST_JOULES = 60_000;
    private static final double JOULES_STEP = 500;

    /** k1 is looked for within three spreads of the published one: a factor of two and a half. */
    private static final int RATE_STEPS = 45;

    private static final double RATE_STEP = 0.02;

    /** How sharp the eye is that looks: beans of one tub differ by about this in the logarithm of hours (no source). */
    private static final double EYE = 0.15;

    /** Share of observations that are slips of the pen (no source). */
    private static final double SLIPS = 0.10;

    /**
     * However often somebody calls beans ready early, no soak is counted shorter than this share of the published one: ten
     * hours at 20 °C, which is the everyday rule (common practice, no source).
     */
    private static final double SAFE_SHARE = 0.72;

    /** °C of water between which it is held to that: what soak rooms have. */
    private static final int SAFE_FROM = 5;

    private static final int SAFE_TO = 30;

    private SoakLearning() {}

    /** The belief after all of a shop's observations, from the published figures. */
    public static SoakBelief from(List<SoakObservation> observations) {
        return from(SoakBelief.PUBLISHED, observations);
    }

    private static SoakBelief from(SoakBelief published, List<SoakObservation> observations) {
        if (observations.isEmpty()) return published;
        List<Pair> pairs = new ArrayList<>();
        for (int step = -RATE_STEPS; step <= RATE_STEPS; step++)
            for (double joules = LEAST_JOULES; joules <= MOST_JOULES; joules += JOULES_STEP)
                pairs.add(pair(step * RATE_STEP, joules, published, observations));
        double heaviest = pairs.stream().mapToDouble(Pair::logWeight).max().orElseThrow();
        Moments moments = new Moments();
        for (Pair pair : pairs) moments.add(StrictMath.exp(pair.logWeight() - heaviest), pair.rate(), pair.joules());
        SoakLaw learnt = safe(law(published.law(), moments.rate(), moments.joules()), published.law());
        return new SoakBelief(learnt, moments.spread(), observations.size());
    }

    /** Slower where it has to be, so that at no temperature of a soak room the beans are counted ready too soon. */
    private static SoakLaw safe(SoakLaw learnt, SoakLaw published) {
        double least = Double.MAX_VALUE;
        for (int celsius = SAFE_FROM; celsius <= SAFE_TO; celsius++)
            least = Math.min(
                    least, learnt.hoursTo(learnt.target(), celsius) / published.hoursTo(published.target(), celsius));
        return least >= SAFE_SHARE
                ? learnt
                : law(learnt, StrictMath.log(SAFE_SHARE / least), learnt.activationJoules());
    }

    /** A logarithm by which k1 is moved, an energy, and how well both agree with all that is known. */
    private record Pair(double rate, double joules, double logWeight) {}

    private static Pair pair(double rate, double joules, SoakBelief published, List<SoakObservation> observations) {
        double weight =
                logPrior(rate, joules, published) + logLikelihood(law(published.law(), rate, joules), observations);
        return new Pair(rate, joules, weight);
    }

    private static SoakLaw law(SoakLaw prior, double rate, double joules) {
        return new SoakLaw(prior.equilibrium(), prior.rateHours() * StrictMath.exp(rate), joules, prior.target());
    }

    private static double logPrior(double rate, double joules, SoakBelief published) {
        double byRate = rate / published.spread().rate();
        double byJoules = (joules - published.law().activationJoules())
                / published.spread().joules();
        return -(byRate * byRate + byJoules * byJoules) / 2;
    }

    private static double logLikelihood(SoakLaw law, List<SoakObservation> observations) {
        double sum = 0;
        for (SoakObservation one : observations) {
            double hours = law.hoursTo(law.target(), one.water().degrees());
            double late = StrictMath.log(one.minutes() / 60.0 / hours) / EYE;
            double seen = Normal.below(one.ready() ? late : -late);
            sum += StrictMath.log(SLIPS / 2 + (1 - SLIPS) * seen);
        }
        return sum;
    }

    /** Weighted means and spreads. */
    private static final class Moments {
        private double weight;
        private double rate;
        private double joules;
        private double rateSquare;
        private double joulesSquare;
        private double product;

        void add(double more, double oneRate, double oneJoules) {
            weight += more;
            rate += more * oneRate;
            joules += more * oneJoules;
            rateSquare += more * oneRate * oneRate;
            joulesSquare += more * oneJoules * oneJoules;
            product += more * oneRate * oneJoules;
        }

        double rate() {
            return rate / weight;
        }

        double joules() {
            return joules / weight;
        }

        SoakBelief.Spread spread() {
            return new SoakBelief.Spread(
                    StrictMath.sqrt(Math.max(0, rateSquare / weight - rate() * rate())),
                    StrictMath.sqrt(Math.max(0, joulesSquare / weight - joules() * joules())),
                    product / weight - rate() * joules());
        }
    }
}

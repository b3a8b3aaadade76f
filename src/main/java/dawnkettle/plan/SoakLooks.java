package dawnkettle.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/**
 * What a shop's looks at its beans make of the soak constants, group by group. A look that can't be true is left out: in
 * water that nobody soaks in, ready in half the hours that were published, or not ready after twice as many (the sources
 * disagree by a factor of two). Plans are made with what the others say, and say so.
 *
 * @param sentences for each group that was looked at, what its looks moved and which were left out
 */
public record SoakLooks(SoakBeliefs beliefs, List<String> sentences) {
    /** °C of water outside which no look is believed (common practice, no source). */
    private static final double COLDEST = 2;

    private static final double WARMEST = 35;

    /**
     * Ready in less than the published hours over this, or not yet after them times this, is a slip of the pen
     * (common practice, no source).
     */
    private static final double TIMES = 2;

    public SoakLooks {
        sentences = List.copyOf(sentences);
    }

    /** @param looks in any order; the same ones always say the same */
    public static SoakLooks of(List<SoakLook> looks) {
        Map<String, List<SoakObservation>> byGroup = new TreeMap<>();
        looks.forEach(look -> byGroup.computeIfAbsent(look.soakGroup(), group -> new ArrayList<>())
                .add(look.seen()));
        Map<String, SoakBelief> beliefs = new TreeMap<>();
        List<String> sentences = new ArrayList<>();
        byGroup.forEach((group, seen) -> {
            List<SoakObservation> believed =
                    seen.stream().filter(SoakLooks::canBe).toList();
            SoakBelief belief = SoakLearning.from(believed);
            if (!believed.isEmpty()) {
                beliefs.put(group, belief);
                sentences.add(moved(group, belief));
            }
            if (believed.size() < seen.size()) sentences.add(leftOut(group, seen.size() - believed.size()));
        });
        return new SoakLooks(new SoakBeliefs(SoakBelief.PUBLISHED, beliefs), sentences);
    }

    /** Whether a look can be what somebody saw; if not, it is a slip of the pen, the tub or the hour. */
    static boolean canBe(SoakObservation look) {
        double celsius = look.water().degrees();
        if (celsius < COLDEST || celsius > WARMEST) return false;
        double hours = SoakLaw.DEFAULT.hoursTo(SoakLaw.DEFAULT.target(), celsius);
        double seen = look.minutes() / 60.0;
        return look.ready() ? seen >= hours / TIMES : seen <= hours * TIMES;
    }

    private static String moved(String group, SoakBelief belief) {
        return "Soak constants of " + group + " beans learnt from " + belief.observations()
                + (belief.observations() == 1 ? " look: " : " looks: ") + hours(belief, 10) + ", " + hours(belief, 20)
                + ". The published ones keep their weight.";
    }

    private static String hours(SoakBelief belief, int celsius) {
        SoakLaw published = SoakBelief.PUBLISHED.law();
        return String.format(
                Locale.ROOT,
                "at %d °C %.1f h instead of %.1f",
                celsius,
                belief.law().hoursTo(belief.law().target(), celsius),
                published.hoursTo(published.target(), celsius));
    }

    private static String leftOut(String group, int looks) {
        return looks + (looks == 1 ? " look at " : " looks at ") + group
                + " beans can't be true (ready in less than half the published hours, not ready after twice as many, or in"
                + " water of no soak) and " + (looks == 1 ? "is" : "are") + " left out.";
    }
}

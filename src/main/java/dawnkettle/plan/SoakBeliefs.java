package dawnkettle.plan;

import java.util.Map;
import java.util.TreeMap;

/**
 * How fast the beans of each soak group are taken to soak.
 *
 * @param otherwise of groups at whose beans nobody looked yet
 */
public record SoakBeliefs(SoakBelief otherwise, Map<String, SoakBelief> byGroup) {
    /** What published figures alone say. */
    public static final SoakBeliefs PUBLISHED = all(SoakBelief.PUBLISHED);

    public SoakBeliefs {
        byGroup = Map.copyOf(byGroup);
    }

    /** The same of all beans. */
    static SoakBeliefs all(SoakBelief belief) {
        return new SoakBeliefs(belief, Map.of());
    }

    public SoakBelief of(String soakGroup) {
        return byGroup.getOrDefault(soakGroup, otherwise);
    }

    /** Beans that soak through in a minute or so. */
    SoakBeliefs readyAtOnce() {
        Map<String, SoakBelief> ready = new TreeMap<>();
        byGroup.forEach((group, belief) -> ready.put(group, belief.readyAtOnce()));
        return new SoakBeliefs(otherwise.readyAtOnce(), ready);
    }
}

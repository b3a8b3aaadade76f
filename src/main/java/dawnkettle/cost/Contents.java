package dawnkettle.cost;

import dawnkettle.measure.Mass;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * What went into a batch, or into a part of one.
 *
 * @param beans dry beans by their soak group
 * @param kilojoules heat
 * @param used other materials by their code
 */
record Contents(Map<String, Mass> beans, long handSeconds, long kilojoules, Map<String, Mass> used) {
    static final Contents NOTHING = new Contents(Map.of(), 0, 0, Map.of());

    Contents {
        beans = new TreeMap<>(beans);
        used = new TreeMap<>(used);
    }

    /** Beans and nothing else. */
    static Contents ofBeans(Map<String, Mass> beans) {
        return new Contents(beans, 0, 0, Map.of());
    }

    Contents plus(Contents other) {
        return new Contents(
                joined(beans, other.beans),
                handSeconds + other.handSeconds,
                kilojoules + other.kilojoules,
                joined(used, other.used));
    }

    Mass allBeans() {
        return Mass.sum(beans.values());
    }

    /** Parts in proportion to {@code outputs}; joint milk carries its cost by mass, and so by the solids in it. */
    List<Contents> over(List<Mass> outputs) {
        List<BigDecimal> weights = outputs.stream()
                .map(mass -> BigDecimal.valueOf(mass.milligrams()))
                .toList();
        List<Map<String, Mass>> beanParts = parts(beans, weights);
        List<Long> handParts = Split.of(handSeconds, weights);
        List<Long> heatParts = Split.of(kilojoules, weights);
        List<Map<String, Mass>> usedParts = parts(used, weights);
        List<Contents> parts = new ArrayList<>();
        for (int i = 0; i < outputs.size(); i++)
            parts.add(new Contents(beanParts.get(i), handParts.get(i), heatParts.get(i), usedParts.get(i)));
        return parts;
    }

    private static List<Map<String, Mass>> parts(Map<String, Mass> whole, List<BigDecimal> weights) {
        List<Map<String, Mass>> parts = new ArrayList<>();
        for (int i = 0; i < weights.size(); i++) parts.add(new TreeMap<>());
        whole.forEach((code, mass) -> {
            List<Long> split = Split.of(mass.milligrams(), weights);
            for (int i = 0; i < split.size(); i++) parts.get(i).put(code, Mass.milligrams(split.get(i)));
        });
        return parts;
    }

    private static Map<String, Mass> joined(Map<String, Mass> one, Map<String, Mass> other) {
        Map<String, Mass> both = new TreeMap<>(one);
        other.forEach((code, mass) -> both.merge(code, mass, Mass::plus));
        return both;
    }
}

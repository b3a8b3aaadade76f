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
 * @param used other materials by their code
 */
record Contents(Mass beans, long handSeconds, Map<String, Mass> used) {
    Contents {
        used = new TreeMap<>(used);
    }

    Contents plus(Contents other) {
        Map<String, Mass> both = new TreeMap<>(used);
        other.used.forEach((material, mass) -> both.merge(material, mass, Mass::plus));
        return new Contents(beans.plus(other.beans), handSeconds + other.handSeconds, both);
    }

    /** Parts in proportion to {@code outputs}; joint milk carries its cost by mass, and so by the solids in it. */
    List<Contents> over(List<Mass> outputs) {
        List<BigDecimal> weights = outputs.stream()
                .map(mass -> BigDecimal.valueOf(mass.milligrams()))
                .toList();
        List<Long> beanParts = Split.of(beans.milligrams(), weights);
        List<Long> handParts = Split.of(handSeconds, weights);
        Map<String, List<Long>> usedParts = new TreeMap<>();
        used.forEach((material, mass) -> usedParts.put(material, Split.of(mass.milligrams(), weights)));
        List<Contents> parts = new ArrayList<>();
        for (int i = 0; i < outputs.size(); i++) {
            Map<String, Mass> part = new TreeMap<>();
            for (Map.Entry<String, List<Long>> material : usedParts.entrySet())
                part.put(material.getKey(), Mass.milligrams(material.getValue().get(i)));
            parts.add(new Contents(Mass.milligrams(beanParts.get(i)), handParts.get(i), part));
        }
        return parts;
    }
}

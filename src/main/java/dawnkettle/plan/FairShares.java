package dawnkettle.plan;

import dawnkettle.measure.Mass;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Who gets less when not all can be made: the higher priority first, then fair shares among equals. */
final class FairShares {
    private FairShares() {}

    /** Packs that each of {@code lines} may have of {@code room}; together they fit into it. */
    static Map<OpenLine, Integer> of(List<OpenLine> lines, Mass room) {
        TreeMap<Integer, List<OpenLine>> byPriority = new TreeMap<>();
        for (OpenLine line : lines)
            byPriority.computeIfAbsent(line.priority, key -> new ArrayList<>()).add(line);
        Map<OpenLine, Integer> shares = new HashMap<>();
        Mass left = room;
        for (List<OpenLine> equals : byPriority.values()) {
            Mass wanted = Mass.sum(equals.stream()
                    .map(line -> line.product.net().times(line.open()))
                    .toList());
            if (wanted.compareTo(left) > 0) share(equals, left, wanted, shares);
            else equals.forEach(line -> shares.put(line, line.open()));
            for (OpenLine line : equals)
                left = left.minusOrZero(line.product.net().times(shares.get(line)));
        }
        return shares;
    }

    /** Everybody gets the same share in whole packs; the packs that are over go to those cut most, one each. */
    private static void share(List<OpenLine> lines, Mass room, Mass wanted, Map<OpenLine, Integer> shares) {
        Mass left = room;
        for (OpenLine line : lines) {
            int packs = BigInteger.valueOf(line.open())
                    .multiply(BigInteger.valueOf(room.milligrams()))
                    .divide(BigInteger.valueOf(wanted.milligrams()))
                    .intValueExact();
            shares.put(line, packs);
            left = left.minusOrZero(line.product.net().times(packs));
        }
        List<OpenLine> mostCut = new ArrayList<>(lines);
        mostCut.sort(Comparator.comparingInt(line -> shares.get(line) - line.open()));
        for (OpenLine line : mostCut) {
            Mass pack = line.product.net();
            if (shares.get(line) < line.open() && pack.compareTo(left) <= 0) {
                shares.merge(line, 1, Integer::sum);
                left = left.minus(pack);
            }
        }
    }
}

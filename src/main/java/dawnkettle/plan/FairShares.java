package dawnkettle.plan;

import dawnkettle.measure.Mass;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeMap;

/** Who gets less when not all can be made: the higher priority first, then fair shares among equals. */
final class FairShares {
    private FairShares() {}

    /** Declines packs of {@code lines} so that what stays open fits into {@code room}. */
    static void cut(List<OpenLine> lines, Mass room, String why) {
        TreeMap<Integer, List<OpenLine>> byPriority = new TreeMap<>();
        for (OpenLine line : lines)
            byPriority.computeIfAbsent(line.priority, key -> new ArrayList<>()).add(line);
        Mass left = room;
        for (List<OpenLine> equals : byPriority.values()) {
            Mass wanted = wanted(equals);
            if (wanted.compareTo(left) > 0) share(equals, left, wanted, why);
            left = left.minusOrZero(wanted(equals));
        }
    }

    private static Mass wanted(List<OpenLine> lines) {
        return Mass.sum(lines.stream()
                .map(line -> line.product.net().times(line.open()))
                .toList());
    }

    /** Everybody gets the same share in whole packs; the packs that are over go to those cut most, one each. */
    private static void share(List<OpenLine> lines, Mass room, Mass wanted, String why) {
        Mass given = Mass.ZERO;
        List<OpenLine> order = new ArrayList<>(lines);
        List<Integer> keep = new ArrayList<>();
        for (OpenLine line : order) {
            int packs = BigInteger.valueOf(line.open())
                    .multiply(BigInteger.valueOf(room.milligrams()))
                    .divide(BigInteger.valueOf(Math.max(1, wanted.milligrams())))
                    .intValueExact();
            keep.add(packs);
            given = given.plus(line.product.net().times(packs));
        }
        Mass left = room.minusOrZero(given);
        List<Integer> mostCut = new ArrayList<>();
        for (int i = 0; i < order.size(); i++) mostCut.add(i);
        mostCut.sort(Comparator.comparingInt(i -> keep.get(i) - order.get(i).open()));
        for (int i : mostCut) {
            Mass pack = order.get(i).product.net();
            if (keep.get(i) < order.get(i).open() && pack.compareTo(left) <= 0) {
                keep.set(i, keep.get(i) + 1);
                left = left.minus(pack);
            }
        }
        for (int i = 0; i < order.size(); i++) order.get(i).decline(order.get(i).open() - keep.get(i), why);
    }
}

package dawnkettle.cost;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/** Shares a whole out so that the parts add up to it: the method of the largest remainder, ties to the earlier. */
public final class Split {
    private Split() {}

    /**
     * Parts of {@code total} in proportion to {@code weights}; equal ones where all weights are zero.
     *
     * @param weights none below zero, at least one unless the total is zero
     */
    public static List<Long> of(long total, List<BigDecimal> weights) {
        if (weights.isEmpty() && total == 0) return List.of();
        if (total < 0)
            return of(Math.negateExact(total), weights).stream()
                    .map(part -> -part)
                    .toList();
        List<BigInteger> whole = whole(weights);
        BigInteger sum = whole.stream().reduce(BigInteger.ZERO, BigInteger::add);
        if (sum.signum() == 0) return of(total, Collections.nCopies(weights.size(), BigDecimal.ONE));
        long[] parts = new long[whole.size()];
        BigInteger[] rest = new BigInteger[parts.length];
        long left = total;
        for (int i = 0; i < parts.length; i++) {
            BigInteger[] quota =
                    BigInteger.valueOf(total).multiply(whole.get(i)).divideAndRemainder(sum);
            parts[i] = quota[0].longValueExact();
            rest[i] = quota[1];
            left -= parts[i];
        }
        IntStream.range(0, parts.length)
                .boxed()
                .sorted(Comparator.comparing((Integer i) -> rest[i]).reversed())
                .limit(left)
                .forEach(i -> parts[i]++);
        return IntStream.range(0, parts.length).mapToObj(i -> parts[i]).toList();
    }

    private static List<BigInteger> whole(List<BigDecimal> weights) {
        int scale = weights.stream().mapToInt(BigDecimal::scale).max().orElse(0);
        for (BigDecimal weight : weights)
            if (weight.signum() < 0) throw new IllegalArgumentException("a weight below zero: " + weight);
        return weights.stream()
                .map(weight -> weight.movePointRight(Math.max(0, scale)).toBigInteger())
                .toList();
    }
}

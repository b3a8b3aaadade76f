package dawnkettle.store;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;

/** Numbers of labels within a product of a lot, as a person counts them: 1 to 36 and 41 to 60. */
public final class LabelNumbers {
    private final BitSet numbers;

    private LabelNumbers(BitSet numbers) {
        this.numbers = numbers;
    }

    public static LabelNumbers none() {
        return new LabelNumbers(new BitSet());
    }

    /** @param to the last, included; below {@code from} there are none */
    public static LabelNumbers of(int from, int to) {
        return none().plus(from, to);
    }

    LabelNumbers plus(int from, int to) {
        BitSet more = (BitSet) numbers.clone();
        if (to >= from) more.set(from, to + 1);
        return new LabelNumbers(more);
    }

    public LabelNumbers minus(LabelNumbers other) {
        BitSet rest = (BitSet) numbers.clone();
        rest.andNot(other.numbers);
        return new LabelNumbers(rest);
    }

    public boolean isEmpty() {
        return numbers.isEmpty();
    }

    public int count() {
        return numbers.cardinality();
    }

    /** First and last number, included. */
    public record Stretch(int from, int to) {
        @Override
        public String toString() {
            return from == to ? Integer.toString(from) : from + " to " + to;
        }
    }

    /** Without a gap each, the lowest first. */
    public List<Stretch> stretches() {
        List<Stretch> stretches = new ArrayList<>();
        for (int from = numbers.nextSetBit(0); from >= 0; ) {
            int after = numbers.nextClearBit(from);
            stretches.add(new Stretch(from, after - 1));
            from = numbers.nextSetBit(after);
        }
        return stretches;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof LabelNumbers that && numbers.equals(that.numbers);
    }

    @Override
    public int hashCode() {
        return numbers.hashCode();
    }

    @Override
    public String toString() {
        List<String> words = stretches().stream().map(Stretch::toString).toList();
        if (words.size() < 2) return String.join("", words);
        int last = words.size() - 1;
        return String.join(", ", words.subList(0, last)) + " and " + words.get(last);
    }
}

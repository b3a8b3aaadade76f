package dawnkettle.label;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The labels of one product of one lot, in the order they come out.
 *
 * @param first number of the first counted label here; above 1 where a run is gone on with
 * @param again whether these are marked copies of labels that the run itself has
 */
public record LabelRun(String lot, String product, int first, List<LabelCopies> labels, boolean again) {
    public LabelRun {
        labels = List.copyOf(labels);
    }

    public static LabelRun whole(String lot, String product, List<LabelCopies> labels) {
        return new LabelRun(lot, product, 1, labels, false);
    }

    /** Number of the last label: with {@link #first} 1, how many there are. Slips are not counted. */
    public int last() {
        return first
                - 1
                + labels.stream()
                        .filter(LabelCopies::isCounted)
                        .mapToInt(LabelCopies::copies)
                        .sum();
    }

    /** What is left from label {@code number} on; the slips before it are left out. */
    public LabelRun from(int number) {
        if (number <= first) return this;
        List<LabelCopies> left = new ArrayList<>();
        int next = first;
        for (LabelCopies copies : labels) {
            if (!copies.isCounted()) {
                if (next >= number) left.add(copies);
                continue;
            }
            int until = next + copies.copies();
            if (until > number) left.add(copies.times(until - Math.max(next, number)));
            next = until;
        }
        return new LabelRun(lot, product, number, left, again);
    }

    /** Only the labels {@code from} to {@code to}, as for a reprint. */
    public LabelRun only(int from, int to) {
        List<LabelCopies> kept = new ArrayList<>();
        int next = Math.max(first, from);
        for (LabelCopies copies : from(from).labels()) {
            if (!copies.isCounted() || next > to) continue;
            int count = Math.min(copies.copies(), to - next + 1);
            kept.add(copies.times(count));
            next += count;
        }
        return new LabelRun(lot, product, from, kept, again);
    }

    LabelRun asCopies() {
        return new LabelRun(lot, product, first, labels, true);
    }

    /** The picture a person would look at: the whole case's, or the part case's where there is no whole one. */
    public Optional<Dots> shown() {
        return picture(LabelCopies.Kind.CASE)
                .or(() -> picture(LabelCopies.Kind.PART_CASE))
                .or(() -> picture(LabelCopies.Kind.SLIP));
    }

    private Optional<Dots> picture(LabelCopies.Kind kind) {
        return labels.stream()
                .filter(copies -> copies.kind() == kind)
                .map(LabelCopies::picture)
                .findFirst();
    }
}

package dawnkettle.plan;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.ToIntFunction;

/**
 * Serves lines that came late from the batches of a plan that stands: from those that are packed in time for their van, or
 * by an exchange with a line whose van leaves later. What would make a van late stays open.
 */
final class LateServing {
    private final List<Brew> brews;
    private final ToIntFunction<Brew> packed;

    /**
     * @param brews of one recipe, with what is free of them emptied out
     * @param packed the minute at which a batch is packed and cold
     */
    LateServing(List<Brew> brews, ToIntFunction<Brew> packed) {
        this.brews = brews;
        this.packed = packed;
    }

    /**
     * @param lines all that want something of the recipe
     * @param movable lines whose lots may still be exchanged: their vans have not gone
     */
    void serve(List<OpenLine> lines, List<OpenLine> movable) {
        List<OpenLine> open = lines.stream()
                .filter(line -> line.line.isPresent())
                .sorted(Comparator.comparingInt((OpenLine line) -> line.priority)
                        .thenComparingInt(line -> line.dueMinute)
                        .thenComparing(line -> line.line.orElseThrow().order()))
                .toList();
        for (OpenLine line : open) {
            for (Brew brew : inTime(line.dueMinute)) give(brew, line, brew.fill(line.product, line.open()));
            exchange(line, movable);
        }
    }

    /** Batches packed by a minute, the last first: the early ones are kept for whoever needs them. */
    private List<Brew> inTime(int dueMinute) {
        return brews.stream()
                .filter(brew -> packed.applyAsInt(brew) <= dueMinute)
                .sorted(Comparator.comparingInt(packed).reversed().thenComparing(brew -> brew.name))
                .toList();
    }

    private static void give(Brew brew, OpenLine line, int packs) {
        if (packs == 0) return;
        line.gifts.add(new OpenLine.Gift(Optional.empty(), Optional.of(brew), packs));
        brew.dues.add(line.due);
    }

    /** Takes packs of early batches from lines that a later batch with room serves in time as well. */
    private void exchange(OpenLine line, List<OpenLine> all) {
        for (Brew early : inTime(line.dueMinute))
            for (OpenLine other : all)
                if (other.product.equals(line.product) && other.dueMinute > line.dueMinute)
                    exchange(line, other, early);
    }

    private void exchange(OpenLine line, OpenLine other, Brew early) {
        for (Brew late : inTime(other.dueMinute)) {
            int packs = Math.min(line.open(), other.givenBy(early));
            packs = (int) Math.min(packs, late.room().dividedBy(line.product.net()));
            if (packs == 0 || late == early) continue;
            other.giveBack(early, packs);
            give(late, other, late.fill(line.product, packs));
            give(early, line, packs);
        }
    }
}

package dawnkettle.floor;

import java.util.Comparator;
import java.util.function.ToIntFunction;
import java.util.stream.IntStream;

/** A day on which orders of pieces can be laid and read off again. */
final class Laid {
    final Pieces pieces;
    final Floor floor;
    private final Sequence sequence;

    Laid(FloorDay day) {
        pieces = new Pieces(day);
        floor = new Floor(pieces.asDay());
        sequence = new Sequence(floor, pieces);
    }

    /** Lays an order so that no job stands in part. */
    Draft lay(int[] order) {
        sequence.layWhole(order);
        return new Draft(order, sequence.grave, sequence.mild);
    }

    /** What was laid last, to be written down. */
    WrittenRun written() {
        return new WrittenRun(floor, pieces, sequence);
    }

    /** The minute at which a step of a job begins in what was laid last. */
    int start(int job, int step) {
        int piece = pieces.first(job);
        while (piece < pieces.last(job) && pieces.offset(piece + 1) <= step) piece++;
        return sequence.chain.start[floor.jobs.first[piece] + step - pieces.offset(piece)];
    }

    int end(int job, int step) {
        return start(job, step) + pieces.whole(job).operations().get(step).minutes();
    }

    /** All pieces by a key, of two alike first the one that the other is made from. */
    int[] orderBy(ToIntFunction<Integer> key) {
        return IntStream.range(0, pieces.size())
                .boxed()
                .sorted(Comparator.comparingInt(key)
                        .thenComparingInt(floor.lineage::rank)
                        .thenComparingInt(piece -> piece))
                .mapToInt(piece -> piece)
                .toArray();
    }
}

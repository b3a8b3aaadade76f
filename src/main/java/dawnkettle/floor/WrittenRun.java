package dawnkettle.floor;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** What stands on the floor, written down; here the places of pooled stations get their numbers. */
final class WrittenRun {
    private static final Comparator<Placement> BY_START = Comparator.comparingInt(Placement::start)
            .thenComparing(Placement::job)
            .thenComparingInt(Placement::operation);

    private final Floor floor;
    private final JobRows jobs;
    private final Chain chain;
    private final List<Placement> placements = new ArrayList<>();
    private final List<String> unplaced = new ArrayList<>();

    /** @param floor the floor of the pieces */
    WrittenRun(Floor floor, Pieces pieces, Sequence sequence) {
        this.floor = floor;
        jobs = floor.jobs;
        chain = sequence.chain;
        for (int whole = 0; whole < pieces.jobs(); whole++) {
            boolean left = sequence.isUnplaced(whole);
            if (left) unplaced.add(pieces.whole(whole).id());
            for (int piece = pieces.first(whole); piece <= pieces.last(whole); piece++) {
                int until = left ? jobs.open[piece] : jobs.first[piece + 1];
                int shift = pieces.offset(piece) - jobs.first[piece];
                for (int operation = jobs.first[piece]; operation < until; operation++)
                    placements.add(placement(pieces.whole(whole), operation, operation + shift));
            }
        }
        placements.sort(BY_START);
        for (int station = 0; station < chain.benches.length; station++)
            if (chain.benches[station] instanceof PooledBench)
                deal(floor.day.stations().get(station));
    }

    private Placement placement(Job whole, int operation, int step) {
        if (jobs.isFixed(operation)) return whole.fixed().get(step);
        return new Placement(
                whole.id(),
                step,
                floor.day.stations().get(chain.station[operation]).code(),
                chain.place[operation],
                chain.start[operation],
                chain.end[operation]);
    }

    /** In order of start a place is always free where never more were taken than there are. */
    private void deal(Station station) {
        int[] freeFrom = new int[station.places()];
        for (int number = 0; number < placements.size(); number++) {
            Placement placement = placements.get(number);
            if (!placement.station().equals(station.code()) || placement.start() == placement.end()) continue;
            int place = 0;
            while (freeFrom[place] > placement.start()) place++;
            freeFrom[place] = placement.end();
            placements.set(number, at(placement, place));
        }
    }

    private static Placement at(Placement placement, int place) {
        return new Placement(
                placement.job(), placement.operation(), placement.station(), place, placement.start(), placement.end());
    }

    List<Placement> placements() {
        return List.copyOf(placements);
    }

    List<String> unplaced() {
        return List.copyOf(unplaced);
    }
}

package dawnkettle.sheet;

import dawnkettle.measure.Mass;
import dawnkettle.plan.PlannedOperation;
import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;

/** A bath or cold room, which counts by mass: how full it is through the day. */
record LoadLane(Day day, String station, long capacityGrams, List<PlannedOperation> operations) implements Lane {
    private static final double HEIGHT_MM = 8;
    private static final double GAP_MM = 0.6;

    @Override
    public double heightMm(Strip strip) {
        return Math.max(HEIGHT_MM, Lane.nameMm(name(), strip.namesMm(), strip.typeface()));
    }

    @Override
    public void draw(Strip strip, Canvas canvas, Frame frame) {
        Lane.name(name(), strip.namesMm(), canvas, frame);
        List<Instant> moments = moments();
        double full = frame.height() - 2 * GAP_MM;
        for (int i = 0; i + 1 < moments.size(); i++) {
            double share = (double) load(moments.get(i)).milligrams() / (capacityGrams * 1000.0);
            if (share == 0) continue;
            double height = full * Math.min(1, share);
            double left = strip.at(moments.get(i));
            double width = strip.at(moments.get(i + 1)) - left;
            canvas.box(new Frame(left, frame.bottom() - GAP_MM - height, width, height), Mark.Look.GREY);
        }
        canvas.across(strip.at(moments.get(0)), strip.rightMm(), frame.bottom() - GAP_MM - full, 0.1);
    }

    private String name() {
        Mass most = moments().stream().map(this::load).reduce(Mass.ZERO, Mass::max);
        Measures measures = day.desk().measures();
        String load = day.desk()
                .first(Word.RUN_LOAD, measures.aboutMass(most), measures.aboutMass(Mass.grams(capacityGrams)));
        return day.desk().first(Word.RUN_LANE, day.stationName(station), load);
    }

    private List<Instant> moments() {
        return operations.stream()
                .flatMap(operation -> Stream.of(operation.start(), operation.end()))
                .distinct()
                .sorted()
                .toList();
    }

    private Mass load(Instant at) {
        return Mass.sum(operations.stream()
                .filter(operation ->
                        !operation.start().isAfter(at) && operation.end().isAfter(at))
                .map(PlannedOperation::occupies)
                .toList());
    }
}

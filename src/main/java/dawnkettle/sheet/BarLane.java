package dawnkettle.sheet;

import dawnkettle.plan.PlannedOperation;
import java.util.List;
import java.util.stream.Stream;

/** A place of a station: a bar for each batch that stands there. */
record BarLane(String name, List<PlannedOperation> operations) implements Lane {
    private static final double GAP_MM = 0.45;
    private static final Lettering ID = Lettering.bold(9).aligned(Lettering.Align.CENTRE);
    private static final Lettering SMALL_ID = ID.ofPoints(7.5);

    @Override
    public double heightMm(Strip strip) {
        return Math.max(strip.laneMm(), Lane.nameMm(name, strip.namesMm(), strip.typeface()));
    }

    @Override
    public void draw(Strip strip, Canvas canvas, Frame frame) {
        Lane.name(name, strip.namesMm(), canvas, frame);
        for (PlannedOperation operation : operations) bar(strip, canvas, frame, operation);
    }

    private static void bar(Strip strip, Canvas canvas, Frame frame, PlannedOperation operation) {
        double left = strip.at(operation.start());
        double width = strip.at(operation.end()) - left;
        Frame bar = new Frame(left, frame.y() + GAP_MM, width, frame.height() - 2 * GAP_MM);
        canvas.box(bar, Mark.Look.LIGHT);
        String bare = operation.batch().replaceFirst("^\\D*0*(?=\\d)", "");
        record Try(String text, Lettering lettering) {}
        Stream.of(new Try(operation.batch(), ID), new Try(bare, ID), new Try(bare, SMALL_ID))
                .filter(id -> canvas.typeface().widthMm(id.text(), id.lettering()) <= width - 0.6)
                .findFirst()
                .ifPresent(id -> canvas.text(
                        left + width / 2,
                        bar.y() + bar.height() / 2 + id.lettering().points() * Lettering.MM_A_POINT * 0.36,
                        id.lettering(),
                        id.text()));
    }
}

package dawnkettle.sheet;

import dawnkettle.cost.Bars;
import dawnkettle.cost.Chart;
import dawnkettle.cost.ChartScale;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;

/** Charts as lines and boxes on a page. Lines differ by weight and dash, never by colour. */
final class ChartMarks {
    private static final Lettering SMALL = Lettering.plain(8);
    private static final Lettering TITLE = Lettering.bold(9.5);
    private static final double AXIS_MM = 11;
    private static final double FOOT_MM = 5;
    private static final double KEY_MM = 4;
    private static final double HEAD_MM = 5;
    private static final double GRID_MM = 0.15;
    private static final double[] WEIGHTS = {0.6, 0.35, 0.25, 0.35};
    /** Length of a dash and of the gap after it; no gap for a line that goes through. */
    private static final double[][] DASHES = {{1, 0}, {2.4, 1.2}, {0.6, 0.9}, {2.4, 1.2}};

    private final Canvas canvas;

    ChartMarks(Canvas canvas) {
        this.canvas = canvas;
    }

    void curves(Chart chart, Frame frame) {
        double y = canvas.lines(frame, TITLE, chart.title() + ", " + chart.unit()) + 1;
        for (int i = 0; i < chart.lines().size(); i++, y += KEY_MM)
            key(chart.lines().get(i).name(), i, frame.x(), y);
        Frame plot =
                new Frame(frame.x() + AXIS_MM, y + 2, frame.width() - AXIS_MM - 2, frame.bottom() - FOOT_MM - y - 2);
        ChartScale scale = ChartScale.of(chart.least(), chart.most());
        rules(scale, plot);
        months(chart.weeks(), plot);
        for (int i = 0; i < chart.lines().size(); i++) line(chart.lines().get(i).values(), i, scale, plot);
    }

    private void key(String name, int number, double x, double y) {
        stroke(new Mark.Rule(x, y + KEY_MM / 2, x + 9, y + KEY_MM / 2, WEIGHTS[number]), number);
        canvas.text(x + 11, y + KEY_MM / 2 + 1, SMALL, name);
    }

    private void rules(ChartScale scale, Frame plot) {
        List<String> labels = scale.labels();
        for (int i = 0; i < labels.size(); i++) {
            double y = plot.bottom() - plot.height() * i / scale.marks();
            if (i == 0) canvas.across(plot.x(), plot.right(), y, 0.3);
            else canvas.box(new Frame(plot.x(), y - GRID_MM / 2, plot.width(), GRID_MM), Mark.Look.GREY);
            canvas.text(plot.x() - 1.5, y + 1, SMALL.aligned(Lettering.Align.RIGHT), labels.get(i));
        }
    }

    private void months(List<LocalDate> weeks, Frame plot) {
        double free = 0;
        for (int i = 0; i < weeks.size(); i++) {
            boolean first =
                    i == 0 || weeks.get(i - 1).getMonthValue() != weeks.get(i).getMonthValue();
            double x = x(i, weeks.size(), plot);
            if (!first || x < free || x > plot.right() - 6) continue;
            canvas.down(x, plot.bottom(), plot.bottom() + 1.2, 0.2);
            String month = weeks.get(i).getMonth().name();
            canvas.text(
                    x,
                    plot.bottom() + FOOT_MM - 0.6,
                    SMALL,
                    month.charAt(0) + month.substring(1, 3).toLowerCase(Locale.ROOT));
            free = x + 8;
        }
    }

    private static double x(int week, int weeks, Frame plot) {
        return plot.x() + 1.5 + (plot.width() - 3) * week / Math.max(1, weeks - 1);
    }

    private void line(List<BigDecimal> values, int number, ChartScale scale, Frame plot) {
        for (int i = 1; i < values.size(); i++)
            stroke(
                    new Mark.Rule(
                            x(i - 1, values.size(), plot),
                            plot.bottom() - plot.height() * scale.share(values.get(i - 1)),
                            x(i, values.size(), plot),
                            plot.bottom() - plot.height() * scale.share(values.get(i)),
                            WEIGHTS[number]),
                    number);
        int last = values.size() - 1;
        double y = plot.bottom() - plot.height() * scale.share(values.get(last));
        if (number == 0) canvas.box(new Frame(x(last, values.size(), plot) - 0.7, y - 0.7, 1.4, 1.4), Mark.Look.BLACK);
    }

    /** Whole, or in dashes. */
    private void stroke(Mark.Rule whole, int number) {
        double across = whole.x2() - whole.x1();
        double down = whole.y2() - whole.y1();
        double length = Math.hypot(across, down);
        double dash = DASHES[number][0];
        double gap = DASHES[number][1];
        if (gap == 0) {
            canvas.line(whole);
            return;
        }
        for (double at = 0; at < length; at += dash + gap) {
            double from = at / length;
            double until = Math.min(length, at + dash) / length;
            canvas.line(new Mark.Rule(
                    whole.x1() + across * from,
                    whole.y1() + down * from,
                    whole.x1() + across * until,
                    whole.y1() + down * until,
                    WEIGHTS[number]));
        }
    }

    void bars(Bars bars, Frame frame) {
        canvas.text(
                frame.x(),
                frame.y() + TITLE.riseMm(),
                TITLE,
                bars.title() + ", " + bars.unit().split(" ")[0]);
        double row = Math.min(6, (frame.height() - HEAD_MM) / bars.bars().size());
        double names = frame.width() * 0.42;
        double figures = 12;
        double span = Math.max(1e-9, bars.most() - bars.least());
        double room = frame.width() - names - figures - (bars.least() < 0 ? figures : 0);
        double zero = frame.x() + names + (bars.least() < 0 ? figures : 0) - room * bars.least() / span;
        for (int i = 0; i < bars.bars().size(); i++) {
            Bars.Bar bar = bars.bars().get(i);
            double y = frame.y() + HEAD_MM + row * i;
            double length = room * bar.value().doubleValue() / span;
            canvas.text(frame.x(), y + row / 2 + 1, SMALL, bar.name());
            if (Math.abs(length) > 0.05)
                canvas.box(
                        new Frame(Math.min(zero, zero + length), y + row * 0.2, Math.abs(length), row * 0.6),
                        length > 0 ? Mark.Look.GREY : Mark.Look.OPEN);
            Lettering figure = length < 0 ? SMALL.aligned(Lettering.Align.RIGHT) : SMALL;
            canvas.text(
                    zero + length + (length < 0 ? -1 : 1),
                    y + row / 2 + 1,
                    figure,
                    bar.value().toPlainString());
        }
        canvas.down(
                zero,
                frame.y() + HEAD_MM,
                frame.y() + HEAD_MM + row * bars.bars().size(),
                0.3);
    }
}

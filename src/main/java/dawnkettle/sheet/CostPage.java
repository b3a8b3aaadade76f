package dawnkettle.sheet;

import dawnkettle.cost.Bars;
import dawnkettle.cost.Chart;
import dawnkettle.shop.House;
import java.time.LocalDate;
import java.time.temporal.IsoFields;
import java.util.List;
import java.util.Optional;

/** The weekly cost report on one page: what a kilogram cost, what moved it, what to do, and the charts. */
public final class CostPage {
    private static final double MARGIN_MM = 14;
    private static final double GAP_MM = 5;
    private static final double CHART_MM = 50;
    private static final double BARS_MM = 45;
    private static final double MOST_CHART_MM = 65;
    private static final double BAR_MM = 4.4;
    private static final double LEAST_BAR_MM = 3.3;
    private static final double HEAD_MM = 5;
    private static final Lettering TITLE = Lettering.bold(16);
    private static final Lettering FACTS = Lettering.plain(9);
    private static final Lettering HEADING = Lettering.bold(11);
    private static final Lettering TEXT = Lettering.plain(9.5);
    private static final String FOOT =
            "Costs as computed from the plans and the prices written down; not the books, and no advice on tax. "
                    + "Prices stay as they are until you change them.";

    private final House house;
    private final SheetStyle style;

    public CostPage(House house, SheetStyle style) {
        this.house = house;
        this.style = style;
    }

    /** Lines under a heading; without one where it is empty. */
    public record Part(String heading, List<String> lines) {
        public Part {
            lines = List.copyOf(lines);
        }
    }

    /** Charts of one or two courses, and bars where there are any. */
    public record Pictures(List<Chart> charts, Optional<Bars> bars) {
        public Pictures {
            charts = List.copyOf(charts);
        }
    }

    public Sheet of(LocalDate monday, List<Part> parts, Pictures pictures) {
        Canvas canvas = new Canvas(style.typeface());
        PaperSize paper = style.paper();
        double width = paper.widthMm() - 2 * MARGIN_MM;
        String title = "Costs of week " + monday.get(IsoFields.WEEK_OF_WEEK_BASED_YEAR);
        Frame top = new Frame(MARGIN_MM, MARGIN_MM, width, 0);
        double y = canvas.lines(top, TITLE, title);
        y = canvas.lines(new Frame(MARGIN_MM, y, width, 0), FACTS, house.name() + ", week from " + monday);
        canvas.across(MARGIN_MM, MARGIN_MM + width, y + 1, 0.5);
        double bottom = paper.heightMm() - MARGIN_MM - 6;
        double least = CHART_MM + GAP_MM + (pictures.bars().isPresent() ? BARS_MM : 0);
        y = text(canvas, new Frame(MARGIN_MM, y + 2, width, bottom - least - y - 2), parts) + GAP_MM / 2;
        pictures(canvas, new Frame(MARGIN_MM, y, width, bottom - y), pictures);
        canvas.lines(new Frame(MARGIN_MM, paper.heightMm() - MARGIN_MM - 4, width, 0), Lettering.plain(7.5), FOOT);
        Imprint imprint = new Imprint(
                title,
                "en",
                paper,
                monday.plusWeeks(1).atStartOfDay(house.zone()).toInstant());
        Page page = canvas.under(new Canvas(style.typeface()));
        return new Sheet(Sheet.Kind.COST, "costs", imprint, List.of(page));
    }

    /** Courses beside each other, bars below them: the longest and the shortest where not all find room. */
    private void pictures(Canvas canvas, Frame frame, Pictures pictures) {
        ChartMarks marks = new ChartMarks(canvas);
        int count = pictures.charts().size();
        double each = (frame.width() - GAP_MM * (count - 1)) / count;
        double bars = pictures.bars().isEmpty() ? 0 : GAP_MM + BARS_MM;
        double height = Math.max(CHART_MM, Math.min(MOST_CHART_MM, frame.height() - bars));
        for (int i = 0; i < count; i++)
            marks.curves(pictures.charts().get(i), new Frame(frame.x() + (each + GAP_MM) * i, frame.y(), each, height));
        double y = frame.y() + height + GAP_MM;
        pictures.bars().ifPresent(all -> {
            int room = (int) ((frame.bottom() - y - HEAD_MM) / LEAST_BAR_MM);
            Bars shown = all.ends(Math.max(2, room));
            double high =
                    Math.min(frame.bottom() - y, HEAD_MM + BAR_MM * shown.bars().size());
            marks.bars(shown, new Frame(frame.x(), y, frame.width(), high));
        });
    }

    /** As many lines as there is room for: the rest stands in the mail, and the page says so. */
    private double text(Canvas canvas, Frame frame, List<Part> parts) {
        Wrapping wrapping = new Wrapping(style.typeface());
        double y = frame.y();
        for (Part part : parts) {
            if (part.lines().isEmpty()) continue;
            if (!part.heading().isEmpty())
                y = canvas.lines(new Frame(frame.x(), y + 1.5, frame.width(), 0), HEADING, part.heading());
            for (String line : part.lines()) {
                double height = wrapping.lines(line, TEXT, frame.width() - 4).size() * TEXT.lineMm();
                if (y + height > frame.bottom() - TEXT.lineMm()) {
                    return canvas.lines(new Frame(frame.x(), y, frame.width(), 0), TEXT, "More stands in the mail.");
                }
                canvas.text(frame.x(), y + TEXT.riseMm(), TEXT, "–");
                y = canvas.lines(new Frame(frame.x() + 4, y, frame.width() - 4, 0), TEXT, line);
            }
        }
        return y;
    }
}

package dawnkettle.sheet;

import dawnkettle.plan.PlannedRoute;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;

/** When the vans leave, and which of them are late. */
record VanLane(Day day) implements Lane {
    private static final Lettering LABEL = Lettering.bold(9);
    private static final double LINE_MM = 4.6;
    private static final double TICK_MM = 1.2;

    @Override
    public double heightMm(Strip strip) {
        return LINE_MM * (lines(strip) + later(strip).size()) + 1;
    }

    private int lines(Strip strip) {
        return placed(strip).stream().mapToInt(van -> van.line() + 1).max().orElse(0);
    }

    @Override
    public void draw(Strip strip, Canvas canvas, Frame frame) {
        Lane.name(day.desk().first(Word.RUN_VANS), strip.namesMm(), canvas, frame);
        for (Van van : placed(strip)) {
            double y = frame.y() + van.line() * LINE_MM;
            double left = Math.min(strip.at(van.route().departs()) - 0.5, strip.rightMm() - 1);
            canvas.box(new Frame(left, y + TICK_MM, 1, LINE_MM - TICK_MM), Mark.Look.BLACK);
            label(canvas, van.x(), y, van.label());
        }
        double y = frame.y() + lines(strip) * LINE_MM;
        for (String later : later(strip)) {
            label(canvas, strip.rightMm() - 1 - strip.typeface().widthMm(later, LABEL), y, later);
            y += LINE_MM;
        }
    }

    /** On white, so that the grid of hours does not run through it. */
    private static void label(Canvas canvas, double x, double y, String label) {
        double width = canvas.typeface().widthMm(label, LABEL);
        canvas.box(new Frame(x - 0.3, y + 0.5, width + 0.6, LINE_MM - 0.2), Mark.Look.BARE);
        canvas.text(x, y + LINE_MM - 1.1, LABEL, label);
    }

    /** The vans that leave after the strip ends, in a line of their own: they are in the table of vans with all that matters. */
    private List<String> later(Strip strip) {
        String vans = day.plan().routes().stream()
                .filter(route -> !strip.shows(route.departs()))
                .sorted(Comparator.comparing(PlannedRoute::departs).thenComparing(PlannedRoute::route))
                .map(route -> label(route, day.desk().dates().timeFrom(route.departs(), day.date())))
                .collect(Collectors.joining("  ·  "));
        if (vans.isEmpty()) return List.of();
        double width = strip.rightMm() - Flow.MARGIN_MM - strip.namesMm() - 2;
        return new Wrapping(strip.typeface()).lines(day.desk().first(Word.RUN_LATER, vans), LABEL, width);
    }

    /** A van's label, on the first line where it touches no other. */
    private record Van(PlannedRoute route, String label, double x, double width, int line) {
        boolean touches(double otherX, double otherWidth, int otherLine) {
            return line == otherLine && otherX < x + width + 2.5 && x < otherX + otherWidth + 2.5;
        }
    }

    private List<Van> placed(Strip strip) {
        List<Van> placed = new ArrayList<>();
        List<PlannedRoute> routes = day.plan().routes().stream()
                .filter(route -> strip.shows(route.departs()))
                .sorted(Comparator.comparing(PlannedRoute::departs).thenComparing(PlannedRoute::route))
                .toList();
        for (PlannedRoute route : routes) {
            String label = label(route, day.desk().dates().time(route.departs()));
            double width = strip.typeface().widthMm(label, LABEL);
            double at = strip.at(route.departs());
            double x = at + 1 + width > strip.rightMm() ? at - 1 - width : at + 1;
            int line = 0;
            while (touches(placed, x - 2, width + 4, line)) line++;
            placed.add(new Van(route, label, x, width, line));
        }
        return placed;
    }

    private static boolean touches(List<Van> placed, double x, double width, int line) {
        return placed.stream().anyMatch(van -> van.touches(x, width, line));
    }

    private String label(PlannedRoute route, String when) {
        String label = route.route() + " " + when;
        return route.lateMinutes() == 0 ? label : label + " " + day.desk().first(Word.LATE, route.lateMinutes());
    }
}

package dawnkettle.sheet;

import dawnkettle.plan.PlannedRoute;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** When the vans leave, and which of them are late. */
record VanLane(Day day) implements Lane {
    private static final Lettering LABEL = Lettering.bold(9);
    private static final double LINE_MM = 4.6;
    private static final double TICK_MM = 1.2;

    @Override
    public double heightMm(Strip strip) {
        return LINE_MM * (1 + placed(strip).stream().mapToInt(Van::line).max().orElse(0)) + 1;
    }

    @Override
    public void draw(Strip strip, Canvas canvas, Frame frame) {
        Lane.name(day.desk().say(Word.RUN_VANS), strip.namesMm(), canvas, frame);
        for (Van van : placed(strip)) {
            double y = frame.y() + van.line() * LINE_MM;
            double at = strip.at(van.route().departs());
            double left = Math.min(at - 0.5, strip.rightMm() - 1);
            canvas.box(new Frame(left, y + TICK_MM, 1, LINE_MM - TICK_MM), Mark.Look.BLACK);
            canvas.box(new Frame(van.x() - 0.3, y + 0.5, van.width() + 0.6, LINE_MM - 0.2), Mark.Look.BARE);
            canvas.text(van.x(), y + LINE_MM - 1.1, LABEL, van.label());
        }
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
                .sorted(Comparator.comparing(PlannedRoute::departs).thenComparing(PlannedRoute::route))
                .toList();
        for (PlannedRoute route : routes) {
            String label = label(route);
            double width = strip.typeface().widthMm(label, LABEL);
            double right = strip.at(route.departs()) + 1;
            double x = right + width > strip.rightMm() ? strip.at(route.departs()) - 1 - width : right;
            int line = 0;
            while (touches(placed, x - 2, width + 4, line)) line++;
            placed.add(new Van(route, label, x, width, line));
        }
        return placed;
    }

    private static boolean touches(List<Van> placed, double x, double width, int line) {
        return placed.stream().anyMatch(van -> van.touches(x, width, line));
    }

    private String label(PlannedRoute route) {
        String time = route.route() + " " + day.desk().dates().time(route.departs());
        return route.lateMinutes() == 0 ? time : time + " " + day.desk().say(Word.LATE, route.lateMinutes());
    }
}

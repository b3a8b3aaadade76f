package dawnkettle.draw;

import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.PathIterator;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Fills an outline with whole dots: a dot is black where its middle lies inside. Our own, and short, because the tool kit
 * of the platform nudges outlines by rules that differ between its versions, and a label must not.
 */
final class OutlineFill {
    /** How far a flattened curve may stray, in dots. */
    private static final double FLATNESS = 0.02;

    private final List<Edge> edges = new ArrayList<>();

    /** A straight piece of outline; {@code turn} is its share of the winding, 1 down, -1 up. */
    private record Edge(double x, double top, double bottom, double slope, int turn) {
        boolean crosses(double y) {
            return top <= y && y < bottom;
        }

        double at(double y) {
            return x + (y - top) * slope;
        }
    }

    private record Crossing(double x, int turn) {}

    /** Takes dots from {@code from} until {@code until}, the latter not itself. */
    interface Span {
        void ink(int y, int from, int until);
    }

    OutlineFill(Shape outline, AffineTransform toDots) {
        PathIterator path = outline.getPathIterator(toDots, FLATNESS);
        double[] point = new double[6];
        double startX = 0;
        double startY = 0;
        double x = 0;
        double y = 0;
        for (; !path.isDone(); path.next()) {
            int kind = path.currentSegment(point);
            double nextX = kind == PathIterator.SEG_CLOSE ? startX : point[0];
            double nextY = kind == PathIterator.SEG_CLOSE ? startY : point[1];
            if (kind == PathIterator.SEG_MOVETO) {
                startX = nextX;
                startY = nextY;
            } else addEdge(x, y, nextX, nextY);
            x = nextX;
            y = nextY;
        }
    }

    private void addEdge(double x1, double y1, double x2, double y2) {
        if (y1 == y2) return;
        double slope = (x2 - x1) / (y2 - y1);
        edges.add(y1 < y2 ? new Edge(x1, y1, y2, slope, 1) : new Edge(x2, y2, y1, slope, -1));
    }

    void into(Span span) {
        double top = edges.stream().mapToDouble(Edge::top).min().orElse(0);
        double bottom = edges.stream().mapToDouble(Edge::bottom).max().orElse(0);
        for (int y = (int) Math.floor(top); y <= (int) Math.ceil(bottom); y++) fillRow(y, span);
    }

    private void fillRow(int row, Span span) {
        double middle = row + 0.5;
        List<Crossing> crossings = edges.stream()
                .filter(edge -> edge.crosses(middle))
                .map(edge -> new Crossing(edge.at(middle), edge.turn()))
                .sorted(Comparator.comparingDouble(Crossing::x))
                .toList();
        int winding = 0;
        for (int i = 0; i < crossings.size() - 1; i++) {
            winding += crossings.get(i).turn();
            if (winding != 0)
                inkBetween(row, crossings.get(i).x(), crossings.get(i + 1).x(), span);
        }
    }

    private static void inkBetween(int row, double left, double right, Span span) {
        int from = (int) Math.ceil(left - 0.5);
        int until = (int) Math.ceil(right - 0.5);
        if (until > from) span.ink(row, from, until);
    }
}

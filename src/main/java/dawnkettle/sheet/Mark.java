package dawnkettle.sheet;

import java.util.Locale;

/** One thing on a page. Millimetres from the top left corner, y downward. */
public sealed interface Mark {
    /** Hands itself to whoever draws. */
    void showTo(Pen pen);

    /** The same, lower by so many millimetres. */
    Mark lowered(double mm);

    /** Whoever draws: one way for each sort of mark. */
    interface Pen {
        void text(Text text);

        void rule(Rule rule);

        void box(Box box);
    }

    /**
     * A line of text.
     *
     * @param x left edge, middle or right edge, as the lettering is aligned
     * @param baseline y on which the letters stand
     */
    record Text(double x, double baseline, Lettering lettering, String string) implements Mark {
        @Override
        public void showTo(Pen pen) {
            pen.text(this);
        }

        @Override
        public Mark lowered(double mm) {
            return new Text(x, baseline + mm, lettering, string);
        }

        @Override
        public String toString() {
            return String.format(Locale.ROOT, "text %.2f %.2f %s |%s|", x, baseline, lettering, string);
        }
    }

    /** A straight line. */
    record Rule(double x1, double y1, double x2, double y2, double widthMm) implements Mark {
        @Override
        public void showTo(Pen pen) {
            pen.rule(this);
        }

        @Override
        public Mark lowered(double mm) {
            return new Rule(x1, y1 + mm, x2, y2 + mm, widthMm);
        }

        @Override
        public String toString() {
            return String.format(Locale.ROOT, "rule %.2f %.2f %.2f %.2f w%.2f", x1, y1, x2, y2, widthMm);
        }
    }

    /** A rectangle from its top left corner. */
    record Box(double x, double y, double width, double height, Look look) implements Mark {
        @Override
        public void showTo(Pen pen) {
            pen.box(this);
        }

        @Override
        public Mark lowered(double mm) {
            return new Box(x, y + mm, width, height, look);
        }

        @Override
        public String toString() {
            return String.format(
                    Locale.ROOT,
                    "box %.2f %.2f %.2f %.2f %s",
                    x,
                    y,
                    width,
                    height,
                    look.name().toLowerCase(Locale.ROOT));
        }
    }

    /**
     * How a rectangle is drawn: outline in millimetres and how dark its inside is, 0 to 1; below 0 it is not filled.
     * Greys stay light enough for black text and survive a copier.
     */
    enum Look {
        OPEN(0.3, -1),
        HEAVY(0.7, -1),
        WHITE(0.3, 0),
        LIGHT(0.3, 0.12),
        DARK(0.3, 0.3),
        SHADE(0, 0.12),
        BARE(0, 0),
        GREY(0, 0.3),
        BLACK(0, 1);

        private final double strokeMm;
        private final double darkness;

        Look(double strokeMm, double darkness) {
            this.strokeMm = strokeMm;
            this.darkness = darkness;
        }

        public double strokeMm() {
            return strokeMm;
        }

        public double darkness() {
            return darkness;
        }

        public boolean isFilled() {
            return darkness >= 0;
        }
    }
}

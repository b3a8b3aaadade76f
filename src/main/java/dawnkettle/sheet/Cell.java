package dawnkettle.sheet;

import java.util.List;
import java.util.stream.Stream;

/** What stands in one field of a table. */
sealed interface Cell {
    /** Room above the first baseline; the cells of a row stand on one line. */
    double riseMm();

    double heightMm(double width, Typeface typeface);

    /** Draws from the frame's top; the frame is as high as the row. */
    void draw(Canvas canvas, Frame frame);

    static Cell empty() {
        return new Lines(List.of());
    }

    static Cell text(String text, Lettering lettering) {
        return new Lines(List.of(new Phrase(text, lettering)));
    }

    /** A large line and smaller ones under it; empty ones are left out. */
    static Cell stack(Phrase... phrases) {
        return new Lines(
                Stream.of(phrases).filter(phrase -> !phrase.text().isBlank()).toList());
    }

    static Tick tick(String after, Lettering lettering) {
        return new Tick(after, lettering, Tick.SIDE_MM);
    }

    /** Rows of prompts, each followed by a line to write on. */
    static Cell blanks(List<List<String>> rows) {
        return new Blanks(rows, false, Blanks.PITCH_MM);
    }

    /** Text of one look. */
    record Phrase(String text, Lettering lettering) {
        static Phrase plain(double points, String text) {
            return new Phrase(text, Lettering.plain(points));
        }

        static Phrase bold(double points, String text) {
            return new Phrase(text, Lettering.bold(points));
        }
    }

    /** Phrases under one another, each broken where it must be. */
    record Lines(List<Phrase> phrases) implements Cell {
        @Override
        public double riseMm() {
            return phrases.isEmpty() ? 0 : phrases.get(0).lettering().riseMm();
        }

        @Override
        public double heightMm(double width, Typeface typeface) {
            return phrases.stream()
                    .mapToDouble(phrase -> new Wrapping(typeface).heightMm(phrase.text(), phrase.lettering(), width))
                    .sum();
        }

        @Override
        public void draw(Canvas canvas, Frame frame) {
            double y = frame.y();
            for (Phrase phrase : phrases)
                y = canvas.lines(new Frame(frame.x(), y, frame.width(), 0), phrase.lettering(), phrase.text());
        }
    }

    /** A box to tick, and what it stands for. */
    record Tick(String after, Lettering lettering, double sideMm) implements Cell {
        /** Large enough for a thick pencil in a wet hand (common practice, no source). */
        static final double SIDE_MM = 6;

        private static final double SMALL_MM = 4.4;
        private static final double GAP_MM = 1.8;

        /** For the bench, where the pencil is dry. */
        Tick small() {
            return new Tick(after, lettering, SMALL_MM);
        }

        @Override
        public double riseMm() {
            return lettering.riseMm();
        }

        @Override
        public double heightMm(double width, Typeface typeface) {
            return Math.max(
                    sideMm,
                    after.isEmpty() ? 0 : new Wrapping(typeface).heightMm(after, lettering, width - sideMm - GAP_MM));
        }

        @Override
        public void draw(Canvas canvas, Frame frame) {
            double middle = frame.y() + lettering.lineMm() / 2;
            canvas.box(new Frame(frame.x(), middle - sideMm / 2, sideMm, sideMm), Mark.Look.OPEN);
            double indent = sideMm + GAP_MM;
            canvas.lines(new Frame(frame.x() + indent, frame.y(), frame.width() - indent, 0), lettering, after);
        }
    }

    /** An outlined field to write a figure in. */
    record Field() implements Cell {
        private static final double HEIGHT_MM = 8;

        @Override
        public double riseMm() {
            return 0;
        }

        @Override
        public double heightMm(double width, Typeface typeface) {
            return HEIGHT_MM;
        }

        @Override
        public void draw(Canvas canvas, Frame frame) {
            canvas.box(new Frame(frame.x(), frame.y(), frame.width(), HEIGHT_MM), Mark.Look.OPEN);
        }
    }

    /** A figure to be read from afar, its unit smaller behind it. */
    record Figure(String number, String unit, Lettering lettering) implements Cell {
        private static final double UNIT = 0.5;
        private static final double GAP_MM = 1;

        @Override
        public double riseMm() {
            return lettering.riseMm();
        }

        @Override
        public double heightMm(double width, Typeface typeface) {
            return lettering.lineMm();
        }

        double widthMm(Typeface typeface) {
            return typeface.widthMm(number, lettering) + GAP_MM + typeface.widthMm(unit, small());
        }

        @Override
        public void draw(Canvas canvas, Frame frame) {
            double baseline = frame.y() + lettering.riseMm();
            canvas.text(frame.x(), baseline, lettering, number);
            canvas.text(frame.x() + canvas.typeface().widthMm(number, lettering) + GAP_MM, baseline, small(), unit);
        }

        private Lettering small() {
            return lettering.ofPoints(lettering.points() * UNIT);
        }
    }

    /**
     * Lines to write on, with a small word before each that says what.
     *
     * @param ticked whether a box to tick stands before the first
     */
    record Blanks(List<List<String>> rows, boolean ticked, double pitchMm) implements Cell {
        /** From line to line (common practice for forms filled in by hand, no source). */
        static final double PITCH_MM = 7.2;

        private static final Lettering PROMPT = Lettering.plain(9.5);
        private static final Lettering CAPTION = Lettering.plain(7);
        private static final double CAPTION_MM = 3.3;
        private static final double PITCH_FOR_TWO_MM = 7.2;
        private static final double GAP_MM = 1.2;

        @Override
        public double riseMm() {
            return 0;
        }

        @Override
        public double heightMm(double width, Typeface typeface) {
            return rows.size() * pitchMm + (saysTwice() ? CAPTION_MM : 0);
        }

        /** The second language has its room below the line, or is left out where lines are close. */
        private boolean saysTwice() {
            return pitchMm >= PITCH_FOR_TWO_MM
                    && rows.stream().flatMap(List::stream).anyMatch(prompt -> prompt.contains(Words.SECOND));
        }

        @Override
        public void draw(Canvas canvas, Frame frame) {
            double y = frame.y() + pitchMm - GAP_MM;
            double side = Math.min(Tick.SIDE_MM, pitchMm - GAP_MM);
            if (ticked) canvas.box(new Frame(frame.x(), y + 0.4 - side, side, side), Mark.Look.OPEN);
            double indent = ticked ? side + 2 * GAP_MM : 0;
            for (List<String> row : rows) {
                double width = (frame.width() - indent) / row.size();
                for (int i = 0; i < row.size(); i++)
                    blank(canvas, new Frame(frame.x() + indent + i * width, y, width, 0), row.get(i));
                y += pitchMm;
                indent = 0;
            }
        }

        /** The first language before the line, the second small below its beginning. */
        private void blank(Canvas canvas, Frame at, String said) {
            String prompt = Words.first(said);
            canvas.text(at.x(), at.y(), PROMPT, prompt);
            double from = at.x() + (prompt.isBlank() ? 0 : canvas.typeface().widthMm(prompt, PROMPT) + GAP_MM);
            canvas.across(from, at.right() - GAP_MM, at.y() + 0.4, 0.2);
            if (saysTwice() && said.contains(Words.SECOND))
                canvas.text(at.x(), at.y() + CAPTION_MM, CAPTION, said.substring(prompt.length() + 1));
        }
    }
}

package dawnkettle.sheet;

import java.util.List;

/** Something that stands on one page as a whole. */
sealed interface Block {
    double heightMm(double width, Typeface typeface);

    void draw(Canvas canvas, Frame frame);

    /** Whether it gets the mark of what is changed, where it was not so before. */
    default boolean marksChange(boolean isNew) {
        return isNew;
    }

    /** Lines of several sizes, without a frame. */
    record Plain(List<Cell.Phrase> phrases) implements Block {
        private static final double GAP_MM = 1;

        @Override
        public double heightMm(double width, Typeface typeface) {
            return new Cell.Lines(phrases).heightMm(width, typeface) + 2 * GAP_MM;
        }

        @Override
        public void draw(Canvas canvas, Frame frame) {
            new Cell.Lines(phrases).draw(canvas, new Frame(frame.x(), frame.y() + GAP_MM, frame.width(), 0));
        }
    }

    /** What the mark of changed rows means, beside such a mark. */
    record Legend(String text) implements Block {
        private static final Lettering LETTERING = Lettering.bold(10.5);

        @Override
        public double heightMm(double width, Typeface typeface) {
            return new Wrapping(typeface).heightMm(text, LETTERING, width) + 1;
        }

        @Override
        public void draw(Canvas canvas, Frame frame) {
            canvas.lines(frame, LETTERING, text);
        }

        @Override
        public boolean marksChange(boolean isNew) {
            return true;
        }
    }

    /** A heading that a reader may jump to; what comes after it stays with it. */
    record Heading(String text, Lettering lettering, double gapMm) implements Block {
        Heading(String text) {
            this(text, Lettering.bold(14), 3);
        }

        /** For a page that must hold all of something. */
        static Heading small(String text) {
            return new Heading(text, Lettering.bold(11.5), 1);
        }

        @Override
        public double heightMm(double width, Typeface typeface) {
            return gapMm + new Wrapping(typeface).heightMm(text, lettering, width) + 0.8;
        }

        @Override
        public void draw(Canvas canvas, Frame frame) {
            canvas.bookmark(text, frame.y());
            canvas.lines(new Frame(frame.x(), frame.y() + gapMm, frame.width(), 0), lettering, text);
        }
    }

    /** Sentences under a bold word, in a box where they warn. */
    record Panel(String title, List<String> sentences, boolean boxed) implements Block {
        private static final Lettering TITLE = Lettering.bold(11.5);
        private static final Lettering SENTENCE = Lettering.plain(10.5);
        private static final double PAD_MM = 1.8;
        private static final double BULLET_MM = 4;
        private static final double GAP_MM = 2.5;

        @Override
        public double heightMm(double width, Typeface typeface) {
            double inner = width - 2 * PAD_MM;
            Wrapping wrapping = new Wrapping(typeface);
            double height = title.isBlank() ? 0 : wrapping.heightMm(title, TITLE, inner);
            for (String sentence : sentences) height += wrapping.heightMm(sentence, SENTENCE, inner - bulletMm());
            return height + 2 * PAD_MM + GAP_MM;
        }

        @Override
        public void draw(Canvas canvas, Frame frame) {
            Frame box = new Frame(frame.x(), frame.y() + GAP_MM, frame.width(), frame.height() - GAP_MM);
            if (boxed) canvas.box(box, Mark.Look.HEAVY);
            Frame inner = box.inset(PAD_MM);
            double y = title.isBlank() ? inner.y() : canvas.lines(inner, TITLE, title);
            for (String sentence : sentences) {
                if (bulletMm() > 0) canvas.text(inner.x(), y + SENTENCE.riseMm(), SENTENCE, "•");
                y = canvas.lines(
                        new Frame(inner.x() + bulletMm(), y, inner.width() - bulletMm(), 0), SENTENCE, sentence);
            }
        }

        /** A single sentence under no title needs no bullet. */
        private double bulletMm() {
            return title.isBlank() && sentences.size() == 1 ? 0 : BULLET_MM;
        }
    }

    /** Nothing, to part what stands above from what stands below. */
    record Gap(double mm) implements Block {
        @Override
        public double heightMm(double width, Typeface typeface) {
            return mm;
        }

        @Override
        public void draw(Canvas canvas, Frame frame) {}

        @Override
        public boolean marksChange(boolean isNew) {
            return false;
        }
    }
}

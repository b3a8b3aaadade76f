package dawnkettle.label;

/** One mark of a label at dot positions, top left at 0,0. */
public sealed interface Mark permits Mark.Text, Mark.Symbol, Mark.Box {
    /**
     * A line of text.
     *
     * @param x left end of its first glyph
     * @param baseline the line that letters stand on
     * @param size em in dots
     * @param ink black, or white on black
     */
    record Text(String words, int x, int baseline, int size, Ink ink) implements Mark {}

    /** Weight and colour of a line of text. */
    enum Ink {
        REGULAR,
        BOLD,
        REGULAR_WHITE,
        BOLD_WHITE;

        public static Ink of(DesignPart.Look look) {
            if (look.inverse()) return look.bold() ? BOLD_WHITE : REGULAR_WHITE;
            return look.bold() ? BOLD : REGULAR;
        }

        public boolean isBold() {
            return this == BOLD || this == BOLD_WHITE;
        }

        public boolean isWhite() {
            return this == REGULAR_WHITE || this == BOLD_WHITE;
        }
    }

    /**
     * A symbol's dots, ready drawn, without its quiet zone.
     *
     * @param module dots a module
     */
    record Symbol(String elements, Dots dots, int x, int y, int module) implements Mark {}

    /** A black rectangle. */
    record Box(int x, int y, int width, int height) implements Mark {}
}

package dawnkettle.label;

import java.util.Arrays;
import java.util.BitSet;

/** A picture in black and white dots, top left at 0,0; it never changes once made. */
public final class Dots {
    private final int width;
    private final int height;
    private final BitSet black;

    private Dots(int width, int height, BitSet black) {
        this.width = width;
        this.height = height;
        this.black = black;
    }

    /** A sheet of dots being inked; {@link #dry} gives the picture. */
    public static final class Ink {
        private final int width;
        private final int height;
        private final BitSet black = new BitSet();

        public Ink(int width, int height) {
            if (width < 1 || height < 1) throw new IllegalArgumentException("a picture has at least one dot");
            this.width = width;
            this.height = height;
        }

        public void set(int x, int y, boolean ink) {
            if (x < 0 || x >= width || y < 0 || y >= height)
                throw new IllegalArgumentException("dot " + x + "," + y + " is off the picture");
            black.set(y * width + x, ink);
        }

        public void fill(int x, int y, int across, int down) {
            for (int row = y; row < y + down; row++)
                for (int column = x; column < x + across; column++) set(column, row, true);
        }

        /** Inks, or clears, wherever {@code stamp} is black; dots that fall off the picture are refused. */
        public void stamp(Dots stamp, int x, int y, boolean ink) {
            for (int i = stamp.black.nextSetBit(0); i >= 0; i = stamp.black.nextSetBit(i + 1))
                set(x + i % stamp.width, y + i / stamp.width, ink);
        }

        public Dots dry() {
            return new Dots(width, height, (BitSet) black.clone());
        }
    }

    /** A picture typed as rows of # and other characters. */
    public static Dots typed(String rows) {
        String[] lines = rows.strip().split("\\R");
        Ink ink = new Ink(lines[0].length(), lines.length);
        for (int y = 0; y < lines.length; y++)
            for (int x = 0; x < lines[y].length(); x++) ink.set(x, y, lines[y].charAt(x) == '#');
        return ink.dry();
    }

    public int width() {
        return width;
    }

    public int height() {
        return height;
    }

    public boolean isBlack(int x, int y) {
        if (x < 0 || x >= width || y < 0 || y >= height)
            throw new IllegalArgumentException("dot " + x + "," + y + " is off the picture");
        return black.get(y * width + x);
    }

    public int rowBytes() {
        return (width + 7) / 8;
    }

    /** One row, eight dots a byte, the leftmost in the highest bit, black as 1, filled up with white. */
    public byte[] row(int y) {
        byte[] row = new byte[rowBytes()];
        int from = y * width;
        for (int i = black.nextSetBit(from); i >= 0 && i < from + width; i = black.nextSetBit(i + 1))
            row[(i - from) / 8] |= (byte) (0x80 >> (i - from) % 8);
        return row;
    }

    public boolean isBlank(int y) {
        int first = black.nextSetBit(y * width);
        return first < 0 || first >= (y + 1) * width;
    }

    public int blackDots() {
        return black.cardinality();
    }

    /** Black wherever this and a picture of the same size differ. */
    public Dots unlike(Dots other) {
        if (other.width != width || other.height != height)
            throw new IllegalArgumentException(this + " is not of the size of " + other);
        BitSet unlike = (BitSet) black.clone();
        unlike.xor(other.black);
        return new Dots(width, height, unlike);
    }

    /** Turned a quarter clockwise, as a label that is read lying comes out of a narrow head. */
    public Dots turned() {
        Ink ink = new Ink(height, width);
        for (int i = black.nextSetBit(0); i >= 0; i = black.nextSetBit(i + 1))
            ink.set(height - 1 - i / width, i % width, true);
        return ink.dry();
    }

    /** Undoes {@link #turned}. */
    public Dots turnedBack() {
        return turned().turned().turned();
    }

    /** The part at x,y. */
    public Dots part(int x, int y, int across, int down) {
        Ink ink = new Ink(across, down);
        for (int row = 0; row < down; row++)
            for (int column = 0; column < across; column++) ink.set(column, row, isBlack(x + column, y + row));
        return ink.dry();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Dots dots && dots.width == width && dots.height == height && dots.black.equals(black);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(new int[] {width, height, black.hashCode()});
    }

    @Override
    public String toString() {
        return width + " by " + height + " dots, " + blackDots() + " of them black";
    }
}

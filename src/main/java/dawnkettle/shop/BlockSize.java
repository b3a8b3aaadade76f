package dawnkettle.shop;

/** Edges of the largest piece as it is cooled, in millimetres. */
public record BlockSize(int lengthMm, int widthMm, int heightMm) {
    public BlockSize {
        if (lengthMm <= 0 || widthMm <= 0 || heightMm <= 0)
            throw new IllegalArgumentException("edges must be above 0 mm");
    }

    @Override
    public String toString() {
        return lengthMm + "x" + widthMm + "x" + heightMm;
    }
}

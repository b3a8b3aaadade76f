package dawnkettle.label;

/** A rectangle on a design in micrometres, from the label's top left. */
public record Area(int x, int y, int width, int height) {
    public Area {
        if (width <= 0 || height <= 0) throw new IllegalArgumentException("an area has a width and a height");
    }

    public int right() {
        return x + width;
    }

    public int bottom() {
        return y + height;
    }

    boolean isWithin(Area other) {
        return x >= other.x && y >= other.y && right() <= other.right() && bottom() <= other.bottom();
    }
}

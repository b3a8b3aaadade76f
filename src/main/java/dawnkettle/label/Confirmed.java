package dawnkettle.label;

/**
 * Labels that the printer says have come out.
 *
 * @param first number of the first, counted within the lot and product
 * @param last number of the last
 */
public record Confirmed(String lot, String product, int first, int last) {
    public int count() {
        return last - first + 1;
    }

    @Override
    public String toString() {
        return first == last ? "label " + first : "labels " + first + " to " + last;
    }
}

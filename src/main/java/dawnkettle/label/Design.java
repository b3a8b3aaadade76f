package dawnkettle.label;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * How a label is laid out.
 *
 * @param name its file's name, as "case-100x70"
 * @param role what it is for
 * @param stock the label it is printed on
 */
public record Design(String name, Role role, Stock stock, List<DesignPart> parts) {
    /** Kept clear all round, because stock shifts a little under the head. */
    public static final int MARGIN = 1_500;

    public Design {
        parts = List.copyOf(parts);
    }

    /** What a design is for. */
    public enum Role {
        CASE,
        PART_CASE,
        SLIP;

        public String word() {
            return name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
        }
    }

    /**
     * The label as it is read.
     *
     * @param width in micrometres
     * @param height in micrometres
     * @param turned whether it comes out lying, its left edge up
     */
    public record Stock(int width, int height, boolean turned) {
        Area clear() {
            return new Area(MARGIN, MARGIN, width - 2 * MARGIN, height - 2 * MARGIN);
        }

        /** Whether {@code area} keeps the margin. */
        public boolean holds(Area area) {
            return area.isWithin(clear());
        }

        /** What lies across the head. */
        public int acrossHead() {
            return turned ? height : width;
        }
    }

    /** The fields it has room for. */
    public Set<String> fields() {
        Set<String> fields = new LinkedHashSet<>();
        for (DesignPart part : parts) if (part instanceof DesignPart.Words words) fields.addAll(words.fields());
        return fields;
    }

    public List<DesignPart.Bars> symbols() {
        return parts.stream()
                .filter(DesignPart.Bars.class::isInstance)
                .map(DesignPart.Bars.class::cast)
                .toList();
    }

    /** The design as a picture comes from the printer, turned where the stock is fed lying. */
    public Dots fed(Dots picture) {
        return stock.turned() ? picture.turned() : picture;
    }
}

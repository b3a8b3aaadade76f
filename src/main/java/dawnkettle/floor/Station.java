package dawnkettle.floor;

import java.util.List;

/**
 * Something that work is done at.
 *
 * @param stage the kind of work; several stations may offer one stage
 * @param places how many jobs it holds at once, each on a place counted from 0; 0 where {@code capacity} rules
 * @param capacity how much it holds at once (grams) where jobs share it by load; 0 where {@code places} rule
 * @param open when it works; an operation lies whole within one window
 */
public record Station(String code, String stage, int places, long capacity, List<Window> open) {
    public Station {
        open = List.copyOf(open);
        if ((places > 0) == (capacity > 0)) throw new IllegalArgumentException(code + " holds either places or a load");
    }

    public boolean isShared() {
        return capacity > 0;
    }
}

package dawnkettle.sheet;

import dawnkettle.trouble.DeviceAway;

/** Puts sheets on paper, or where paper would be. */
public interface Printer {
    /**
     * Returns when the sheet is known to be out.
     *
     * @throws DeviceAway clean where nothing went out, ambiguous where that is not known
     */
    void print(Sheet sheet);
}

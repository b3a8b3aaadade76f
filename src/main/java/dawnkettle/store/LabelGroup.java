package dawnkettle.store;

import dawnkettle.stock.LotCode;

/** Labels of a product of a lot, numbered from 1 within it, first and last included. */
public record LabelGroup(LotCode lot, String product, int from, int to) {
    public LabelGroup {
        if (from < 1 || to < from)
            throw new IllegalArgumentException("labels run from 1 up, not " + from + " to " + to);
    }

    public int count() {
        return to - from + 1;
    }
}

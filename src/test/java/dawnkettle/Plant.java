package dawnkettle;

import dawnkettle.label.LabelText;
import dawnkettle.night.Edges;
import dawnkettle.store.Ledger;

/** A bug that is put into a night on purpose, to see whether it is noticed; by itself none. */
class Plant {
    static final Plant NONE = new Plant();

    /** The statement that runs instead; null where it only seems to run. */
    String instead(String sql) {
        return sql;
    }

    /** What is done to a ledger that was just opened. */
    void opened(Ledger ledger) {}

    /** What a label says when it comes out. */
    LabelText printed(LabelText words) {
        return words;
    }

    /** Whether somebody must hold a lot in its night. */
    boolean isHolding() {
        return false;
    }

    /** The doors as the service gets them. */
    Edges edges(Edges edges) {
        return edges;
    }
}

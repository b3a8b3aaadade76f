package dawnkettle.command;

import dawnkettle.stock.Fact;

/** Says in a sentence what a record about keeping wrote down. */
final class KeepingTold {
    private KeepingTold() {}

    static String of(Fact fact) {
        if (fact instanceof Fact.Soaked f)
            return "tub " + f.tub() + " was filled for " + f.productionDate() + " with " + RecordTold.text(f.beans())
                    + " of lot " + f.beanLot();
        if (fact instanceof Fact.SoakSeen f)
            return "the beans in tub " + f.tub() + " for " + f.productionDate() + " were "
                    + (f.ready() ? "ready" : "not ready");
        if (fact instanceof Fact.Packed f)
            return f.packs() + " packs " + f.product() + " were filled from lot " + f.lot();
        if (fact instanceof Fact.Wasted f)
            return RecordTold.text(f.mass()) + " of lot " + f.lot() + " were thrown away (" + f.why() + ")";
        if (fact instanceof Fact.UsedMaterial f)
            return RecordTold.text(f.quantity()) + " " + f.material() + " of lot " + f.lot() + " were used (" + f.why()
                    + ")";
        if (fact instanceof Fact.LostMaterial f)
            return RecordTold.text(f.quantity()) + " " + f.material() + " of lot " + f.lot() + " are lost (" + f.why()
                    + ")";
        return ofLots(fact);
    }

    private static String ofLots(Fact fact) {
        if (fact instanceof Fact.Destroyed f)
            return f.packs() + " packs " + f.product() + " of lot " + f.lot() + " were destroyed (" + f.why() + ")";
        if (fact instanceof Fact.Containers f)
            return f.count() + " containers of " + f.product()
                    + (f.way() == Fact.Containers.Way.OUT ? " went to " : " were counted at ") + f.customer();
        if (fact instanceof Fact.Loaded f) return "van " + f.route() + " of " + f.deliveryDate() + " is loaded";
        if (fact instanceof Fact.Held f)
            return "lot " + f.lot() + " is held (" + f.why() + "); nothing of it leaves until somebody writes: record"
                    + " release " + f.lot() + " by NAME WHY";
        if (fact instanceof Fact.Released f)
            return "lot " + f.lot() + " is released by " + f.by() + " (" + f.why() + ")";
        Fact.Cancelled f = (Fact.Cancelled) fact;
        return "record " + f.number() + " counts no more (" + f.why() + ")";
    }
}

package dawnkettle.plan;

import dawnkettle.measure.Celsius;
import dawnkettle.measure.Mass;
import dawnkettle.shop.Tub;
import java.util.ArrayList;
import java.util.List;

/** A tub with its filling while the plan is being made; minutes as {@code DayClock} counts them. */
final class TubDraft {
    final Tub tub;
    final String soakGroup;
    final boolean committed;
    final Celsius water;
    final int fill;
    final int ready;
    final int latest;
    final Mass beans;
    final List<String> beanLots = new ArrayList<>();
    final List<Mass> lotBeans = new ArrayList<>();
    final List<Brew> brews = new ArrayList<>();
    private Mass left;

    /** Dry beans of one tub for one batch. */
    record Share(TubDraft tub, Mass beans) {}

    /** When and how a tub is filled, and what that makes of it. */
    record Filling(Celsius water, int fill, int ready, int latest) {}

    TubDraft(Tub tub, String soakGroup, boolean committed, Filling filling, Mass beans) {
        this.tub = tub;
        this.soakGroup = soakGroup;
        this.committed = committed;
        this.water = filling.water();
        this.fill = filling.fill();
        this.ready = filling.ready();
        this.latest = filling.latest();
        this.beans = beans;
        this.left = beans;
    }

    Mass left() {
        return left;
    }

    /** Pours as much of {@code wanted} as is left into {@code brew}, and says how much. */
    Mass pour(Brew brew, Mass wanted) {
        Mass poured = Mass.min(wanted, left);
        if (poured.isZero()) return poured;
        left = left.minus(poured);
        brews.add(brew);
        brew.soaks.add(new Share(this, poured));
        return poured;
    }
}

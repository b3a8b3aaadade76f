package dawnkettle.plan;

import dawnkettle.measure.Mass;
import dawnkettle.shop.Tub;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Which batch is ground from which tub: tubs already committed first, then new ones, in the order of grinding. */
final class Soaking {
    /** A new tub is rarely ready at the first minute that it could be. */
    private static final int NEW_TUB_MARGIN_MINUTES = 90;

    private final List<Tub> tubs;
    private final Map<String, Integer> freeFrom;
    private final TubTimes times;
    private final List<TubDraft> filled = new ArrayList<>();
    private final List<Integer> taken = new ArrayList<>();

    /**
     * @param tubs all tubs of the shop
     * @param freeFrom tubs in which other beans still soak, and from which minute on they are free
     */
    Soaking(List<Tub> tubs, Map<String, Integer> freeFrom, TubTimes times) {
        this.tubs = tubs;
        this.freeFrom = new HashMap<>(freeFrom);
        this.times = times;
    }

    void commit(TubDraft tub) {
        filled.add(tub);
        taken.add(tub.fill);
    }

    List<TubDraft> filled() {
        return filled.stream()
                .filter(tub -> tub.committed || !tub.brews.isEmpty())
                .sorted(Comparator.comparingInt((TubDraft tub) -> tub.fill).thenComparing(tub -> tub.tub.code()))
                .toList();
    }

    /** The tub of that code that has been filled. */
    TubDraft tub(String code) {
        return filled.stream()
                .filter(tub -> tub.tub.code().equals(code))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no tub " + code + " is filled"));
    }

    /** A batch and the minute at which it would like to be ground. */
    record Grind(Brew brew, int minute) {}

    /**
     * Gives every batch its beans.
     *
     * @param grinds in the order of grinding
     * @return batches for which there was no tub or nobody to fill one
     */
    List<Brew> assign(List<Grind> grinds) {
        List<Brew> without = new ArrayList<>();
        for (String group : groups(grinds)) {
            List<Grind> own = grinds.stream()
                    .filter(grind ->
                            grind.brew().recipe.soakGroup().orElseThrow().equals(group))
                    .toList();
            without.addAll(assign(group, own));
        }
        return without;
    }

    private static Set<String> groups(List<Grind> grinds) {
        Set<String> groups = new LinkedHashSet<>();
        grinds.forEach(grind -> groups.add(grind.brew().recipe.soakGroup().orElseThrow()));
        return groups;
    }

    private List<Brew> assign(String group, List<Grind> grinds) {
        List<Brew> without = new ArrayList<>();
        List<Grind> fresh = new ArrayList<>();
        for (Grind grind : grinds) if (!pourCommitted(group, grind.brew())) fresh.add(grind);
        int at = 0;
        while (at < fresh.size()) {
            int used = fillNext(group, fresh, at);
            if (used == 0) without.add(fresh.get(at).brew());
            at += Math.max(1, used);
        }
        return without;
    }

    /**
     * Takes a batch's beans from committed tubs, of several where one does not hold enough. What is left of them at last goes
     * into a batch that gets the rest from a new tub, where both can be ground at one time.
     *
     * @return whether the batch has all its beans
     */
    private boolean pourCommitted(String group, Brew brew) {
        List<TubDraft> open = filled.stream()
                .filter(tub -> tub.committed
                        && tub.soakGroup.equals(group)
                        && !tub.left().isZero())
                .sorted(Comparator.comparingInt(tub -> tub.ready))
                .toList();
        Mass left = Mass.sum(open.stream().map(TubDraft::left).toList());
        if (left.compareTo(brew.size) < 0 && !open.stream().allMatch(this::lastsForNewTub)) return false;
        for (TubDraft tub : open) tub.pour(brew, wanted(brew));
        return wanted(brew).isZero();
    }

    private boolean lastsForNewTub(TubDraft committed) {
        return free().stream()
                .findFirst()
                .flatMap(times.of(committed.soakGroup)::earliestReady)
                .filter(ready -> ready + NEW_TUB_MARGIN_MINUTES <= committed.latest)
                .isPresent();
    }

    private static Mass wanted(Brew brew) {
        return brew.size.minus(
                Mass.sum(brew.soaks.stream().map(TubDraft.Share::beans).toList()));
    }

    /** Fills one new tub for as many of the next batches as fit it; says how many. */
    private int fillNext(String group, List<Grind> grinds, int at) {
        for (Tub tub : free()) {
            int until = fitting(tub, grinds, at);
            while (until > at) {
                int first = grinds.get(at).minute();
                int last = grinds.get(until - 1).minute();
                Optional<TubDraft.Filling> filling = times.of(group)
                        .filling(
                                tub,
                                first,
                                last,
                                new TubTimes.Window(freeFrom.getOrDefault(tub.code(), Integer.MIN_VALUE), taken));
                if (filling.isPresent()) {
                    fill(new TubDraft(tub, group, false, filling.get(), beans(grinds, at, until)), grinds, at);
                    return until - at;
                }
                until--;
            }
        }
        return 0;
    }

    private void fill(TubDraft tub, List<Grind> grinds, int at) {
        commit(tub);
        for (int i = at; !tub.left().isZero(); i++)
            tub.pour(grinds.get(i).brew(), wanted(grinds.get(i).brew()));
    }

    List<Tub> free() {
        return tubs.stream()
                .filter(tub -> filled.stream().noneMatch(used -> used.tub.code().equals(tub.code())))
                .sorted(Comparator.comparingInt((Tub tub) -> freeFrom.getOrDefault(tub.code(), Integer.MIN_VALUE)))
                .toList();
    }

    private static int fitting(Tub tub, List<Grind> grinds, int at) {
        int until = at;
        while (until < grinds.size() && beans(grinds, at, until + 1).compareTo(tub.mostBeans()) <= 0) until++;
        return until;
    }

    private static Mass beans(List<Grind> grinds, int from, int until) {
        return Mass.sum(grinds.subList(from, until).stream()
                .map(grind -> wanted(grind.brew()))
                .toList());
    }
}

package dawnkettle.plan;

import dawnkettle.floor.Budget;
import dawnkettle.floor.FloorDay;
import dawnkettle.floor.Placement;
import dawnkettle.floor.Run;
import dawnkettle.floor.RunCheck;
import dawnkettle.floor.RunEngine;
import dawnkettle.plan.FloorOfDay.GrindWindow;
import dawnkettle.shop.Shop;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;

/** Gives a set of batches their tubs and their run; says which batches the day has no room for. */
final class Attempt {
    /** Tubs follow the run and the run follows the tubs: so often they are brought together. */
    private static final int ROUNDS = 4;

    private final Shop shop;
    private final FloorOfDay floor;
    private final Supplier<Soaking> soaking;
    private final TubTimes times;
    private final Map<String, List<Placement>> fixed;

    Attempt(Shop shop, FloorOfDay floor, Supplier<Soaking> soaking, TubTimes times) {
        this(shop, floor, new Bench(soaking, times), Map.of());
    }

    /** @param fixed steps that are not moved, by the batch's name */
    Attempt(Shop shop, FloorOfDay floor, Bench bench, Map<String, List<Placement>> fixed) {
        this.shop = shop;
        this.floor = floor;
        this.soaking = bench.soaking();
        this.times = bench.times();
        this.fixed = fixed;
    }

    /** Where soaks are tried out: the tubs as they stand, afresh for each try, and the times at which they can be filled. */
    record Bench(Supplier<Soaking> soaking, TubTimes times) {}

    /**
     * A run with its tubs.
     *
     * @param failed batches that the day has no room for; empty where the run is whole
     */
    record Outcome(List<Brew> brews, List<TubDraft> tubs, FloorDay floor, Run run, Set<Brew> failed, long decodes) {
        int start(Brew brew) {
            return run.placements().stream()
                    .filter(placement -> placement.job().equals(brew.name) && placement.operation() == 0)
                    .mapToInt(Placement::start)
                    .findFirst()
                    .orElse(DayClock.HORIZON_MINUTES);
        }
    }

    Outcome of(List<Brew> brews, Map<String, Van> vans, Budget budget) {
        Budget half = budget.within(budget.decodes() / 4, budget.guardMillis() / 2);
        Budget none = budget.within(0, budget.guardMillis());
        Outcome outcome = run(brews, List.of(), firstWindows(brews), vans, half);
        long decodes = outcome.decodes();
        for (int round = 0; round < ROUNDS; round++) {
            outcome = soak(outcome, vans, none);
            decodes += outcome.decodes();
            if (outcome.failed().isEmpty()) break;
        }
        if (!outcome.failed().isEmpty() || budget.decodes() == 0) return outcome;
        Budget rest = budget.within(Math.max(0, budget.decodes() - decodes), budget.guardMillis());
        Outcome best = run(brews, outcome.tubs(), windows(brews), vans, rest);
        return new Outcome(brews, best.tubs(), best.floor(), best.run(), best.failed(), decodes + best.decodes());
    }

    private Map<Brew, GrindWindow> firstWindows(List<Brew> brews) {
        Soaking fresh = soaking.get();
        Map<Brew, GrindWindow> windows = new HashMap<>();
        for (Brew brew : brews)
            if (brew.isSoaked()) windows.put(brew, new GrindWindow(soonest(brew, fresh), DayClock.HORIZON_MINUTES));
        return windows;
    }

    private int soonest(Brew brew, Soaking fresh) {
        String group = brew.recipe.soakGroup().orElseThrow();
        Optional<Integer> committed = fresh.filled().stream()
                .filter(tub -> tub.soakGroup.equals(group))
                .map(tub -> tub.ready)
                .min(Integer::compare);
        Optional<Integer> filled = shop.floor().tubs().stream().findFirst().flatMap(times.of(group)::earliestReady);
        return committed.or(() -> filled).orElse(0);
    }

    /** Lays the tubs by the order of the last run, and runs again with what they allow. */
    private Outcome soak(Outcome last, Map<String, Van> vans, Budget budget) {
        last.brews().stream().filter(brew -> !brew.isKept()).forEach(brew -> brew.soaks.clear());
        Soaking tubs = soaking.get();
        List<Soaking.Grind> grinds = last.brews().stream()
                .filter(brew -> brew.isSoaked() && !brew.isKept())
                .map(brew -> new Soaking.Grind(brew, last.start(brew)))
                .sorted(Comparator.comparingInt(Soaking.Grind::minute).thenComparing(grind -> grind.brew().name))
                .toList();
        List<Brew> without = tubs.assign(grinds);
        List<Brew> soaked = new ArrayList<>(last.brews());
        soaked.removeAll(without);
        Outcome outcome = run(soaked, tubs.filled(), windows(soaked), vans, budget);
        Set<Brew> failed = new LinkedHashSet<>(without);
        failed.addAll(outcome.failed());
        return new Outcome(last.brews(), outcome.tubs(), outcome.floor(), outcome.run(), failed, outcome.decodes());
    }

    private static Map<Brew, GrindWindow> windows(List<Brew> brews) {
        Map<Brew, GrindWindow> windows = new HashMap<>();
        for (Brew brew : brews) {
            if (!brew.isSoaked()) continue;
            int ready = brew.soaks.stream()
                    .mapToInt(share -> share.tub().ready)
                    .max()
                    .orElse(0);
            int latest = brew.soaks.stream()
                    .mapToInt(share -> share.tub().latest)
                    .min()
                    .orElse(0);
            windows.put(brew, new GrindWindow(ready, latest));
        }
        return windows;
    }

    private Outcome run(
            List<Brew> brews,
            List<TubDraft> tubs,
            Map<Brew, GrindWindow> windows,
            Map<String, Van> vans,
            Budget budget) {
        List<Brew> whole = withParents(brews);
        FloorDay day = floor.of(whole, windows, vans.values(), fixed);
        Run run = RunEngine.run(day, budget);
        List<String> broken = RunCheck.broken(day, run);
        if (!broken.isEmpty()) throw new IllegalStateException("the run breaks a rule of the floor: " + broken);
        Set<Brew> failed = new LinkedHashSet<>();
        for (Brew brew : brews) {
            if (!whole.contains(brew) || run.unplaced().contains(brew.name)) failed.add(brew);
            else if (!fixed.containsKey(brew.name) && isLate(brew, windows, run)) failed.add(brew);
        }
        return new Outcome(brews, tubs, day, run, failed, run.decodes());
    }

    private static boolean isLate(Brew brew, Map<Brew, GrindWindow> windows, Run run) {
        GrindWindow window = windows.getOrDefault(brew, GrindWindow.ANY);
        return run.placements().stream()
                .anyMatch(placement -> placement.job().equals(brew.name)
                        && placement.operation() == 0
                        && placement.start() > window.latest());
    }

    private static List<Brew> withParents(List<Brew> brews) {
        List<Brew> whole = new ArrayList<>(brews);
        boolean changed = true;
        while (changed) changed = whole.removeIf(brew -> !whole.containsAll(brew.parents));
        return whole;
    }
}

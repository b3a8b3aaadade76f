package dawnkettle.plan;

import dawnkettle.floor.Changeover;
import dawnkettle.floor.Due;
import dawnkettle.floor.FloorDay;
import dawnkettle.floor.Hands;
import dawnkettle.floor.Job;
import dawnkettle.floor.Operation;
import dawnkettle.floor.Placement;
import dawnkettle.floor.Station;
import dawnkettle.measure.Mass;
import dawnkettle.shop.ChangeoverRule;
import dawnkettle.shop.Crew;
import dawnkettle.shop.Recipe;
import dawnkettle.shop.Shop;
import dawnkettle.shop.Step;
import dawnkettle.shop.WorkStation;
import java.math.RoundingMode;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;

/** The shop's workroom and batches in the words of {@code floor}: stations, jobs, minutes. */
final class FloorOfDay {
    private final Shop shop;
    private final DayClock clock;
    private final int notBefore;
    private final LessRoom less;

    /** @param now nothing is begun before it that is not fixed */
    FloorOfDay(Shop shop, DayClock clock, Instant now, Disruption disruption) {
        this.shop = shop;
        this.clock = clock;
        this.notBefore = Math.max(0, clock.minuteAtOrAfter(now));
        this.less = new LessRoom(disruption, clock);
    }

    /**
     * @param windows earliest and latest minute of each soaked batch's first step
     * @param fixed steps that are not moved, by the batch's name
     */
    FloorDay of(
            List<Brew> brews,
            Map<Brew, GrindWindow> windows,
            Collection<Van> vans,
            Map<String, List<Placement>> fixed) {
        List<Job> jobs = brews.stream()
                .map(brew -> job(brew, windows, fixed.getOrDefault(brew.name, List.of())))
                .toList();
        List<Due> dues = vans.stream()
                .map(van -> new Due(van.due(), van.packByMinute(), van.route().weight()))
                .toList();
        return new FloorDay(stations(), hands(), changeovers(), dues, jobs, DayClock.HORIZON_MINUTES);
    }

    /** When a batch may be ground: from its beans being ready until they are over-soaked. */
    record GrindWindow(int ready, int latest) {
        static final GrindWindow ANY = new GrindWindow(0, DayClock.HORIZON_MINUTES);
    }

    List<Station> stations() {
        return shop.floor().stations().stream().map(this::station).toList();
    }

    private Station station(WorkStation station) {
        return new Station(
                station.code(),
                station.stage(),
                station.places(),
                station.capacity().inGrams(RoundingMode.DOWN),
                less.open(
                        station.code(),
                        station.openings().stream().map(clock::window).toList()));
    }

    List<Hands> hands() {
        return less.there(shop.floor().crews().stream().map(this::hands).toList());
    }

    private Hands hands(Crew crew) {
        return new Hands(clock.window(crew.opening()), crew.halfHands());
    }

    List<Changeover> changeovers() {
        List<Changeover> all = new ArrayList<>();
        for (ChangeoverRule rule : shop.floor().changeovers())
            for (WorkStation station : shop.floor().stations())
                if (station.stage().equals(rule.stage())) addPairs(station, rule, all);
        return all;
    }

    private void addPairs(WorkStation station, ChangeoverRule rule, List<Changeover> all) {
        for (Recipe from : shop.recipes())
            for (Recipe to : shop.recipes())
                if (visits(from, rule.stage()) && visits(to, rule.stage()) && rule.between(from, to) > 0)
                    all.add(new Changeover(station.code(), from.code(), to.code(), rule.between(from, to)));
    }

    private static boolean visits(Recipe recipe, String stage) {
        return recipe.steps().stream().anyMatch(step -> step.stage().equals(stage));
    }

    private Job job(Brew brew, Map<Brew, GrindWindow> windows, List<Placement> fixed) {
        GrindWindow window = windows.getOrDefault(brew, GrindWindow.ANY);
        List<Job.After> after = brew.parents.stream()
                .map(parent -> new Job.After(
                        parent.name, longestWait(brew.recipe.steps().get(0))))
                .toList();
        return new Job(
                brew.name,
                brew.recipe.code(),
                Math.max(notBefore, window.ready()),
                Math.max(0, window.latest()),
                brew.steps().stream().map(step -> operation(brew, step)).toList(),
                after,
                List.copyOf(brew.dues),
                fixed);
    }

    private Operation operation(Brew brew, Step step) {
        return new Operation(
                step.stage(),
                step.minutes(),
                step.halfHands(),
                longestWait(step),
                load(brew, step).inGrams());
    }

    /** What a batch takes of a station that counts by mass: all the product that is expected of it. */
    Mass load(Brew brew, Step step) {
        boolean shared = shop.floor().stations().stream()
                .anyMatch(station -> station.stage().equals(step.stage())
                        && !station.capacity().isZero());
        return shared ? brew.expected() : Mass.ZERO;
    }

    private static int longestWait(Step step) {
        return step.longestWait().orElse(Operation.ANY_WAIT);
    }
}

package dawnkettle.plan;

import dawnkettle.measure.Mass;
import dawnkettle.plan.Evening.Occupied;
import dawnkettle.shop.Recipe;
import dawnkettle.shop.Shop;
import dawnkettle.shop.Step;
import dawnkettle.shop.Tub;
import dawnkettle.shop.WorkStation;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** The whole computation of a day: from a closed book to a plan in which every pack has its lot and every lot its minute. */
public final class PlanDay {
    /** Each try gives up at least one batch, so that this is never reached by a shop of 100 batches. */
    private static final int TRIES = 120;

    private final Shop shop;
    private final Evening evening;
    private final DayClock clock;
    private final TubTimes times;

    private PlanDay(Shop shop, Evening evening) {
        this.shop = new CooledRecipes(shop).shop();
        this.evening = evening;
        this.clock = new DayClock(evening.book().productionDate(), shop.house().zone());
        this.times =
                new TubTimes(evening.soakRoom().beliefs(), evening.soakRoom().temperatures(), clock, fillMinutes());
    }

    /**
     * The plan of the evening's book. It always comes out; what can't be made is declined by name.
     *
     * @throws IllegalArgumentException where the book names a product, customer or route that the shop does not have
     */
    public static DayPlan of(Shop shop, Evening evening) {
        PlanDay day = new PlanDay(shop, evening);
        if (evening.committed().before().isPresent())
            return new Revision(day.shop, evening, day.clock, day.times).plan();
        return day.plan();
    }

    /** The beans that must be put to soak before the book closes at {@code closesAt}; often none. */
    public static SoakCall soakCall(Shop shop, Evening evening, java.time.Instant closesAt) {
        PlanDay day = new PlanDay(shop, evening);
        Wants wants = day.wants();
        Attempt.Outcome outcome = day.search(wants);
        List<String> notes = outcome.tubs().isEmpty() ? List.of() : day.waysOut(wants, outcome);
        return new CallSoak(day.shop, evening, day.clock).of(outcome, closesAt, notes);
    }

    /** What helps where the soak makes vans late, against the same day with beans that stand ready. */
    private List<String> waysOut(Wants wants, Attempt.Outcome outcome) {
        SoakWaysOut.Day planned = day(wants, outcome);
        if (planned.late().isEmpty()) return List.of();
        PlanDay ready = new PlanDay(shop, evening.withBeansReady());
        Wants same = ready.wants();
        SoakWaysOut.Day soaked = day(same, ready.search(same));
        return new SoakWaysOut(times, clock, outcome.tubs().get(0)).of(planned, soaked);
    }

    private SoakWaysOut.Day day(Wants wants, Attempt.Outcome outcome) {
        int first = outcome.brews().stream()
                .filter(Brew::isSoaked)
                .mapToInt(outcome::start)
                .min()
                .orElse(DayClock.HORIZON_MINUTES);
        Mass allowed = Mass.sum(
                CallAllowances.beans(shop, evening.outlook().allowances()).values());
        Mass beans = Mass.sum(outcome.tubs().stream().map(tub -> tub.beans).toList());
        return new SoakWaysOut.Day(first, VanMinutes.late(wants, outcome), beans.minusOrZero(allowed));
    }

    private DayPlan plan() {
        Wants wants = wants();
        Attempt.Outcome outcome = search(wants);
        return new FairCopy(shop, evening, clock).write(wants, outcome);
    }

    private Wants wants() {
        return new Wants(shop, evening, clock);
    }

    private List<Integer> fillMinutes() {
        int earliest = clock.minuteAtOrAfter(evening.now()) + TubTimes.HEAD_START_MINUTES;
        return TubTimes.fillMinutes(shop.floor(), shop.calendar(), clock, earliest);
    }

    /** Plans with all that is wanted; takes out what the day has no room for and plans again until all that is left fits. */
    private Attempt.Outcome search(Wants wants) {
        Map<String, Integer> caps = new TreeMap<>();
        FloorOfDay floor =
                new FloorOfDay(shop, clock, evening.now(), evening.committed().disruption());
        for (int attempt = 0; attempt < TRIES; attempt++) {
            List<Brew> brews = new Batches(shop, wants, limits(caps)).make();
            Attempt.Outcome outcome =
                    new Attempt(shop, floor, this::soaking, times).of(brews, wants.vans, evening.budget());
            if (outcome.failed().isEmpty()) return outcome;
            cap(caps, brews, outcome);
        }
        throw new IllegalStateException("no run was found even after giving up " + TRIES + " batches");
    }

    private static void cap(Map<String, Integer> caps, List<Brew> brews, Attempt.Outcome outcome) {
        Map<String, Long> failed = outcome.failed().stream()
                .collect(Collectors.groupingBy(brew -> brew.recipe.code(), TreeMap::new, Collectors.counting()));
        Map<String, Long> made = brews.stream()
                .collect(Collectors.groupingBy(brew -> brew.recipe.code(), TreeMap::new, Collectors.counting()));
        failed.forEach((recipe, count) -> caps.put(recipe, (int) Math.max(0, made.get(recipe) - (count + 1) / 2)));
    }

    private Batches.Limits limits(Map<String, Integer> caps) {
        Map<String, Mass> committed = new HashMap<>();
        evening.soakRoom()
                .call()
                .ifPresent(
                        call -> call.tubs().forEach(tub -> committed.merge(tub.soakGroup(), tub.beans(), Mass::plus)));
        Map<String, Mass> most = new HashMap<>();
        for (Recipe recipe : shop.recipes())
            recipe.soakGroup()
                    .ifPresent(group -> most.put(
                            group, committed.getOrDefault(group, Mass.ZERO).plus(stillToSoak(group))));
        return new Batches.Limits(committed, most, slots(), caps);
    }

    /** Beans that can still be put to soak: in free tubs that somebody can fill, of the beans that are here. */
    private Mass stillToSoak(String group) {
        Soaking soaking = soaking();
        Mass tubs = Mass.sum(soaking.free().stream()
                .filter(tub -> times.of(group).earliestReady(tub).isPresent())
                .map(Tub::mostBeans)
                .toList());
        List<dawnkettle.stock.BeanLot> lots = evening.larder().beans().stream()
                .filter(lot -> shop.findMaterial(lot.material())
                        .filter(material -> material.soakGroup().equals(group))
                        .isPresent())
                .toList();
        if (lots.isEmpty()) return tubs;
        return Mass.min(
                tubs, Mass.sum(lots.stream().map(dawnkettle.stock.BeanLot::left).toList()));
    }

    /** Batches that the tightest of the stations that every soaked batch passes has room for. */
    private int slots() {
        int slots = Batches.MOST_KETTLES;
        List<Recipe> soaked = shop.recipes().stream()
                .filter(recipe -> recipe.soakGroup().isPresent())
                .toList();
        for (String stage : shop.floor().stations().stream()
                .map(WorkStation::stage)
                .distinct()
                .toList()) {
            int shortest = soaked.stream()
                    .mapToInt(recipe -> minutesAt(recipe, stage))
                    .min()
                    .orElse(0);
            if (shortest > 0) slots = Math.min(slots, room(stage, shortest));
        }
        return slots;
    }

    private int room(String stage, int minutes) {
        List<WorkStation> stations = shop.floor().stations().stream()
                .filter(station -> station.stage().equals(stage))
                .toList();
        if (stations.stream().anyMatch(station -> station.places() == 0)) return Batches.MOST_KETTLES;
        return stations.stream()
                .mapToInt(station -> station.places()
                        * station.openings().stream()
                                .map(clock::window)
                                .mapToInt(window -> (window.untilExclusive() - window.fromInclusive()) / minutes)
                                .sum())
                .sum();
    }

    private static int minutesAt(Recipe recipe, String stage) {
        return recipe.steps().stream()
                .filter(step -> step.stage().equals(stage))
                .mapToInt(Step::minutes)
                .sum();
    }

    private Soaking soaking() {
        Map<String, Integer> freeFrom = new HashMap<>();
        for (Occupied occupied : evening.soakRoom().occupied())
            freeFrom.put(occupied.tub(), clock.minuteAtOrAfter(occupied.until()));
        Soaking soaking = new Soaking(shop.floor().tubs(), freeFrom, times);
        evening.soakRoom().call().ifPresent(call -> call.tubs().forEach(tub -> soaking.commit(committed(tub))));
        return soaking;
    }

    private TubDraft committed(PlannedSoak soak) {
        return committed(shop, clock, times, soak);
    }

    /** A tub that was settled before, with its times by what is known of the temperatures now. */
    static TubDraft committed(Shop shop, DayClock clock, TubTimes times, PlannedSoak soak) {
        Tub tub = shop.floor().tubs().stream()
                .filter(own -> own.code().equals(soak.tub()))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no tub " + soak.tub()));
        int fill = clock.minute(soak.fillAt());
        SoakLaw.Course course = times.of(soak.soakGroup()).course(tub, soak.waterTemperature(), fill);
        TubDraft draft = new TubDraft(
                tub,
                soak.soakGroup(),
                true,
                new TubDraft.Filling(
                        soak.waterTemperature(), fill, fill + course.readyMinutes(), fill + course.latestMinutes()),
                soak.beans());
        draft.beanLots.addAll(soak.beanLots());
        draft.lotBeans.addAll(soak.lotBeans());
        return draft;
    }
}

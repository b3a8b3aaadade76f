package dawnkettle.plan;

import dawnkettle.floor.Placement;
import dawnkettle.measure.Mass;
import dawnkettle.shop.Coagulant;
import dawnkettle.shop.Shop;
import dawnkettle.shop.Step;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/** Writes the finished computation down as a {@link DayPlan}. */
final class FairCopy {
    private final Shop shop;
    private final Evening evening;
    private final DayClock clock;
    private final Names names = new Names();
    private final Map<Brew, Map<Integer, Placement>> steps = new HashMap<>();

    FairCopy(Shop shop, Evening evening, DayClock clock) {
        this.shop = shop;
        this.evening = evening;
        this.clock = clock;
    }

    Names names() {
        return names;
    }

    DayPlan write(Wants wants, Attempt.Outcome outcome) {
        Map<String, Brew> byName = new HashMap<>();
        outcome.brews().forEach(brew -> byName.put(brew.name, brew));
        for (Placement placement : outcome.run().placements())
            steps.computeIfAbsent(byName.get(placement.job()), brew -> new HashMap<>())
                    .put(placement.operation(), placement);
        List<Brew> brews = outcome.brews().stream()
                .sorted(Comparator.comparingInt(outcome::start).thenComparing(brew -> brew.name))
                .toList();
        names.name(brews, clock.day());
        Answers answers = new Answers(wants.lines, names::lot, this::packDate);
        Cases cases = new Cases(wants.lines, evening.committed());
        List<PlannedRoute> routes = routes(wants);
        List<PlannedSoak> soaks = soaks(outcome); // before the batches: it says which lots of beans lie in which tub
        Remarks remarks = new Remarks(evening, clock, names);
        return new DayPlan(
                heading(),
                answers.orders(),
                answers.demand(),
                brews.stream().map(brew -> batch(brew, cases)).toList(),
                soaks,
                new FloorRecord(shop, clock, evening.committed().disruption()).floor(),
                operations(brews),
                evening.larder().stock(),
                answers.allocation(),
                routes,
                labels(brews, cases),
                answers.shortages(),
                remarks.advice(outcome, routes),
                remarks.warnings(outcome, routes),
                Optional.of(new RunQuality(clock).of(outcome, evening.budget(), routes)));
    }

    private Heading heading() {
        Optional<DayPlan> before = evening.committed().before();
        return new Heading(
                clock.day(),
                before.map(plan -> plan.heading().revision() + 1).orElse(1),
                before.map(plan -> OptionalInt.of(plan.heading().revision())).orElse(OptionalInt.empty()),
                evening.now(),
                clock.zone(),
                evening.budget().seed(),
                evening.budget().decodes() == 0 ? Heading.Mode.NO_SEARCH : Heading.Mode.FULL,
                frozen());
    }

    /** What had happened, and before the first plan the tubs of the soak call that stood filled. */
    private List<Heading.Frozen> frozen() {
        List<Heading.Frozen> frozen = new ArrayList<>(evening.committed().frozen());
        if (evening.committed().before().isPresent()) return frozen;
        for (PlannedSoak tub : evening.soakRoom().call().map(SoakCall::tubs).orElse(List.of()))
            if (!tub.fillAt().isAfter(evening.now()))
                frozen.add(new Heading.Frozen(Heading.Frozen.Kind.TUB_FILLED, tub.tub(), tub.fillAt()));
        return frozen;
    }

    private PlannedBatch batch(Brew brew, Cases cases) {
        Mass beans = brew.isSoaked() ? brew.size : Mass.ZERO;
        Mass ground = wholeGrams(beans.times(brew.recipe.water(), RoundingMode.HALF_UP));
        Mass water = ground.minus(MassBalance.steam(
                brew.recipe, beans, evening.soakRoom().temperatures().tap()));
        List<PlannedBatch.Filled> filled = new ArrayList<>();
        brew.packs.forEach((product, packs) -> {
            if (packs > 0) filled.add(cases.filled(brew, product, packs, names.lot(brew)));
        });
        return new PlannedBatch(
                names.id(brew),
                names.lot(brew),
                brew.recipe.code(),
                beans,
                water,
                brew.recipe.coagulant().map(coagulant -> dose(coagulant, beans, ground)),
                brew.expected(),
                brew.soaks.stream()
                        .map(share -> new PlannedBatch.FromTub(share.tub().tub.code(), share.beans()))
                        .toList(),
                materialLots(brew),
                filled,
                brew.trim(),
                packDate(brew),
                brew.feeds.stream()
                        .map(feed -> new PlannedBatch.Feed(names.id(feed.child()), feed.mass()))
                        .toList());
    }

    /** The milk is what is ground less the okara; the coagulant goes by the milk. */
    private static PlannedBatch.Dose dose(Coagulant coagulant, Mass beans, Mass water) {
        Mass milk = MassBalance.milk(beans, water);
        return new PlannedBatch.Dose(coagulant.material(), wholeGrams(coagulant.dose(milk)));
    }

    private static Mass wholeGrams(Mass mass) {
        return Mass.grams(mass.inGrams(RoundingMode.HALF_UP));
    }

    private List<String> materialLots(Brew brew) {
        List<String> lots = new ArrayList<>();
        brew.soaks.forEach(share -> lots.addAll(share.tub().beanLots));
        brew.parents.stream().map(parent -> names.lot(parent).text()).sorted().forEach(lots::add);
        brew.recipe
                .coagulant()
                .ifPresent(coagulant -> evening.larder().beans().stream()
                        .filter(lot -> lot.material().equals(coagulant.material()))
                        .findFirst()
                        .ifPresent(lot -> lots.add(lot.lot())));
        return lots.stream().distinct().toList();
    }

    /** The local date on which the lot's packing begins: its last step that takes hands. */
    LocalDate packDate(Brew brew) {
        List<Step> recipe = brew.steps();
        for (int i = recipe.size() - 1; i > 0; i--)
            if (recipe.get(i).halfHands() > 0)
                return clock.date(steps.get(brew).get(i).start());
        return clock.date(steps.get(brew).get(0).start());
    }

    private int end(Brew brew) {
        return steps.get(brew).values().stream().mapToInt(Placement::end).max().orElseThrow();
    }

    private List<PlannedSoak> soaks(Attempt.Outcome outcome) {
        BeanLots lots = new BeanLots(shop, evening);
        List<PlannedSoak> soaks = new ArrayList<>();
        for (TubDraft tub : outcome.tubs()) {
            List<Brew> brews = tub.brews.stream()
                    .sorted(Comparator.comparingInt(outcome::start).thenComparing(names::id))
                    .toList();
            int first = brews.stream().mapToInt(outcome::start).min().orElse(tub.ready);
            soaks.add(lots.planned(tub, clock, brews.stream().map(names::id).toList(), first));
        }
        return soaks;
    }

    private List<PlannedOperation> operations(List<Brew> brews) {
        FloorOfDay floor =
                new FloorOfDay(shop, clock, evening.now(), evening.committed().disruption());
        List<PlannedOperation> operations = new ArrayList<>();
        for (Brew brew : brews)
            for (Placement placement : steps.get(brew).values()) {
                Step step = brew.recipe.steps().get(placement.operation());
                operations.add(new PlannedOperation(
                        names.id(brew),
                        placement.operation() + 1,
                        step.stage(),
                        placement.station(),
                        placement.place() + 1,
                        clock.instant(placement.start()),
                        clock.instant(placement.end()),
                        step.halfHands(),
                        floor.load(brew, step)));
            }
        operations.sort(Comparator.comparing(PlannedOperation::start)
                .thenComparing(PlannedOperation::batch)
                .thenComparing(PlannedOperation::seq));
        return operations;
    }

    private List<PlannedRoute> routes(Wants wants) {
        return wants.vans.values().stream()
                .map(van -> route(van, wants))
                .sorted(Comparator.comparing(PlannedRoute::departs).thenComparing(PlannedRoute::route))
                .toList();
    }

    private PlannedRoute route(Van van, Wants wants) {
        int packed = wants.lines.stream()
                .filter(line -> line.due.equals(van.due()))
                .flatMap(line -> line.gifts.stream())
                .flatMap(gift -> gift.brew().stream())
                .mapToInt(this::end)
                .max()
                .orElse(Math.min(van.packByMinute(), 0)); // only stock: it stands ready when the day begins
        return new PlannedRoute(
                van.route().code(),
                van.departs(),
                van.route().loadMinutes(),
                van.route().weight(),
                clock.instant(packed),
                Math.max(0, packed - van.packByMinute()));
    }

    private List<PlannedLabel> labels(List<Brew> brews, Cases cases) {
        List<PlannedLabel> labels = new ArrayList<>();
        for (Brew brew : brews)
            for (var filled : brew.packs.entrySet())
                if (filled.getValue() > 0)
                    labels.add(cases.label(brew, filled.getKey(), names.lot(brew), packDate(brew)));
        return labels;
    }
}

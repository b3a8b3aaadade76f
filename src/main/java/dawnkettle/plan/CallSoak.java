package dawnkettle.plan;

import dawnkettle.measure.Mass;
import dawnkettle.shop.Shop;
import java.math.RoundingMode;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** Which tubs of a first plan can't wait for the close of the book. */
final class CallSoak {
    /** A first grind that starts this much later is not worth settling a tub before the book is closed. */
    private static final int PATIENCE_MINUTES = 20;

    private final Shop shop;
    private final Evening evening;
    private final DayClock clock;

    CallSoak(Shop shop, Evening evening, DayClock clock) {
        this.shop = shop;
        this.evening = evening;
        this.clock = clock;
    }

    SoakCall of(Attempt.Outcome outcome, Instant closesAt, List<String> waysOut) {
        int earliest = clock.minuteAtOrAfter(closesAt) + TubTimes.HEAD_START_MINUTES;
        TubTimes afterClose = new TubTimes(
                evening.soakRoom().beliefs(),
                evening.soakRoom().temperatures(),
                clock,
                TubTimes.fillMinutes(shop.floor(), shop.calendar(), clock, earliest));
        BeanLots beanLots = new BeanLots(shop, evening);
        List<Integer> taken = new ArrayList<>();
        List<PlannedSoak> tubs = new ArrayList<>();
        for (TubDraft tub : outcome.tubs()) {
            Optional<Integer> later = laterFilling(tub, outcome, afterClose, taken);
            if (later.isPresent()) taken.add(later.get());
            else tubs.add(beanLots.planned(tub, clock, List.of(), tub.ready));
        }
        return new SoakCall(clock.day(), evening.now(), tubs, groups(tubs), notes(tubs, waysOut));
    }

    private Optional<Integer> laterFilling(
            TubDraft tub, Attempt.Outcome outcome, TubTimes afterClose, List<Integer> taken) {
        int first = tub.brews.stream().mapToInt(outcome::start).min().orElse(tub.ready);
        int last = tub.brews.stream().mapToInt(outcome::start).max().orElse(tub.ready);
        return afterClose
                .of(tub.soakGroup)
                .filling(
                        tub.tub,
                        first + PATIENCE_MINUTES,
                        last + PATIENCE_MINUTES,
                        new TubTimes.Window(Integer.MIN_VALUE, taken))
                .filter(filling -> filling.ready() <= first + PATIENCE_MINUTES)
                .map(TubDraft.Filling::fill);
    }

    private static List<SoakCall.GroupMass> groups(List<PlannedSoak> tubs) {
        Map<String, Mass> byGroup = new TreeMap<>();
        tubs.forEach(tub -> byGroup.merge(tub.soakGroup(), tub.beans(), Mass::plus));
        return byGroup.entrySet().stream()
                .map(group -> new SoakCall.GroupMass(group.getKey(), group.getValue()))
                .toList();
    }

    private String howSure(String group, Temperatures temperatures) {
        SoakBelief belief = evening.soakRoom().beliefs().of(group);
        String sentence = belief.sentence(temperatures.room().degrees());
        return belief.observations() == 0 ? sentence : "Of " + group + " beans: " + sentence;
    }

    private List<String> notes(List<PlannedSoak> tubs, List<String> waysOut) {
        if (tubs.isEmpty()) return List.of();
        Temperatures temperatures = evening.soakRoom().temperatures();
        List<String> notes = new ArrayList<>(SoakDoubts.of(temperatures));
        notes.addAll(waysOut);
        notes.add(String.format(
                Locale.ROOT,
                "The soak is counted with %s (%s). Published figures differ by hours: look at the beans before grinding.",
                temperatures.room(),
                temperatures.source()));
        tubs.stream()
                .map(PlannedSoak::soakGroup)
                .distinct()
                .map(group -> howSure(group, temperatures))
                .distinct()
                .forEach(notes::add);
        CallAllowances.beans(shop, evening.outlook().allowances())
                .forEach((group, beans) -> notes.add(String.format(
                        Locale.ROOT,
                        "%s kg of %s beans are for orders that usually still come.",
                        beans.inKilograms(0, RoundingMode.HALF_UP).toPlainString(),
                        group)));
        return notes;
    }
}

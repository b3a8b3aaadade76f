package dawnkettle.plan;

import dawnkettle.floor.Shortfall;
import dawnkettle.floor.Shortfalls;
import dawnkettle.measure.Mass;
import dawnkettle.stock.RoomTold;
import java.math.RoundingMode;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** What the crew and the owner should know of a plan, in the shop's words. */
final class Remarks {
    /** A last grind so close to the end of its beans is worth a look. */
    private static final int NARROW_MINUTES = 15;

    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);

    private final Evening evening;
    private final DayClock clock;
    private final Names names;

    Remarks(Evening evening, DayClock clock, Names names) {
        this.evening = evening;
        this.clock = clock;
        this.names = names;
    }

    /** Where a van is late: what proves that it can't be in time, a lead time first, or that no better run was found. */
    List<String> advice(Attempt.Outcome outcome, List<PlannedRoute> routes) {
        int late = routes.stream().mapToInt(PlannedRoute::lateMinutes).max().orElse(0);
        if (late == 0) return List.of();
        List<String> advice = new ArrayList<>();
        for (Shortfall shortfall : Shortfalls.of(outcome.floor())) advice.add(proved(shortfall, routes));
        if (advice.isEmpty())
            advice.add(
                    "No run was found in which every van is in time; that there is none is not proved. The latest is "
                            + late + " min late.");
        return advice;
    }

    private String proved(Shortfall shortfall, List<PlannedRoute> routes) {
        String van = shortfall.due().split(" ")[0];
        int late = routes.stream()
                .filter(route -> Van.due(route.route(), clock.date(clock.minute(route.departs())))
                        .equals(shortfall.due()))
                .mapToInt(PlannedRoute::lateMinutes)
                .findFirst()
                .orElse(0);
        String most = shortfall.minutesOver() + " min late whatever is done; this plan " + late + ".";
        if (shortfall.leadTimeOnly())
            return "Van " + van + " can't be in time: one batch alone takes until " + time(shortfall.earliest())
                    + ", at least " + most + " Only an earlier start or a later van helps.";
        return "Van " + van + " can't be in time, proved by the " + shortfall.binding() + ", about "
                + shortfall.jobsTooMany() + " batches too many before it: at least " + most;
    }

    /** Who is away and what is down. */
    private List<String> missing() {
        RoomTold told = new RoomTold(clock.zone());
        Disruption missing = evening.committed().disruption();
        List<String> lines = new ArrayList<>();
        for (Disruption.FewerHands fewer : missing.hands())
            lines.add("Counted with: "
                    + told.away(
                            fewer.halfHands(), fewer.span().from(), fewer.span().until()) + ".");
        for (Disruption.StationDown down : missing.stations())
            lines.add("Counted with: "
                    + told.down(down.station(), down.span().from(), down.span().until()) + ".");
        return lines;
    }

    List<String> warnings(Attempt.Outcome outcome, List<PlannedRoute> routes) {
        List<String> warnings = new ArrayList<>(missing());
        for (PlannedRoute route : routes)
            if (route.lateMinutes() > 0)
                warnings.add("Van " + route.route() + " is packed " + route.lateMinutes() + " min late, at "
                        + TIME.format(route.packedBy().atZone(clock.zone())) + ".");
        if (!outcome.tubs().isEmpty())
            warnings.addAll(SoakDoubts.of(evening.soakRoom().temperatures()));
        outcome.tubs().forEach(tub -> ofTub(tub, outcome, warnings));
        ofWarmWater(outcome, warnings);
        outcome.brews().forEach(brew -> ofSoak(brew, outcome.start(brew), warnings));
        ofAllergens(outcome, warnings);
        if (evening.larder().beans().isEmpty() && !outcome.tubs().isEmpty())
            warnings.add("No beans are booked in: write the bean lot of each tub on the soak sheet by hand.");
        return warnings;
    }

    private void ofTub(TubDraft tub, Attempt.Outcome outcome, List<String> warnings) {
        String code = "Tub " + tub.tub.code();
        if (!tub.left().isZero())
            warnings.add(
                    code + ": " + kilograms(tub.left())
                            + " kg of soaked beans are left over. Drain, chill to 5 °C or below and use within the day, or throw away.");
        if (tub.latest - tub.ready < SoakLaw.NARROWEST_WINDOW_MINUTES)
            warnings.add(code + " is ready at " + time(tub.ready) + " and over-soaked at " + time(tub.latest)
                    + ": less than two hours. Look at it early.");
        if (tub.beanLots.size() > 1)
            warnings.add(code + " holds " + tub.beanLots.size() + " lots of beans; its batches carry all of them.");
        ofLastGrind(tub, outcome, warnings);
    }

    private void ofLastGrind(TubDraft tub, Attempt.Outcome outcome, List<String> warnings) {
        int last = tub.brews.stream().mapToInt(outcome::start).max().orElse(tub.ready);
        if (tub.latest - last < NARROW_MINUTES && !tub.brews.isEmpty())
            warnings.add("Tub " + tub.tub.code() + ": its last batch is ground " + (tub.latest - last)
                    + " min before the beans are over-soaked.");
    }

    /** Only a batch that is not moved any more can be ground outside its beans' hours. */
    private void ofSoak(Brew brew, int grind, List<String> warnings) {
        for (TubDraft.Share share : brew.soaks) {
            TubDraft tub = share.tub();
            if (grind < tub.ready)
                warnings.add(names.id(brew) + " is ground at " + time(grind) + " but tub " + tub.tub.code()
                        + " is ready at " + time(tub.ready) + ": look at the beans before grinding.");
            if (grind > tub.latest)
                warnings.add(names.id(brew) + " is ground at " + time(grind) + " but tub " + tub.tub.code()
                        + " is over-soaked at " + time(tub.latest)
                        + ": smell and look, throw away what is sour or slimy.");
        }
    }

    private void ofWarmWater(Attempt.Outcome outcome, List<String> warnings) {
        String warm = outcome.tubs().stream()
                .filter(tub ->
                        tub.water.compareTo(evening.soakRoom().temperatures().tap()) > 0)
                .map(tub -> tub.tub.code() + " " + tub.water)
                .collect(Collectors.joining(", "));
        if (!warm.isEmpty()) warnings.add("Filled with water warmer than the tap, to be ready in time: " + warm + ".");
    }

    private void ofAllergens(Attempt.Outcome outcome, List<String> warnings) {
        String batches = outcome.brews().stream()
                .filter(brew -> brew.recipe.allergens().size() > 1)
                .map(brew -> names.id(brew) + " " + brew.recipe.name())
                .sorted()
                .collect(Collectors.joining(", "));
        if (!batches.isEmpty())
            warnings.add("Another allergen besides soy is in " + batches
                    + ": wash before the next recipe, and keep the labels apart.");
    }

    private String time(int minute) {
        return TIME.format(clock.instant(minute).atZone(clock.zone()));
    }

    private static String kilograms(Mass mass) {
        return mass.inKilograms(1, RoundingMode.HALF_UP).toPlainString();
    }
}

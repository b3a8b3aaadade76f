package dawnkettle.plan;

import dawnkettle.measure.Mass;
import dawnkettle.shop.Tub;
import java.math.RoundingMode;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * What helps when even the first tub that somebody can fill is ready too late: by how many minutes, and what each way out
 * gives, computed. The way to compare with is the same day with beans that stood ready.
 */
final class SoakWaysOut {
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("EEE HH:mm", Locale.ENGLISH);

    private final TubTimes times;
    private final DayClock clock;
    private final Tub tub;

    /** @param first the tub that is filled first */
    SoakWaysOut(TubTimes times, DayClock clock, TubDraft first) {
        this.times = times.of(first.soakGroup);
        this.clock = clock;
        this.tub = first.tub;
    }

    /**
     * A day's run.
     *
     * @param firstGrind minute at which the first batch is ground
     * @param late minutes by van that is late
     */
    record Day(int firstGrind, Map<String, Integer> late, Mass sure) {
        int lateMinutes() {
            return late.values().stream().mapToInt(Integer::intValue).sum();
        }
    }

    /**
     * Empty where the soak makes no van late.
     *
     * @param planned the day as it comes out, warm water used where it helps
     * @param soaked the day if beans stood ready
     */
    List<String> of(Day planned, Day soaked) {
        Optional<TubTimes.Soonest> byTap = times.soonestByTap(tub);
        Optional<TubTimes.Soonest> warmed = times.soonestWarmed(tub);
        if (byTap.isEmpty() || warmed.isEmpty()) return List.of();
        int wanted = soaked.firstGrind();
        if (byTap.get().ready() <= wanted || planned.lateMinutes() <= soaked.lateMinutes()) return List.of();
        List<String> ways = new ArrayList<>();
        ways.add("The soak is " + (byTap.get().ready() - wanted) + " min too late: filled first thing, at "
                + time(byTap.get().fill()) + ", with tap water of "
                + byTap.get().water() + " the beans are ready at "
                + time(byTap.get().ready()) + "; the first grind would be at " + time(wanted) + ".");
        ways.add(warm(warmed.get(), byTap.get(), wanted));
        ways.add("Way out, a later first grind: at " + time(planned.firstGrind()) + ", " + vans(planned) + ".");
        if (!planned.sure().isZero())
            ways.add("Way out, the sure part now: " + planned.sure().inKilograms(0, RoundingMode.HALF_UP)
                    + " kg of beans are for what is ordered or stands; soak at least those at once.");
        return ways;
    }

    private String warm(TubTimes.Soonest warmed, TubTimes.Soonest byTap, int wanted) {
        int gained = byTap.ready() - warmed.ready();
        if (gained <= 0)
            return "Way out, warmer water: none helps with a mean not above 25 °C and two hours between ready and too late.";
        int still = warmed.ready() - wanted;
        return "Way out, warmer water: filled with " + warmed.water() + " the beans are ready at "
                + time(warmed.ready())
                + ", " + gained + " min sooner (mean "
                + String.format(Locale.ROOT, "%.1f", warmed.course().mean()) + " °C, "
                + warmed.course().windowMinutes() + " min until too late), "
                + (still > 0 ? "still " + still + " min too late." : "in time.");
    }

    private static String vans(Day planned) {
        List<String> vans = new ArrayList<>();
        planned.late().forEach((van, minutes) -> vans.add(van.split(" ")[0] + " " + minutes + " min"));
        return vans.isEmpty() ? "no van late" : "vans late: " + String.join(", ", vans);
    }

    private String time(int minute) {
        return TIME.format(clock.instant(minute).atZone(clock.zone()));
    }
}

package dawnkettle.cost;

import dawnkettle.shop.Recipe;
import dawnkettle.stock.Fact.Yielded;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * How a recipe's yield went week by week, with the limits of what was usual before it moved.
 *
 * @param weeks Mondays of weeks with records, the oldest first
 * @param chart the weeks' yields: all that came out by all that went in
 * @param shift where it moved for good, if it did
 * @param input kilograms that went in, in the last week
 */
public record YieldCourse(
        Recipe recipe, List<LocalDate> weeks, ControlChart chart, Optional<Shift> shift, double input) {
    /** So many weeks are needed to say what is usual (our choice). */
    static final int LEAST_WEEKS = 6;

    /** A move of less than this share is left to chance. */
    private static final double LEAST_MOVE = 0.01;

    public YieldCourse {
        weeks = List.copyOf(weeks);
    }

    /** A week's batches together. */
    private static final class Week {
        private double in;
        private double out;

        double yield() {
            return out / in;
        }
    }

    /**
     * The course of each recipe with enough records, by what went in, the most first.
     *
     * @param records the oldest first; of a lot's records the last one counts
     */
    public static List<YieldCourse> of(List<Recipe> recipes, List<Yielded> records) {
        Map<String, Yielded> lots = new LinkedHashMap<>();
        records.forEach(one -> lots.put(one.lot().text(), one));
        List<YieldCourse> courses = new ArrayList<>();
        for (Recipe recipe : recipes) of(recipe, lots).ifPresent(courses::add);
        courses.sort((one, other) -> Double.compare(other.input, one.input));
        return courses;
    }

    private static Optional<YieldCourse> of(Recipe recipe, Map<String, Yielded> lots) {
        Map<LocalDate, Week> weeks = new TreeMap<>();
        for (Yielded one : lots.values())
            if (one.recipe().equals(recipe.code()) && !one.input().isZero()) {
                LocalDate day = one.lot().productionDate();
                Week week = weeks.computeIfAbsent(
                        day.with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY)), any -> new Week());
                week.in += one.input().milligrams() / 1e6;
                week.out += one.product().milligrams() / 1e6;
            }
        if (weeks.size() < LEAST_WEEKS) return Optional.empty();
        List<Week> all = List.copyOf(weeks.values());
        List<Double> yields = all.stream().map(Week::yield).toList();
        Optional<Shift> shift = Shift.find(yields, LEAST_MOVE);
        int base = shift.map(Shift::first)
                .filter(first -> first >= LEAST_WEEKS / 2)
                .orElse(yields.size());
        return Optional.of(new YieldCourse(
                recipe, List.copyOf(weeks.keySet()), ControlChart.of(yields, base), shift, all.get(all.size() - 1).in));
    }

    /** The Monday from which it lies off what was usual. */
    public Optional<LocalDate> movedIn() {
        return shift.map(move -> weeks.get(move.first()));
    }

    public double last() {
        return chart.values().get(chart.values().size() - 1);
    }

    /** What the last week says of itself: a run rule that it breaks. */
    public Optional<RunRule> alarm() {
        return RunRule.broken(chart, chart.values().size() - 1);
    }

    /** Whether the remembering chart is out, which sees small moves sooner. */
    public boolean isDrifting() {
        return chart.sigma() > 0
                && EwmaChart.of(chart.values(), chart.centre(), chart.sigma()).isOut();
    }
}

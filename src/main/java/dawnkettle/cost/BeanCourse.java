package dawnkettle.cost;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** How the price of the beans used went over the weeks, and where it moved for good. */
public record BeanCourse(List<LocalDate> weeks, Optional<Shift> shift) {
    /** Two percent: less is told by the weekly figures alone (our choice). */
    private static final double LEAST_MOVE = 0.02;

    public static BeanCourse of(List<WeekCosts> weeks) {
        List<WeekCosts> with =
                weeks.stream().filter(week -> !week.all().beans().isZero()).toList();
        List<Double> prices = with.stream()
                .map(week -> week.all().part(CostPart.BEANS).minor()
                        / (double) week.all().beans().milligrams())
                .toList();
        return new BeanCourse(
                with.stream().map(WeekCosts::monday).toList(),
                prices.size() < YieldCourse.LEAST_WEEKS ? Optional.empty() : Shift.find(prices, LEAST_MOVE));
    }

    public Optional<LocalDate> movedIn() {
        return shift.map(move -> weeks.get(move.first()));
    }
}

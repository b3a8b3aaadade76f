package dawnkettle.history;

import dawnkettle.shop.ShopCalendar;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;

/** The days that the invented history tells of, and how it is going in each of them. */
record Span(ShopCalendar calendar) {
    /** A Monday; week 1 begins. */
    static final LocalDate FIRST = LocalDate.of(2026, 6, 1);

    /** Week 26 ended on the Saturday before. */
    static final LocalDate LAST = LocalDate.of(2026, 12, 2);

    /** From this making day on every pack's way is told: what a customer may still have in the fridge, and more. */
    static final LocalDate TRACED_FROM = LocalDate.of(2026, 11, 16);

    static final int WEEKS = 26;

    /** Orders grow by this over the weeks. */
    static final double GROWTH = 0.08;

    /** Week in which beans begin to be dearer, for how many weeks they go on, and by how much in all. */
    static final int DEARER_FROM_WEEK = 17;

    static final int DEARER_WEEKS = 4;
    static final double DEARER = 0.18;

    /** Week in which one recipe begins to give less, a step a week until the last; and by how much in all. */
    static final int DRIFT_FROM_WEEK = 22;

    static final String DRIFTING_RECIPE = "firm";
    static final double DRIFT = -0.04;

    List<LocalDate> workDays() {
        return FIRST.datesUntil(LAST.plusDays(1)).filter(calendar::isWorkDay).toList();
    }

    static int week(LocalDate day) {
        return (int) ChronoUnit.WEEKS.between(FIRST, day) + 1;
    }

    /** Size of the order book, 1 at the end of week 26. */
    static double level(LocalDate day) {
        double done = Math.min(1, ChronoUnit.DAYS.between(FIRST, day) / (7.0 * WEEKS));
        return (1 + GROWTH * done) / (1 + GROWTH);
    }

    /** What beans cost, 1 before they get dearer. */
    static double beanPrice(LocalDate day) {
        int steps = Math.min(DEARER_WEEKS, Math.max(0, week(day) - DEARER_FROM_WEEK + 1));
        return 1 + DEARER * steps / DEARER_WEEKS;
    }

    /** What a recipe gives, 1 where nothing drifts. */
    static double yield(String recipe, LocalDate day) {
        if (!recipe.equals(DRIFTING_RECIPE)) return 1;
        int weeks = WEEKS - DRIFT_FROM_WEEK + 1;
        int steps = Math.min(weeks, Math.max(0, week(day) - DRIFT_FROM_WEEK + 1));
        return 1 + DRIFT * steps / weeks;
    }
}

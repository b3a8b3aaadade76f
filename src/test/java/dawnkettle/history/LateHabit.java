package dawnkettle.history;

import java.time.DayOfWeek;
import java.util.List;

/** What customers of one price list tend to think of after the close of a weekday's making. */
record LateHabit(DayOfWeek weekday, String priceList, Often often, Line line) {
    /** How often, and how many lines then. */
    record Often(double chance, int mostLines) {}

    /** What a line asks for: one to {@code mostSteps} times {@code step} packs. */
    record Line(String product, int step, int mostSteps) {}

    /** Kitchens see on Thursday night what Friday will bring; shops see it on Friday night for Saturday. */
    static final List<LateHabit> OF_MILLRACE = List.of(
            new LateHabit(DayOfWeek.FRIDAY, "kitchen", new Often(0.88, 4), new Line("FIRM-BKT", 1, 3)),
            new LateHabit(DayOfWeek.FRIDAY, "kitchen", new Often(0.80, 4), new Line("MED-BKT", 1, 3)),
            new LateHabit(DayOfWeek.FRIDAY, "wholesale", new Often(0.75, 3), new Line("FIRM-400", 6, 3)),
            new LateHabit(DayOfWeek.FRIDAY, "kitchen", new Often(0.40, 2), new Line("FRY-KIT", 1, 3)),
            new LateHabit(DayOfWeek.SATURDAY, "wholesale", new Often(0.75, 3), new Line("FIRM-400", 6, 3)),
            new LateHabit(DayOfWeek.SATURDAY, "everyday", new Often(0.45, 2), new Line("MED-400", 6, 2)),
            new LateHabit(DayOfWeek.MONDAY, "kitchen", new Often(0.70, 4), new Line("MED-BKT", 1, 2)));
}

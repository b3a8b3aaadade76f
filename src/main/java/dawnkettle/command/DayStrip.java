package dawnkettle.command;

import dawnkettle.plan.DayFloor;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.PlannedOperation;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;

/** The day as a strip of text: a row a station, a column a quarter of an hour, the batches at work in each. */
final class DayStrip {
    private static final int MINUTES_A_COLUMN = 15;

    private final DayPlan plan;
    private final Instant from;
    private final int columns;

    DayStrip(DayPlan plan) {
        this.plan = plan;
        List<PlannedOperation> operations = plan.operations();
        ZoneId zone = plan.heading().zone();
        this.from = operations.isEmpty()
                ? plan.heading().computedAt()
                : operations.get(0).start().atZone(zone).withMinute(0).toInstant();
        Instant until = operations.stream()
                .map(PlannedOperation::end)
                .max(Instant::compareTo)
                .orElse(from);
        this.columns = (int) (Duration.between(from, until).toMinutes() / MINUTES_A_COLUMN) + 1;
    }

    /** A digit says how many batches are at the station in that quarter; a dot that it is open and empty. */
    String text() {
        if (plan.operations().isEmpty()) return "";
        StringBuilder text = new StringBuilder(
                "The day (a column is " + MINUTES_A_COLUMN + " minutes; the figure is how many batches are there)\n");
        text.append(hours()).append('\n');
        for (DayFloor.DayStation station : plan.floor().stations())
            text.append(String.format(Locale.ROOT, "  %-9s ", station.station()))
                    .append(row(station.station()))
                    .append('\n');
        return text.append('\n').toString();
    }

    private String hours() {
        StringBuilder hours = new StringBuilder("            ");
        for (int column = 0; column < columns; column += 60 / MINUTES_A_COLUMN)
            hours.append(String.format(
                    Locale.ROOT,
                    "%-" + 60 / MINUTES_A_COLUMN + "s",
                    start(column).atZone(plan.heading().zone()).getHour() + "h"));
        return hours.toString().stripTrailing();
    }

    private String row(String station) {
        StringBuilder row = new StringBuilder();
        for (int column = 0; column < columns; column++) {
            long there = there(station, start(column), start(column + 1));
            row.append(there == 0 ? '.' : there > 9 ? '+' : (char) ('0' + there));
        }
        return row.toString();
    }

    private Instant start(int column) {
        return from.plusSeconds(60L * MINUTES_A_COLUMN * column);
    }

    private long there(String station, Instant start, Instant end) {
        return plan.operations().stream()
                .filter(operation -> operation.station().equals(station))
                .filter(operation ->
                        operation.start().isBefore(end) && operation.end().isAfter(start))
                .count();
    }
}

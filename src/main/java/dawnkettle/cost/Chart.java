package dawnkettle.cost;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;

/**
 * Figures by week, to be drawn as lines over one scale: from zero, or close up where all lies within a quarter.
 *
 * @param name of the picture, as a file name without its ending
 * @param unit of the scale, as "USD per kg"
 * @param weeks the Mondays, oldest first
 * @param lines one to four
 * @param alternative what it shows, in words
 */
public record Chart(
        String name, String title, String unit, List<LocalDate> weeks, List<Line> lines, String alternative) {
    public Chart {
        weeks = List.copyOf(weeks);
        lines = List.copyOf(lines);
        if (weeks.isEmpty() || lines.isEmpty() || lines.size() > 4)
            throw new IllegalArgumentException("a chart shows one to four lines over at least one week");
        for (Line line : lines)
            if (line.values().size() != weeks.size())
                throw new IllegalArgumentException("line \"" + line.name() + "\" needs a value for each week");
    }

    public BigDecimal least() {
        return values().min(BigDecimal::compareTo).orElseThrow();
    }

    public BigDecimal most() {
        return values().max(BigDecimal::compareTo).orElseThrow();
    }

    private Stream<BigDecimal> values() {
        return lines.stream().flatMap(line -> line.values().stream());
    }

    /** A named line, a value for each week. */
    public record Line(String name, List<BigDecimal> values) {
        public Line {
            values = List.copyOf(values);
        }
    }
}

package dawnkettle.cost;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;

/**
 * Figures by name, to be drawn as bars beside one another; below zero they go to the left.
 *
 * @param name of the picture, as a file name without its ending
 * @param unit of the figures
 * @param bars one to twenty-four, the first above
 * @param alternative what it shows, in words
 */
public record Bars(String name, String title, String unit, List<Bar> bars, String alternative) {
    private static final int MOST = 24;

    public Bars {
        bars = List.copyOf(bars);
        if (bars.isEmpty() || bars.size() > MOST)
            throw new IllegalArgumentException("a picture shows one to " + MOST + " bars");
    }

    /** A named figure. */
    public record Bar(String name, BigDecimal value) {}

    /** At most {@code count} of them: the first and the last. */
    public Bars ends(int count) {
        if (bars.size() <= count) return this;
        List<Bar> some = new ArrayList<>(bars.subList(0, count - count / 2));
        some.addAll(bars.subList(bars.size() - count / 2, bars.size()));
        return new Bars(name, title, unit, some, alternative);
    }

    /** What the longest bar to the right stands for; zero where all go to the left. */
    public double most() {
        return Math.max(
                0,
                bars.stream()
                        .mapToDouble(bar -> bar.value().doubleValue())
                        .max()
                        .orElseThrow());
    }

    /** What the longest bar to the left stands for, zero or below. */
    public double least() {
        return Math.min(
                0,
                bars.stream()
                        .mapToDouble(bar -> bar.value().doubleValue())
                        .min()
                        .orElseThrow());
    }
}

package dawnkettle.cost;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * What points in a row on a control chart say: the rules of the Western Electric handbook (1956), as the NIST/SEMATECH
 * e-Handbook, 6.3.2, gives them (rules from memory).
 */
public enum RunRule {
    ONE_BEYOND_THREE(1, 1, 3, "a value beyond the limits"),
    TWO_OF_THREE_BEYOND_TWO(2, 3, 2, "two of three values near one limit"),
    FOUR_OF_FIVE_BEYOND_ONE(4, 5, 1, "four of five values well to one side"),
    EIGHT_ON_ONE_SIDE(8, 8, 0, "eight values in a row on one side");

    private final int count;
    private final int window;
    private final double distance;
    private final String words;

    RunRule(int count, int window, double distance, String words) {
        this.count = count;
        this.window = window;
        this.distance = distance;
        this.words = words;
    }

    public String words() {
        return words;
    }

    /** The first rule that the point {@code at} breaks, together with those before it. */
    public static Optional<RunRule> broken(ControlChart chart, int at) {
        return Arrays.stream(values()).filter(rule -> rule.isBroken(chart, at)).findFirst();
    }

    /** Points that break a rule. */
    public static List<Integer> broken(ControlChart chart) {
        return IntStream.range(0, chart.values().size())
                .filter(at -> broken(chart, at).isPresent())
                .boxed()
                .toList();
    }

    private boolean isBroken(ControlChart chart, int at) {
        if (at + 1 < window) return false;
        return isBroken(chart, at, 1) || isBroken(chart, at, -1);
    }

    /** The point itself has to be one of them: it is the one that is judged. */
    private boolean isBroken(ControlChart chart, int at, int side) {
        if (side * chart.distance(at) <= distance) return false;
        long beyond = IntStream.rangeClosed(at - window + 1, at)
                .filter(i -> side * chart.distance(i) > distance)
                .count();
        return beyond >= count;
    }
}

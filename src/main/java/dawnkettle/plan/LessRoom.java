package dawnkettle.plan;

import dawnkettle.floor.Hands;
import dawnkettle.floor.Window;
import dawnkettle.plan.Disruption.FewerHands;
import dawnkettle.plan.Disruption.StationDown;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/** The workroom's windows and hands less what stands and who is missing. */
final class LessRoom {
    private final Disruption disruption;
    private final DayClock clock;

    LessRoom(Disruption disruption, DayClock clock) {
        this.disruption = disruption;
        this.clock = clock;
    }

    /** What is left of a station's windows. */
    List<Window> open(String station, List<Window> windows) {
        List<Window> open = windows;
        for (StationDown down : disruption.stations())
            if (down.station().equals(station)) open = without(open, span(down.span()));
        return open;
    }

    private Minutes span(DayFloor.Span span) {
        return new Minutes(clock.minute(span.from()), clock.minuteAtOrAfter(span.until()));
    }

    /** Minutes of a stretch that may begin before the day. */
    private record Minutes(int from, int until) {}

    private static List<Window> without(List<Window> windows, Minutes down) {
        List<Window> open = new ArrayList<>();
        for (Window window : windows) {
            add(open, window.fromInclusive(), Math.min(window.untilExclusive(), down.from()));
            add(open, Math.max(window.fromInclusive(), down.until()), window.untilExclusive());
        }
        return open;
    }

    private static void add(List<Window> open, int from, int until) {
        if (from < until) open.add(new Window(from, until));
    }

    /** Who is left; never fewer than nobody. */
    List<Hands> there(List<Hands> all) {
        if (disruption.hands().isEmpty()) return all;
        TreeSet<Integer> edges = new TreeSet<>();
        for (Hands hands : all) {
            edges.add(hands.window().fromInclusive());
            edges.add(hands.window().untilExclusive());
        }
        for (FewerHands fewer : disruption.hands()) {
            edges.add(Math.max(0, span(fewer.span()).from()));
            edges.add(Math.max(0, span(fewer.span()).until()));
        }
        List<Hands> left = new ArrayList<>();
        for (Integer from = edges.first(); edges.higher(from) != null; from = edges.higher(from)) {
            int halves = halves(all, from) - missing(from);
            if (halves > 0) left.add(new Hands(new Window(from, edges.higher(from)), halves));
        }
        return left;
    }

    private static int halves(List<Hands> all, int minute) {
        return all.stream()
                .filter(hands -> hands.window().fromInclusive() <= minute
                        && minute < hands.window().untilExclusive())
                .mapToInt(Hands::halves)
                .sum();
    }

    private int missing(int minute) {
        return disruption.hands().stream()
                .filter(fewer -> span(fewer.span()).from() <= minute
                        && minute < span(fewer.span()).until())
                .mapToInt(FewerHands::halfHands)
                .sum();
    }
}

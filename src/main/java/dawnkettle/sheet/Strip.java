package dawnkettle.sheet;

import dawnkettle.plan.DayFloor.DayStation;
import dawnkettle.plan.PlannedOperation;
import dawnkettle.plan.PlannedRoute;
import dawnkettle.shop.WorkStation;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** The day as a strip: a lane a place of a station, a bar a batch, hours as a grid, vans at the head. */
final class Strip {
    private static final double NAMES_MM = 56;
    private static final double HIGHEST_MM = 6;
    private static final double LOWEST_MM = 4.2;

    /** Vans that leave later than this after the last step are named at the edge. */
    private static final Duration AFTER_WORK = Duration.ofHours(2);

    private static final double HOURS_MM = 5.5;
    private static final double SHORTEST_HOUR_MM = 12;
    private static final double ROOM_FOR_LAST_MM = 17;
    private static final Lettering HOUR = Lettering.bold(9.5).aligned(Lettering.Align.CENTRE);
    private static final Lettering SHORT_HOUR = Lettering.bold(9).aligned(Lettering.Align.CENTRE);

    private final Day day;
    private final Flow flow;
    private final Instant from;
    private final Instant until;
    private double laneMm = HIGHEST_MM;

    Strip(Day day, Flow flow) {
        this.day = day;
        this.flow = flow;
        List<PlannedOperation> operations = day.plan().operations();
        Instant first = operations.stream()
                .map(PlannedOperation::start)
                .min(Comparator.naturalOrder())
                .orElseThrow();
        Instant end = operations.stream()
                .map(PlannedOperation::end)
                .max(Comparator.naturalOrder())
                .orElseThrow();
        Instant last = day.plan().routes().stream()
                .map(PlannedRoute::departs)
                .filter(departs -> !departs.isAfter(end.plus(AFTER_WORK)))
                .reduce(end, (one, other) -> one.isAfter(other) ? one : other);
        this.from = day.desk().dates().hourOf(first);
        this.until = day.desk().dates().hourOf(last.plus(Duration.ofMinutes(59)));
    }

    /** Whether a moment lies on the strip; the vans of the next morning do not. */
    boolean shows(Instant instant) {
        return !instant.isAfter(until);
    }

    /** Height of a lane of bars. */
    double laneMm() {
        return laneMm;
    }

    void draw() {
        List<Lane> lanes = new ArrayList<>();
        if (!day.plan().routes().isEmpty()) lanes.add(new VanLane(day));
        lanes.addAll(lanes());
        fit(lanes);
        int next = 0;
        while (next < lanes.size()) {
            double room = flow.roomMm() - HOURS_MM;
            int last = next;
            double height = 0;
            while (last < lanes.size() && height + lanes.get(last).heightMm(this) <= room)
                height += lanes.get(last++).heightMm(this);
            if (last > next) part(lanes.subList(next, last), flow.claim(height + HOURS_MM));
            if (last < lanes.size()) flow.turn();
            next = last;
        }
    }

    /** Lower bars where that lets the whole day stand on this page. */
    private void fit(List<Lane> lanes) {
        long bars = lanes.stream().filter(BarLane.class::isInstance).count();
        double others = lanes.stream()
                .filter(lane -> !(lane instanceof BarLane))
                .mapToDouble(lane -> lane.heightMm(this))
                .sum();
        double each = (flow.roomMm() - HOURS_MM - others - 1) / Math.max(1, bars);
        laneMm = Math.max(LOWEST_MM, Math.min(HIGHEST_MM, each));
    }

    private void part(List<Lane> lanes, Frame frame) {
        Canvas canvas = flow.canvas();
        hours(canvas, frame);
        double y = frame.y() + HOURS_MM;
        for (Lane lane : lanes) {
            double height = lane.heightMm(this);
            lane.draw(this, canvas, new Frame(frame.x(), y, frame.width(), height));
            y += height;
            canvas.across(frame.x(), frame.right(), y, 0.15);
        }
        canvas.across(frame.x(), frame.right(), frame.y() + HOURS_MM, 0.5);
        canvas.across(frame.x(), frame.right(), y, 0.5);
    }

    private void hours(Canvas canvas, Frame frame) {
        double hourMm = at(from.plus(Duration.ofHours(1))) - at(from);
        boolean narrow = hourMm < SHORTEST_HOUR_MM;
        for (Instant hour = from; !hour.isAfter(until); hour = hour.plus(Duration.ofHours(1))) {
            String time = day.desk().dates().time(hour);
            boolean last = hour.equals(until);
            if (!last || hourMm >= ROOM_FOR_LAST_MM)
                canvas.text(
                        last ? frame.right() : at(hour),
                        frame.y() + HOURS_MM - 1.4,
                        last ? HOUR.aligned(Lettering.Align.RIGHT) : narrow ? SHORT_HOUR : HOUR,
                        narrow ? time.substring(0, 2) : time);
            canvas.down(at(hour), frame.y() + HOURS_MM, frame.bottom(), 0.12);
        }
    }

    /** Where an instant lies across the page. */
    double at(Instant instant) {
        double width = flow.width() - NAMES_MM;
        double share = (double) Duration.between(from, instant).toSeconds()
                / Duration.between(from, until).toSeconds();
        return Flow.MARGIN_MM + NAMES_MM + width * share;
    }

    double namesMm() {
        return NAMES_MM;
    }

    double rightMm() {
        return Flow.MARGIN_MM + flow.width();
    }

    Typeface typeface() {
        return flow.canvas().typeface();
    }

    private List<Lane> lanes() {
        List<Lane> lanes = new ArrayList<>();
        for (String station : stations()) {
            List<PlannedOperation> there = day.inOrder().stream()
                    .filter(operation -> operation.station().equals(station))
                    .toList();
            long capacity = capacityGrams(station);
            if (capacity > 0) lanes.add(new LoadLane(day, station, capacity, there));
            else placeLanes(station, there, lanes);
        }
        return lanes;
    }

    private void placeLanes(String code, List<PlannedOperation> there, List<Lane> lanes) {
        List<Integer> places =
                there.stream().map(PlannedOperation::place).distinct().sorted().toList();
        for (int place : places) {
            Desk desk = day.desk();
            String station = day.stationName(code);
            String name = places.size() == 1
                    ? station
                    : place == places.get(0)
                            ? desk.first(Word.RUN_PLACE, station, place)
                            : desk.first(Word.RUN_SAME_PLACE, place);
            lanes.add(new BarLane(
                    name, there.stream().filter(one -> one.place() == place).toList()));
        }
    }

    /** Stations that have work, in the order in which the owner wrote them down. */
    private List<String> stations() {
        List<String> written = day.desk().shop().floor().stations().stream()
                .map(WorkStation::code)
                .toList();
        return day.plan().operations().stream()
                .map(PlannedOperation::station)
                .distinct()
                .sorted(Comparator.comparingInt(
                                (String code) -> written.contains(code) ? written.indexOf(code) : written.size())
                        .thenComparing(Comparator.naturalOrder()))
                .toList();
    }

    private long capacityGrams(String station) {
        return day.plan().floor().stations().stream()
                .filter(one -> one.station().equals(station))
                .mapToLong(DayStation::capacityGrams)
                .findFirst()
                .orElse(0);
    }
}

package dawnkettle.mail;

import dawnkettle.mail.DayStrip.Bar;
import dawnkettle.mail.DayStrip.Lane;
import dawnkettle.mail.DayStrip.Moment;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.PlannedOperation;
import dawnkettle.shop.Shop;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The day's run as a strip: when each kind of work goes on, and when the vans leave. */
final class RunStrip {
    /** Vans that leave later would squeeze the day's work into a corner. */
    private static final Duration SHOWN_AFTER = Duration.ofHours(2);

    private RunStrip() {}

    static DayStrip of(DayPlan plan, Shop shop, Figures figures) {
        List<Lane> lanes = lanes(plan);
        Instant end = lanes.stream()
                .flatMap(lane -> lane.bars().stream())
                .map(Bar::to)
                .max(Comparator.naturalOrder())
                .orElseThrow();
        List<Moment> vans = plan.routes().stream()
                .filter(route -> route.departs().isBefore(end.plus(SHOWN_AFTER)))
                .map(route -> new Moment(route.route(), route.departs(), route.lateMinutes() > 0))
                .sorted(Comparator.comparing(Moment::at).thenComparing(Moment::name))
                .toList();
        return new DayStrip(
                "day",
                "When each kind of work goes on; dashed: a van leaves",
                shop.house().zone(),
                lanes,
                vans,
                told(lanes, figures));
    }

    private static List<Lane> lanes(DayPlan plan) {
        Map<String, List<Bar>> byStage = new LinkedHashMap<>();
        plan.operations().stream()
                .sorted(Comparator.comparing(PlannedOperation::start).thenComparing(PlannedOperation::seq))
                .forEach(operation -> byStage.computeIfAbsent(operation.stage(), stage -> new ArrayList<>())
                        .add(new Bar(operation.start(), operation.end())));
        return byStage.entrySet().stream()
                .map(stage -> new Lane(stage.getKey(), stage.getValue()))
                .toList();
    }

    private static String told(List<Lane> lanes, Figures figures) {
        List<String> spans = lanes.stream()
                .map(lane -> lane.name() + " "
                        + figures.time(lane.bars().stream()
                                .map(Bar::from)
                                .min(Comparator.naturalOrder())
                                .orElseThrow())
                        + " to "
                        + figures.time(lane.bars().stream()
                                .map(Bar::to)
                                .max(Comparator.naturalOrder())
                                .orElseThrow()))
                .toList();
        return "The day by kind of work: " + String.join(", ", spans) + ".";
    }
}

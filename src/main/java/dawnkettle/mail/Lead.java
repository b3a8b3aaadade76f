package dawnkettle.mail;

import dawnkettle.plan.DayPlan;
import dawnkettle.plan.PlannedRoute;
import dawnkettle.shop.Product;
import dawnkettle.shop.Shop;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** The three lines above everything else: whether all is well, what is not, the first van. */
final class Lead {
    private static final int NAMED = 3;

    private final DayPlan plan;
    private final Shop shop;
    private final NightReport report;
    private final Figures figures;

    Lead(DayPlan plan, Shop shop, NightReport report, Figures figures) {
        this.plan = plan;
        this.shop = shop;
        this.report = report;
        this.figures = figures;
    }

    List<String> lines(Verdict verdict) {
        String first = verdict.isWell() ? "All is well" : "Not all is well: " + String.join(", ", verdict.faults());
        String asked = verdict.questions() == 0
                ? "."
                : "; " + Figures.count(verdict.questions(), "question waits", "questions wait") + " for your answer.";
        List<String> lines = new ArrayList<>();
        lines.add(first + asked);
        lines.addAll(troubles());
        lines.add(firstVan());
        return lines;
    }

    static Optional<PlannedRoute> first(DayPlan plan) {
        return plan.routes().stream()
                .min(Comparator.comparing(PlannedRoute::departs).thenComparing(PlannedRoute::route));
    }

    /** One line where nothing is the matter, else a line for each thing that is. */
    private List<String> troubles() {
        List<String> late = plan.routes().stream()
                .filter(route -> route.lateMinutes() > 0)
                .map(route -> shop.route(route.route()).name() + " by " + route.lateMinutes() + " min")
                .toList();
        List<String> missing = Verdict.shortPacks(plan).entrySet().stream()
                .map(product -> product.getValue() + " of " + name(product.getKey()))
                .toList();
        List<String> doubtful = Stream.of(
                        report.labels().uncertain(),
                        report.labels().failed(),
                        report.sheets().failed())
                .flatMap(List::stream)
                .toList();
        if (late.isEmpty() && missing.isEmpty() && doubtful.isEmpty())
            return List.of("Late: nothing. Short: nothing. Uncertain: nothing.");
        List<String> lines = new ArrayList<>();
        if (!late.isEmpty()) lines.add("Late: " + named(late) + ".");
        if (!missing.isEmpty()) lines.add("Short: " + named(missing) + ".");
        if (!doubtful.isEmpty()) lines.add("Uncertain: " + named(doubtful) + ".");
        return lines;
    }

    private String name(String product) {
        return shop.findProduct(product).map(Product::name).orElse(product);
    }

    private static String named(List<String> all) {
        String shown = String.join("; ", all.subList(0, Math.min(NAMED, all.size())));
        return all.size() > NAMED ? shown + "; and " + (all.size() - NAMED) + " more" : shown;
    }

    private String firstVan() {
        return first(plan)
                .map(route -> "First van: " + shop.route(route.route()).name() + " at " + figures.time(route.departs())
                        + ", packed by " + figures.time(route.packedBy())
                        + (route.lateMinutes() > 0 ? ", " + spare(route) + "." : " (" + spare(route) + " to spare)."))
                .orElse("No van goes out.");
    }

    /** Time between packed and due, or how late it is. */
    static String spare(PlannedRoute route) {
        if (route.lateMinutes() > 0) return "late " + route.lateMinutes() + " min";
        return Figures.minutes(Duration.between(route.packedBy(), route.packBy()));
    }
}

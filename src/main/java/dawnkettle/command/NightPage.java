package dawnkettle.command;

import dawnkettle.measure.Celsius;
import dawnkettle.measure.Mass;
import dawnkettle.plan.BatchBalance;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.PackOrigins;
import dawnkettle.plan.PlannedBatch;
import dawnkettle.plan.PlannedOperation;
import dawnkettle.plan.PlannedRoute;
import dawnkettle.plan.PlannedSoak;
import dawnkettle.plan.Quality;
import dawnkettle.plan.Shortage;
import dawnkettle.shop.Shop;
import java.math.RoundingMode;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/** A plan as a page of plain text: the verdict first, then soak, kettles, the day as a strip, vans, and what to look at. */
final class NightPage {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEEE d MMMM uuuu", Locale.ENGLISH);
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("EEE HH:mm", Locale.ENGLISH);

    private final DayPlan plan;
    private final Shop shop;
    private final ZoneId zone;
    private final StringBuilder page = new StringBuilder();

    NightPage(DayPlan plan, Shop shop) {
        this.plan = plan;
        this.shop = shop;
        this.zone = plan.heading().zone();
    }

    String text() {
        line(
                "%s: %s, revision %d",
                shop.house().name(),
                DAY.format(plan.heading().productionDate()),
                plan.heading().revision());
        line("%s", verdict());
        line("");
        soak();
        kettles();
        water();
        page.append(new DayStrip(plan).text());
        vans();
        remarks();
        return page.toString();
    }

    private void line(String format, Object... words) {
        page.append(String.format(Locale.ROOT, format, words).stripTrailing()).append('\n');
    }

    private String verdict() {
        int missing = plan.shortages().stream().mapToInt(Shortage::packs).sum();
        int ordered =
                plan.orders().stream().mapToInt(order -> order.line().packs()).sum();
        if (missing == 0 && plan.lateRoutes() == 0)
            return "All well: " + ordered + " packs ordered, all planned; every van in time.";
        return "Look at this: " + ordered + " packs ordered, " + missing + " short; " + plan.lateRoutes()
                + " vans late.";
    }

    private void soak() {
        if (plan.soaks().isEmpty()) return;
        PlannedSoak any = plan.soaks().get(0);
        line("Soak (room %s, %s)", any.room(), any.source());
        for (PlannedSoak soak : plan.soaks())
            line(
                    "  %-4s %4s kg  fill %s with %s  ready %s  not later than %s  for %s",
                    soak.tub(),
                    kilograms(soak.beans()),
                    time(soak.fillAt()),
                    soak.waterTemperature(),
                    time(soak.readyAt()),
                    time(soak.latestGrindAt()),
                    String.join(" ", soak.batches()));
        line("");
    }

    private void kettles() {
        Map<String, int[]> byRecipe = new TreeMap<>();
        Map<String, Mass> packed = new TreeMap<>();
        for (PlannedBatch batch : plan.batches()) {
            byRecipe.computeIfAbsent(batch.recipe(), recipe -> new int[1])[0]++;
            for (PlannedBatch.Filled filled : batch.packs())
                packed.merge(
                        batch.recipe(), shop.product(filled.product()).net().times(filled.packs()), Mass::plus);
        }
        line("Kettles");
        byRecipe.forEach((recipe, count) -> line(
                "  %-28s %2d batches  %5s kg packed",
                shop.recipe(recipe).name(), count[0], kilograms(packed.getOrDefault(recipe, Mass.ZERO))));
        Mass beans = Mass.sum(plan.batches().stream().map(PlannedBatch::beans).toList());
        line("  %s kg of dry beans, %s kg packed in all", kilograms(beans), kilograms(Mass.sum(packed.values())));
        line("  %s", PackOrigins.sentence(plan));
        line("");
    }

    /** What goes through the house besides the product, and whether it adds up. */
    private void water() {
        Celsius tap = shop.climate().tap(plan.heading().productionDate().getMonth());
        BatchBalance day = BatchBalance.NONE;
        List<String> open = new ArrayList<>();
        for (PlannedBatch batch : plan.batches()) {
            if (batch.beans().isZero()) continue;
            BatchBalance one = BatchBalance.of(shop.recipe(batch.recipe()), batch, tap);
            day = day.plus(one);
            if (!one.isClosed() && !open.contains(batch.recipe())) open.add(batch.recipe());
        }
        if (day.in().isEmpty()) return;
        line("Mass and water (reckoned from published shares)");
        for (BatchBalance.Stream stream : day.in()) line("  in   %6s kg  %s", kilograms(stream.mass()), stream.name());
        for (BatchBalance.Stream stream : day.out()) line("  out  %6s kg  %s", kilograms(stream.mass()), stream.name());
        line(
                "  not accounted for: %.1f %% of the water, %.1f %% of the solids%s",
                100 * day.waterUnaccounted(),
                100 * day.solidsUnaccounted(),
                open.isEmpty() ? "" : "; most of it with " + String.join(", ", open) + ": look at its yield");
        line("  heat to the boil: %.0f kWh in the kettles", day.megajoules() / 3.6);
        line("");
    }

    private void vans() {
        line("Vans");
        for (PlannedRoute route : plan.routes()) {
            long slack = Duration.between(route.packedBy(), route.packBy()).toMinutes();
            line(
                    "  %-10s leaves %s  packed %s  %s",
                    route.route(),
                    time(route.departs()),
                    time(route.packedBy()),
                    route.lateMinutes() > 0 ? route.lateMinutes() + " min LATE" : slack(slack));
        }
        plan.quality().ifPresent(this::quality);
        line("");
    }

    private static String slack(long minutes) {
        return minutes < 120 ? minutes + " min to spare" : minutes / 60 + " h to spare";
    }

    private void quality(Quality quality) {
        PlannedOperation first = plan.operations().get(0);
        line(
                "  First step %s, last ends %s; at most %s %% above a proven bound.",
                time(first.start()),
                time(quality.finish()),
                quality.gapPercent().toPlainString());
    }

    private void remarks() {
        if (plan.shortages().isEmpty()
                && plan.warnings().isEmpty()
                && plan.advice().isEmpty()) return;
        line("To look at");
        plan.shortages().forEach(one -> line("  short: %d packs of %s; %s", one.packs(), one.product(), one.reason()));
        plan.warnings().forEach(one -> line("  %s", one));
        plan.advice().forEach(one -> line("  %s", one));
    }

    private String time(Instant instant) {
        return TIME.format(instant.atZone(zone));
    }

    private static String kilograms(Mass mass) {
        return mass.inKilograms(0, RoundingMode.HALF_UP).toPlainString();
    }
}

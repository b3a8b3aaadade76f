package dawnkettle.sheet;

import dawnkettle.cost.Bars;
import dawnkettle.cost.Chart;
import dawnkettle.plan.Allocation;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.PlannedBatch;
import dawnkettle.shop.Shop;
import dawnkettle.stock.MaterialBook;
import dawnkettle.stock.Recall;
import dawnkettle.stock.RecallPage;
import dawnkettle.stock.Web;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;

/** The pages that go to the owner and the inspector: what a week cost, and where a lot went. */
public final class SampleReports {
    private static final LocalDate MONDAY = LocalDate.of(2026, 11, 30);

    private SampleReports() {}

    static Sheet costs(Shop shop, SheetStyle style) {
        List<LocalDate> weeks =
                IntStream.range(0, 8).mapToObj(i -> MONDAY.minusWeeks(7 - i)).toList();
        Chart chart = new Chart(
                "kg", "A kilogram of product", "USD per kg", weeks, List.of(new Chart.Line("cost", figures(8))), "");
        Bars bars = new Bars(
                "margin",
                "Margin by product",
                "USD",
                List.of(
                        new Bars.Bar("Firm tofu, block 300 g", new BigDecimal("41.20")),
                        new Bars.Bar("Soy milk", new BigDecimal("-3.10"))),
                "");
        List<CostPage.Part> parts = List.of(
                new CostPage.Part("", List.of("A kilogram cost 3.42 USD, 0.11 more than the week before.")),
                new CostPage.Part("What moved it", List.of("beans 0.08: the new lot was dearer", "yield 0.03")));
        return new CostPage(shop.house(), style)
                .of(MONDAY, parts, new CostPage.Pictures(List.of(chart), Optional.of(bars)));
    }

    private static List<BigDecimal> figures(int count) {
        return IntStream.range(0, count)
                .mapToObj(i -> new BigDecimal(330 + i * i).movePointLeft(2))
                .toList();
    }

    static Sheet trace(Shop shop, DayPlan plan, SheetStyle style) {
        return TraceSheet.of(recall(shop, plan), style, SampleDay.PLANNED_AT);
    }

    /** The first batch of a plan, called back after all of it has left. */
    public static RecallPage recall(Shop shop, DayPlan plan) {
        List<Web.Batch> batches = new ArrayList<>();
        List<Web.Source> sources = new ArrayList<>();
        List<Web.Feed> feeds = new ArrayList<>();
        for (PlannedBatch batch : plan.batches()) {
            batches.add(new Web.Batch(
                    batch.lot(),
                    batch.recipe(),
                    SampleDay.PLANNED_AT,
                    new Web.Gave(batch.expected(), false, dawnkettle.measure.Mass.grams(0)),
                    Map.of(),
                    ""));
            batch.materialLots()
                    .forEach(lot -> sources.add(new Web.Source(lot, "BEAN", Optional.empty(), batch.lot())));
            batch.feeds()
                    .forEach(feed -> feeds.add(
                            new Web.Feed(batch.lot(), plan.batch(feed.batch()).lot(), feed.mass())));
        }
        List<Web.Handed> handed =
                plan.allocation().stream().map(SampleReports::handed).toList();
        Web web = new Web(batches, sources, feeds, handed);
        return new RecallPage(Recall.ofBatch(web, plan.batches().get(0).lot()), web, new MaterialBook().played(), shop);
    }

    private static Web.Handed handed(Allocation line) {
        return new Web.Handed(
                line.order().toString(),
                line.line(),
                line.customer(),
                line.route(),
                line.deliveryDate(),
                line.lot(),
                line.product(),
                line.packs(),
                true);
    }
}

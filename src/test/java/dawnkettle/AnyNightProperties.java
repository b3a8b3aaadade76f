package dawnkettle;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.book.BookLine;
import dawnkettle.book.ClosedBook;
import dawnkettle.book.OrderLine;
import dawnkettle.book.OrderNumber;
import dawnkettle.export.PlanCheck;
import dawnkettle.export.PlanJson;
import dawnkettle.plan.AnyEvening;
import dawnkettle.plan.AnyShop;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.Evening;
import dawnkettle.plan.Heading.Frozen;
import dawnkettle.plan.PlanDay;
import dawnkettle.plan.PlannedBatch;
import dawnkettle.plan.PlannedRoute;
import dawnkettle.plan.PlannedSoak;
import dawnkettle.shop.Product;
import dawnkettle.shop.Recipe;
import dawnkettle.shop.Shop;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;

/** Nights of shops that never were, held by the checker that knows nothing but the written plan. */
class AnyNightProperties {
    @Property(tries = 200, seed = "261204")
    void every_kilogram_pack_and_minute_of_a_plan_is_accounted_for(
            @ForAll @LongRange(min = 1, max = 1_000_000) long seed,
            @ForAll @IntRange(max = 300) int decodes,
            @ForAll @IntRange(min = 1, max = 60) int lines) {
        Shop shop = AnyShop.of(seed);
        Evening evening = fewer(AnyEvening.of(shop, seed, decodes), lines);
        String plan = PlanJson.write(PlanDay.of(shop, evening), shop);
        assertThat(PlanCheck.broken(plan)).as(() -> words(seed, shop, evening)).isEmpty();
    }

    @Property(tries = 60, seed = "261205")
    void a_revision_after_amendments_is_as_sound_and_changes_no_fact(
            @ForAll @LongRange(min = 1, max = 1_000_000) long seed,
            @ForAll @IntRange(min = 1, max = 36) int hours,
            @ForAll @IntRange(min = 1, max = 60) int lines) {
        Shop shop = AnyShop.of(seed);
        Evening evening = fewer(AnyEvening.of(shop, seed, 0), lines);
        DayPlan before = PlanDay.of(shop, evening);
        Evening later = later(evening, shop, before, evening.now().plusSeconds(3600L * hours), new Random(seed));
        String first = PlanJson.write(before, shop);
        String second = PlanJson.write(PlanDay.of(shop, later), shop);
        assertThat(PlanCheck.revisionBroken(first, second))
                .as(() -> hours + " h later, " + words(seed, shop, later))
                .isEmpty();
        assertThat(PlanCheck.broken(second))
                .as(() -> hours + " h later, " + words(seed, shop, later))
                .isEmpty();
    }

    /** The first lines of the book alone, so that a failure shrinks to a small one. */
    private static Evening fewer(Evening evening, int lines) {
        List<BookLine> kept = evening.book().lines().stream().limit(lines).toList();
        ClosedBook book =
                new ClosedBook(evening.book().productionDate(), evening.book().closedAt(), kept);
        return with(evening, book, evening.committed(), evening.now());
    }

    private static Evening with(Evening evening, ClosedBook book, Evening.Committed committed, Instant now) {
        return new Evening(
                book, evening.outlook(), evening.larder(), evening.soakRoom(), committed, now, evening.budget());
    }

    private static Evening later(Evening evening, Shop shop, DayPlan before, Instant now, Random dice) {
        Evening.Committed committed = new Evening.Committed(Optional.of(before), facts(before, now, dice));
        return with(evening, amended(evening.book(), shop, dice), committed, now);
    }

    private static List<Frozen> facts(DayPlan plan, Instant now, Random dice) {
        List<Frozen> facts = new ArrayList<>();
        for (PlannedSoak soak : plan.soaks())
            if (!soak.fillAt().isAfter(now)) facts.add(new Frozen(Frozen.Kind.TUB_FILLED, soak.tub(), soak.fillAt()));
        for (PlannedBatch batch : plan.batches()) {
            Instant start = plan.operationsOf(batch.id()).get(0).start();
            if (start.isAfter(now)) continue;
            facts.add(new Frozen(Frozen.Kind.BATCH_STARTED, batch.id(), start));
            if (dice.nextBoolean())
                facts.add(new Frozen(Frozen.Kind.LOT_LABELLED, batch.lot().text(), now));
        }
        for (PlannedRoute route : plan.routes())
            if (!route.departs().isAfter(now))
                facts.add(new Frozen(Frozen.Kind.ROUTE_GONE, van(plan, route), route.departs()));
        return facts;
    }

    private static String van(DayPlan plan, PlannedRoute route) {
        return route.route() + " "
                + route.departs().atZone(plan.heading().zone()).toLocalDate();
    }

    /** A line in four is amended, to nothing too; after a line in five comes a late one. */
    private static ClosedBook amended(ClosedBook book, Shop shop, Random dice) {
        List<BookLine> lines = new ArrayList<>();
        for (BookLine line : book.lines()) {
            int packs = dice.nextInt(4) == 0 ? dice.nextInt(line.packs() + 10) : line.packs();
            if (packs > 0) lines.add(with(line, line.order().text(), line.product(), packs));
            Product product = shop.products().get(dice.nextInt(shop.products().size()));
            if (dice.nextInt(5) == 0)
                lines.add(with(line, "LATE-" + line.order() + "-" + line.line(), product.code(), 1 + dice.nextInt(20)));
        }
        return new ClosedBook(book.productionDate(), book.closedAt(), lines);
    }

    private static BookLine with(BookLine line, String order, String product, int packs) {
        return new BookLine(
                new OrderNumber(order),
                line.line(),
                line.customer(),
                line.route(),
                product,
                packs,
                line.deliveryDate(),
                line.makingDate(),
                OrderLine.Source.FILE,
                true);
    }

    /** The case in a few lines, to be understood without running it. */
    private static String words(long seed, Shop shop, Evening evening) {
        StringBuilder words = new StringBuilder("shop and evening of seed " + seed + ", "
                + evening.budget() + ", at " + evening.now() + ", room "
                + evening.soakRoom().temperatures().room() + "\n");
        for (Recipe recipe : shop.recipes())
            words.append(recipe.code())
                    .append(recipe.madeFrom().map(parent -> " from " + parent).orElse(""))
                    .append(" ")
                    .append(recipe.kettle())
                    .append(recipe.steps().stream()
                            .map(step -> " " + step.stage() + "/" + step.minutes())
                            .toList())
                    .append("\n");
        for (BookLine line : evening.book().lines())
            words.append(line.order() + "/" + line.line() + " " + line.packs() + " " + line.product() + " "
                    + line.route() + " " + line.deliveryDate() + "\n");
        return words.toString();
    }
}

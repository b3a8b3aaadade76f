package dawnkettle.plan;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.book.BookLine;
import dawnkettle.book.ClosedBook;
import dawnkettle.book.OrderLine;
import dawnkettle.book.OrderNumber;
import dawnkettle.plan.Heading.Frozen;
import dawnkettle.shop.Shop;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;

class RevisionTest {
    @Property(tries = 100, seed = "20261204")
    void a_revision_changes_nothing_that_has_happened(@ForAll @LongRange(min = 1, max = 100_000) long seed) {
        Shop shop = AnyShop.of(seed);
        Evening evening = AnyEvening.of(shop, seed, 0);
        DayPlan before = PlanDay.of(shop, evening);
        Random dice = new Random(seed);
        Instant now = evening.now().plusSeconds(3600L * (1 + dice.nextInt(30)));
        List<Frozen> facts = facts(before, now, dice);
        Evening later = new Evening(
                amended(evening.book(), shop, dice),
                evening.outlook(),
                evening.larder(),
                evening.soakRoom(),
                new Evening.Committed(Optional.of(before), facts),
                now,
                evening.budget());
        DayPlan after = PlanDay.of(shop, later);
        assertThat(new PlanRules(shop, after).broken()).isEmpty();
        assertThat(after.heading().revision()).isEqualTo(2);
        for (Frozen fact : facts) unchanged(fact, before, after);
    }

    private static void unchanged(Frozen fact, DayPlan before, DayPlan after) {
        switch (fact.kind()) {
            case BATCH_STARTED -> {
                assertThat(after.operationsOf(fact.id())).isEqualTo(before.operationsOf(fact.id()));
                assertThat(after.batch(fact.id()).lot())
                        .isEqualTo(before.batch(fact.id()).lot());
                assertThat(after.batch(fact.id()).beans())
                        .isEqualTo(before.batch(fact.id()).beans());
            }
            case TUB_FILLED -> {
                PlannedSoak was = soak(before, fact.id());
                assertThat(soak(after, fact.id()).fillAt()).isEqualTo(was.fillAt());
                assertThat(soak(after, fact.id()).beans()).isEqualTo(was.beans());
            }
            case LOT_LABELLED -> assertThat(labels(after, fact.id())).isEqualTo(labels(before, fact.id()));
            case ROUTE_GONE, BATCH_LOST -> throw new IllegalStateException("none drawn");
        }
    }

    private static PlannedSoak soak(DayPlan plan, String tub) {
        return plan.soaks().stream()
                .filter(one -> one.tub().equals(tub))
                .findFirst()
                .orElseThrow();
    }

    private static List<PlannedLabel> labels(DayPlan plan, String lot) {
        return plan.labels().stream()
                .filter(label -> label.lot().text().equals(lot))
                .toList();
    }

    private static List<Frozen> facts(DayPlan plan, Instant now, Random dice) {
        List<Frozen> facts = new ArrayList<>();
        for (PlannedSoak soak : plan.soaks())
            if (soak.fillAt().isBefore(now)) facts.add(new Frozen(Frozen.Kind.TUB_FILLED, soak.tub(), soak.fillAt()));
        for (PlannedBatch batch : plan.batches()) {
            Instant start = plan.operationsOf(batch.id()).get(0).start();
            if (!start.isBefore(now)) continue;
            facts.add(new Frozen(Frozen.Kind.BATCH_STARTED, batch.id(), start));
            if (dice.nextBoolean())
                facts.add(new Frozen(Frozen.Kind.LOT_LABELLED, batch.lot().text(), now));
        }
        return facts;
    }

    private static ClosedBook amended(ClosedBook book, Shop shop, Random dice) {
        List<BookLine> lines = new ArrayList<>();
        for (BookLine line : book.lines()) {
            int packs = dice.nextInt(4) == 0 ? dice.nextInt(line.packs() + 10) : line.packs();
            if (packs > 0) lines.add(with(line, line.order().text(), packs));
            if (dice.nextInt(5) == 0)
                lines.add(with(line, "LATE-" + line.order() + "-" + line.line(), 1 + dice.nextInt(20)));
        }
        return new ClosedBook(book.productionDate(), book.closedAt(), lines);
    }

    private static BookLine with(BookLine line, String order, int packs) {
        return new BookLine(
                new OrderNumber(order),
                line.line(),
                line.customer(),
                line.route(),
                line.product(),
                packs,
                line.deliveryDate(),
                line.makingDate(),
                OrderLine.Source.FILE,
                true);
    }
}

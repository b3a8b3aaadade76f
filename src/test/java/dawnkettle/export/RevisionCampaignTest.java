package dawnkettle.export;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.book.BookLine;
import dawnkettle.book.ClosedBook;
import dawnkettle.book.OrderLine;
import dawnkettle.book.OrderNumber;
import dawnkettle.measure.Celsius;
import dawnkettle.plan.AnyEvening;
import dawnkettle.plan.AnyShop;
import dawnkettle.plan.DayFloor.DayHands;
import dawnkettle.plan.DayFloor.DayStation;
import dawnkettle.plan.DayFloor.Span;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.Disruption;
import dawnkettle.plan.Evening;
import dawnkettle.plan.Heading.Frozen;
import dawnkettle.plan.PlanDay;
import dawnkettle.plan.PlannedBatch;
import dawnkettle.plan.SoakLook;
import dawnkettle.plan.SoakLooks;
import dawnkettle.plan.SoakObservation;
import dawnkettle.plan.Temperatures;
import dawnkettle.plan.WhatHappened;
import dawnkettle.shop.Shop;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

/**
 * Day after day of shops that never were, each planned again up to three times at any hour, with tubs filled, batches begun,
 * lots labelled, vans gone, batches lost, hands away, stations down, nights of another warmth and lines changed: by the independent checker no revision
 * changes what has happened or breaks a rule. {@code -Drevisions=1000} is the long form.
 */
class RevisionCampaignTest {
    private static final int REVISIONS = Integer.getInteger("revisions", 60);

    private final List<String> broken = new ArrayList<>();
    private int revisions;
    private int lost;
    private int away;
    private int down;
    private int facts;

    @Test
    void no_revision_changes_what_has_happened() {
        for (long seed = 1; revisions < REVISIONS; seed++) day(seed);
        assertThat(broken)
                .as(
                        "%d revisions with %d facts, %d batches lost, %d times hands away, %d times a station down",
                        revisions, facts, lost, away, down)
                .isEmpty();
        assertThat(lost).as("batches lost").isPositive();
        assertThat(away).as("hands away").isPositive();
        assertThat(down).as("stations down").isPositive();
        System.getLogger(RevisionCampaignTest.class.getName())
                .log(
                        System.Logger.Level.INFO,
                        "{0} revisions with {1} facts, {2} batches lost, {3} times hands away, {4} times a station down: 0 facts"
                                + " changed",
                        revisions,
                        facts,
                        lost,
                        away,
                        down);
    }

    /** Once, batches whose beans were over by then were kept, because a late line would have made a van later. */
    @Test
    void no_batch_is_kept_beyond_its_beans_where_a_late_line_is_left_out_again() {
        day(37);
        assertThat(broken).isEmpty();
    }

    private void day(long seed) {
        Random dice = new Random(seed * 17 + 3);
        Shop shop = AnyShop.of(seed);
        Evening evening = AnyEvening.of(shop, seed, 0);
        DayPlan plan = PlanDay.of(shop, evening);
        Disruption disruption = Disruption.NONE;
        Set<String> labelled = new HashSet<>();
        Instant now = evening.now();
        for (int again = 1 + dice.nextInt(3); again > 0; again--) {
            now = now.plusSeconds(60L * (30 + dice.nextInt(14 * 60)));
            disruption = disruption.and(drawn(plan, now, dice));
            evening = new Evening(
                    amended(evening.book(), seed + "-" + again, dice),
                    evening.outlook(),
                    evening.larder(),
                    otherNight(evening.soakRoom(), dice),
                    new Evening.Committed(Optional.of(plan), happened(plan, now, labelled, dice), disruption),
                    now,
                    evening.budget());
            plan = planned(shop, evening, plan, "shop " + seed + " at " + now);
        }
    }

    /** Warmer or colder than was counted with, and sometimes with looks at the beans. */
    private static Evening.SoakRoom otherNight(Evening.SoakRoom room, Random dice) {
        Celsius then = Celsius.tenths(room.temperatures().room().tenths() + dice.nextInt(81) - 40);
        List<SoakLook> looks = new ArrayList<>();
        for (int i = dice.nextInt(8); i > 0; i--)
            looks.add(new SoakLook(
                    dice.nextInt(4) == 0 ? "black" : "yellow",
                    new SoakObservation(
                            Celsius.degrees(10 + dice.nextInt(15)), 60 * (6 + dice.nextInt(20)), dice.nextBoolean())));
        return new Evening.SoakRoom(
                new Temperatures(then, room.temperatures().tap(), "drawn again"),
                room.call(),
                room.occupied(),
                SoakLooks.of(looks).beliefs());
    }

    private DayPlan planned(Shop shop, Evening evening, DayPlan before, String where) {
        revisions++;
        facts += evening.committed().frozen().size();
        try {
            DayPlan after = PlanDay.of(shop, evening);
            String text = PlanJson.write(after, shop);
            PlanCheck.broken(text).forEach(one -> broken.add(where + ": " + one));
            PlanCheck.revisionBroken(PlanJson.write(before, shop), text)
                    .forEach(one -> broken.add(where + " changed: " + one));
            return after;
        } catch (RuntimeException none) {
            broken.add(where + ": no plan: " + none);
            return before;
        }
    }

    /** By the plan itself, with a lot in two of those begun labelled; and what was labelled stays so. */
    private static List<Frozen> happened(DayPlan plan, Instant now, Set<String> labelled, Random dice) {
        List<Frozen> happened = new ArrayList<>();
        for (Frozen fact : plan.heading().frozen())
            if (fact.kind() == Frozen.Kind.LOT_LABELLED || fact.kind() == Frozen.Kind.BATCH_LOST) happened.add(fact);
        happened.addAll(WhatHappened.by(plan, now));
        for (PlannedBatch batch : plan.batches())
            if (plan.operationsOf(batch.id()).get(0).start().isBefore(now)
                    && dice.nextBoolean()
                    && labelled.add(batch.lot().text()))
                happened.add(new Frozen(Frozen.Kind.LOT_LABELLED, batch.lot().text(), now));
        return happened;
    }

    private Disruption drawn(DayPlan plan, Instant now, Random dice) {
        Disruption drawn = Disruption.NONE;
        if (dice.nextInt(3) == 0 && !plan.batches().isEmpty()) {
            lost++;
            drawn = drawn.and(Disruption.lost(
                    plan.batches().get(dice.nextInt(plan.batches().size())).id(),
                    now.minusSeconds(dice.nextInt(3600))));
        }
        List<DayHands> hands = plan.floor().hands();
        if (dice.nextInt(3) == 0 && !hands.isEmpty()) {
            away++;
            drawn = drawn.and(Disruption.fewer(
                    1 + dice.nextInt(4),
                    part(hands.get(dice.nextInt(hands.size())).span(), dice)));
        }
        DayStation station =
                plan.floor().stations().get(dice.nextInt(plan.floor().stations().size()));
        if (dice.nextInt(3) == 0 && !station.windows().isEmpty()) {
            down++;
            drawn = drawn.and(
                    Disruption.down(station.station(), part(station.windows().get(0), dice)));
        }
        return drawn;
    }

    /** A part of a stretch, in whole minutes; it may lie behind the hour at which it becomes known. */
    private static Span part(Span span, Random dice) {
        int minutes =
                (int) java.time.Duration.between(span.from(), span.until()).toMinutes();
        int from = dice.nextInt(minutes);
        int until = from + 1 + dice.nextInt(minutes - from);
        return new Span(span.from().plusSeconds(60L * from), span.from().plusSeconds(60L * until));
    }

    private static ClosedBook amended(ClosedBook book, String mark, Random dice) {
        List<BookLine> lines = new ArrayList<>();
        for (BookLine line : book.lines()) {
            int packs = dice.nextInt(5) == 0 ? dice.nextInt(line.packs() + 10) : line.packs();
            if (packs > 0) lines.add(with(line, line.order(), packs));
            if (dice.nextInt(8) == 0)
                lines.add(with(line, new OrderNumber("L" + mark + "-" + lines.size()), 1 + dice.nextInt(20)));
        }
        return new ClosedBook(book.productionDate(), book.closedAt(), lines);
    }

    private static BookLine with(BookLine line, OrderNumber order, int packs) {
        return new BookLine(
                order,
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

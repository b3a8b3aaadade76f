package dawnkettle.night;

import dawnkettle.book.OrderBook;
import dawnkettle.book.StandingOrder;
import dawnkettle.plan.DayPlan;
import dawnkettle.shop.Shop;
import dawnkettle.store.Ledger;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** Where the night's steps work: the shop, its ledger, the clock, and the doors to the outside. */
public record Office(Papers papers, Ledger ledger, Clock clock, Edges edges, Story story) {
    /** Lines delivered longer ago than this play no part in any plan. */
    private static final int DAYS_BACK = 7;

    /** What the owner wrote down. */
    public record Papers(Shop shop, List<StandingOrder> standing, NightSettings settings) {
        public Papers {
            standing = List.copyOf(standing);
        }
    }

    /** The same with one thing more that the self-test asks. */
    public Office asking(Probe probe) {
        return new Office(papers, ledger, clock, edges.asking(List.of(probe)), story);
    }

    public Shop shop() {
        return papers.shop();
    }

    Instant now() {
        return clock.instant();
    }

    public Timetable timetable() {
        return new Timetable(
                shop().calendar(),
                shop().house().zone(),
                papers.settings().times(),
                papers.settings().records());
    }

    /** The order book as it stands. */
    public OrderBook book() {
        LocalDate today = now().atZone(shop().house().zone()).toLocalDate();
        return ledger.book(shop(), papers.standing(), today.minusDays(DAYS_BACK));
    }

    /** The plan in force of a production day. */
    public Optional<DayPlan> plan(LocalDate productionDate) {
        return ledger.plans().latest(productionDate).map(kept -> edges.plans().read(kept.json()));
    }

    /** The plan of a day that waits for the clock to be known to be right; no decision yet. */
    Optional<DayPlan> unconfirmedPlan(LocalDate productionDate) {
        return ledger.unconfirmed().plan(productionDate).map(edges.plans()::read);
    }

    /** What a day is made by: its plan in force, or the one that hangs and waits for the clock. */
    public Optional<DayPlan> planOnTheWall(LocalDate productionDate) {
        return plan(productionDate).or(() -> unconfirmedPlan(productionDate));
    }

    void tell(String line) {
        story.tell(now(), line);
    }
}

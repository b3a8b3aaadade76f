package dawnkettle.night;

import dawnkettle.plan.DayPlan;
import dawnkettle.plan.Yields;
import dawnkettle.shop.Shop;
import dawnkettle.stock.Fact;
import dawnkettle.stock.Fact.Yielded;
import dawnkettle.stock.Recorded;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;

/**
 * The yields that a production day is planned with. They are those of the records before the working day ahead of it, so
 * that its soak call, its plan and every revision count alike.
 */
public final class CountedYields {
    private final Office office;

    public CountedYields(Office office) {
        this.office = office;
    }

    Yields of(LocalDate productionDate) {
        Shop shop = office.shop();
        Instant until = shop.calendar()
                .previous(productionDate)
                .atStartOfDay(shop.house().zone())
                .toInstant();
        List<Yielded> records = office.ledger().records().all(Fact.Kind.YIELDED).stream()
                .filter(one -> one.recordedAt().isBefore(until))
                .map(Recorded::fact)
                .map(Yielded.class::cast)
                .toList();
        return Yields.of(shop, records);
    }

    /** The shop as the day is planned with. */
    public Shop shop(LocalDate productionDate) {
        return of(productionDate).in(office.shop());
    }

    /** The plan with a line for each yield that is not the written one. */
    DayPlan told(DayPlan plan) {
        return plan.withWarnings(of(plan.heading().productionDate()).sentences());
    }
}

package dawnkettle.night;

import dawnkettle.cost.MadeDay;
import dawnkettle.cost.Sale;
import dawnkettle.cost.Standard;
import dawnkettle.cost.WeekBook;
import dawnkettle.cost.WeekCosts;
import dawnkettle.cost.YieldCourse;
import dawnkettle.stock.Fact;
import dawnkettle.stock.Fact.Yielded;
import dawnkettle.stock.Recorded;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import java.util.List;
import java.util.Optional;

/** Gathers what the weekly report is made of, from the ledger. */
public final class GatherBook {
    private static final int WEEKS_SHOWN = 26;

    private final Office office;

    public GatherBook(Office office) {
        this.office = office;
    }

    /** The book of the last week before that of {@code day} in which something was made; empty where nothing was. */
    public Optional<WeekBook> before(LocalDate day) {
        LocalDate monday = day.with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
        PastWeeks past =
                new PastWeeks(office.ledger(), office.shop(), office.edges().plans());
        List<MadeDay> days = past.madeDays(monday.minusWeeks(WEEKS_SHOWN), monday);
        if (days.isEmpty()) return Optional.empty();
        List<WeekCosts> weeks = WeekCosts.byWeek(days, office.shop());
        LocalDate first = weeks.get(weeks.size() - 1).monday();
        List<MadeDay> last =
                days.stream().filter(made -> !made.date().isBefore(first)).toList();
        return Optional.of(new WeekBook(
                weeks,
                Optional.of(new Standard(office.shop()).week(last)),
                yields(monday),
                trade(weeks.get(0).monday(), first, last),
                office.shop()));
    }

    private List<YieldCourse> yields(LocalDate untilExclusive) {
        List<Yielded> records = office.ledger().records().all(Fact.Kind.YIELDED).stream()
                .map(Recorded::fact)
                .map(Yielded.class::cast)
                .filter(one -> one.lot().productionDate().isBefore(untilExclusive)
                        && !one.lot().productionDate().isBefore(untilExclusive.minusWeeks(WEEKS_SHOWN)))
                .toList();
        return YieldCourse.of(office.shop().recipes(), records);
    }

    private WeekBook.Trade trade(LocalDate since, LocalDate first, List<MadeDay> days) {
        PastSales past = new PastSales(office.ledger(), office.shop());
        LocalDate until = first.plusWeeks(1);
        List<Sale> all = past.sales(since, until);
        List<Sale> week =
                all.stream().filter(sale -> !sale.date().isBefore(first)).toList();
        return new WeekBook.Trade(week, past.containers(all, since, until), since, days, past.prices());
    }
}

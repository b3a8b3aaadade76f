package dawnkettle.night;

import dawnkettle.book.BookLine;
import dawnkettle.book.ClosedBook;
import dawnkettle.book.OrderNumber;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.Heading;
import dawnkettle.plan.PlannedOrder;
import dawnkettle.store.UnconfirmedRows;
import dawnkettle.trouble.DiskAway;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.temporal.ChronoUnit;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Once the clock is right: what hangs with a date that was not confirmed becomes the day's decision where its date holds, so
 * that nobody who worked by it worked by nothing; where it does not hold it goes, and that is told.
 */
final class TakeUnconfirmed {
    private final Office office;
    private final PlanTomorrow planning;

    TakeUnconfirmed(Office office, PlanTomorrow planning) {
        this.office = office;
        this.planning = planning;
    }

    void run() {
        for (LocalDate day : rows().callDays()) call(day);
        for (LocalDate day : rows().planDays()) plan(day);
    }

    /** What was taken of today or later, by the plan that is in force: it may be out of date by as much as the clock was. */
    Optional<LocalDate> takenNow() {
        LocalDate today = today();
        return today.datesUntil(office.shop().calendar().next(today).plusDays(1))
                .filter(day -> rows().isPlanTaken(day))
                .findFirst();
    }

    private void call(LocalDate day) {
        boolean isOurs = office.ledger().soaks().find(day).isEmpty()
                && holds(day, office.timetable().soakCall(day));
        office.ledger().inTransaction(() -> {
            if (isOurs) office.ledger().soaks().commit(rows().calls().find(day).orElseThrow());
            rows().dropCall(day);
        });
        tell("the soak call", day, isOurs);
    }

    private void plan(LocalDate day) {
        boolean isOurs =
                office.plan(day).isEmpty() && holds(day, office.timetable().close(day)) && isTaken(day);
        if (!isOurs) rows().dropPlan(day);
        tell("the plan", day, isOurs);
    }

    private void tell(String what, LocalDate day, boolean isOurs) {
        office.tell(what + " of " + day + " that was not confirmed "
                + (isOurs ? "holds: its date is right" : "does not hold and is dropped: the clock was wrong"));
    }

    /** It was due by the clock that is right, and its day is not over. */
    private boolean holds(LocalDate day, Instant due) {
        Instant over = office.timetable().at(day.plusDays(1), LocalTime.MIDNIGHT);
        return office.shop().calendar().isWorkDay(day)
                && !office.now().isBefore(due)
                && office.now().isBefore(over);
    }

    /** The lines that it plans are closed with it; what came since is late. Where it does not add up it is planned anew. */
    private boolean isTaken(LocalDate day) {
        try {
            DayPlan plan = dated(office.unconfirmedPlan(day).orElseThrow());
            office.ledger().inTransaction(() -> {
                office.ledger().closes().close(book(plan));
                planning.keep(plan);
                rows().planTaken(day, office.now());
            });
            return true;
        } catch (DiskAway gone) {
            throw gone;
        } catch (RuntimeException mistake) {
            office.tell("the plan of " + day + " that was not confirmed can't be taken: " + mistake.getMessage());
            return false;
        }
    }

    /** What was recorded since counts as recorded since, however wrong the clock was. */
    private DayPlan dated(DayPlan plan) {
        Heading was = plan.heading();
        Instant now = office.now().truncatedTo(ChronoUnit.SECONDS);
        return plan.withHeading(new Heading(
                was.productionDate(),
                was.revision(),
                was.revisionOf(),
                was.computedAt().isBefore(now) ? was.computedAt() : now,
                was.zone(),
                was.seed(),
                was.mode(),
                was.frozen()));
    }

    private ClosedBook book(DayPlan plan) {
        LocalDate day = plan.heading().productionDate();
        Map<String, Integer> packs = new HashMap<>();
        for (PlannedOrder order : plan.orders())
            packs.put(ref(order.line()), order.line().packs());
        List<BookLine> lines = office.book().bookFor(day).stream()
                .filter(line -> packs.containsKey(ref(line)))
                .map(line -> with(line, packs.get(ref(line))))
                .toList();
        return new ClosedBook(day, office.now().truncatedTo(ChronoUnit.MILLIS), lines);
    }

    private static String ref(BookLine line) {
        OrderNumber order = line.order();
        return order + " " + line.line();
    }

    private static BookLine with(BookLine line, int packs) {
        return new BookLine(
                line.order(),
                line.line(),
                line.customer(),
                line.route(),
                line.product(),
                packs,
                line.deliveryDate(),
                line.makingDate(),
                line.source(),
                false);
    }

    private LocalDate today() {
        return office.now().atZone(office.shop().house().zone()).toLocalDate();
    }

    private UnconfirmedRows rows() {
        return office.ledger().unconfirmed();
    }
}

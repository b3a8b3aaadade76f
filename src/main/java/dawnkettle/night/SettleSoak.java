package dawnkettle.night;

import dawnkettle.book.BookLine;
import dawnkettle.book.ClosedBook;
import dawnkettle.measure.Mass;
import dawnkettle.plan.CallAllowances;
import dawnkettle.plan.Evening;
import dawnkettle.plan.SoakCall;
import dawnkettle.sheet.SoakSheet;
import dawnkettle.trouble.DiskAway;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.List;

/** The first decision: which beans are put to soak before the book closes. */
final class SettleSoak implements Work {
    private static final String SURE_PART =
            "The planner did not come to an end: this is the part that is ordered for sure, without what usually still comes.";

    private final Office office;
    private final Evenings evenings;
    private final SheetEffects sheets;
    private final BoxedPlanner planner;

    SettleSoak(Office office, SheetEffects sheets, BoxedPlanner planner) {
        this.office = office;
        this.evenings = new Evenings(office);
        this.sheets = sheets;
        this.planner = planner;
    }

    @Override
    public String run(LocalDate productionDate) {
        return print(office.ledger()
                .soaks()
                .find(productionDate)
                .orElseGet(() -> office.ledger().soaks().commit(settle(productionDate))));
    }

    /** While the clock is in doubt: the tubs are called, on a sheet that says so, and nothing is settled for good. */
    String callUnconfirmed(LocalDate productionDate) {
        var calls = office.ledger().unconfirmed().calls();
        return print(office.ledger()
                .soaks()
                .find(productionDate)
                .or(() -> calls.find(productionDate))
                .orElseGet(() -> calls.commit(settle(productionDate))));
    }

    /** Whether the day's call hangs with a date that was not confirmed. */
    static boolean hangsInDoubt(Office office, LocalDate day) {
        return office.ledger().soaks().find(day).isPresent()
                && !SheetDate.named(office.ledger().effects().of(day), set(day)).isEmpty();
    }

    private static String set(LocalDate day) {
        return "call " + day;
    }

    private String print(SoakCall call) {
        if (call.isEmpty()) return "nothing needs to soak before the close";
        LocalDate day = call.productionDate();
        SheetDate date = SheetDate.of(office, day);
        sheets.print(
                date.set(set(day)),
                day,
                List.of(SoakSheet.of(
                        call, office.shop(), date.style(office.edges().paper().style()))));
        Mass beans =
                Mass.sum(call.groups().stream().map(SoakCall.GroupMass::beans).toList());
        return beans.inKilograms(0, RoundingMode.HALF_UP) + " kg of beans go to soak before the close, in "
                + call.tubs().size() + (call.tubs().size() == 1 ? " tub" : " tubs")
                + (LastCall.isOne(call) || call.notes().contains(SURE_PART)
                        ? "; " + call.notes().get(0)
                        : "");
    }

    /** With the search; then what is sure, without it; then as a week ago, which asks no planner. */
    private SoakCall settle(LocalDate productionDate) {
        try {
            return call(productionDate, office.papers().settings().search().decodes() / 4);
        } catch (DiskAway gone) {
            throw gone;
        } catch (RuntimeException mistake) {
            office.tell("the soak call with search did not come out (" + mistake.getMessage() + ")");
        }
        try {
            SoakCall sure = call(productionDate, 0);
            return new LastCall(office).noted(sure, SURE_PART);
        } catch (DiskAway gone) {
            throw gone;
        } catch (RuntimeException mistake) {
            office.tell("the soak call without search did not come out either (" + mistake.getMessage() + ")");
            return new LastCall(office).of(productionDate).orElseThrow(() -> mistake);
        }
    }

    private SoakCall call(LocalDate productionDate, long decodes) {
        List<BookLine> lines = office.book().bookFor(productionDate).stream()
                .filter(line -> line.packs() > 0)
                .toList();
        ClosedBook known = new ClosedBook(productionDate, office.now(), lines);
        List<Evening.Allowance> allowances = decodes == 0 ? List.of() : allowances(productionDate);
        return planner.call(
                new CountedYields(office).shop(productionDate),
                evenings.of(productionDate, known, decodes).withAllowances(allowances),
                office.timetable().close(productionDate));
    }

    private List<Evening.Allowance> allowances(LocalDate productionDate) {
        return CallAllowances.of(office.shop(), productionDate, new HistoryAfterCall(office).packs(productionDate));
    }
}

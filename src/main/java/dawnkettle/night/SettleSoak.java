package dawnkettle.night;

import dawnkettle.book.BookLine;
import dawnkettle.book.ClosedBook;
import dawnkettle.measure.Mass;
import dawnkettle.plan.CallAllowances;
import dawnkettle.plan.Evening;
import dawnkettle.plan.PlanDay;
import dawnkettle.plan.SoakCall;
import dawnkettle.sheet.SoakSheet;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.List;

/** The first decision: which beans are put to soak before the book closes. */
final class SettleSoak implements Work {
    private final Office office;
    private final Evenings evenings;
    private final SheetEffects sheets;

    SettleSoak(Office office, SheetEffects sheets) {
        this.office = office;
        this.evenings = new Evenings(office);
        this.sheets = sheets;
    }

    @Override
    public String run(LocalDate productionDate) {
        SoakCall call = office.ledger().soaks().find(productionDate).orElseGet(() -> settle(productionDate));
        if (call.isEmpty()) return "nothing needs to soak before the close";
        sheets.print(
                "call " + productionDate,
                productionDate,
                List.of(SoakSheet.of(call, office.shop(), office.edges().paper().style())));
        Mass beans =
                Mass.sum(call.groups().stream().map(SoakCall.GroupMass::beans).toList());
        return beans.inKilograms(0, RoundingMode.HALF_UP) + " kg of beans go to soak before the close, in "
                + call.tubs().size() + " tubs";
    }

    private SoakCall settle(LocalDate productionDate) {
        List<BookLine> lines = office.book().bookFor(productionDate).stream()
                .filter(line -> line.packs() > 0)
                .toList();
        ClosedBook known = new ClosedBook(productionDate, office.now(), lines);
        long decodes = office.papers().settings().search().decodes() / 4;
        SoakCall call = PlanDay.soakCall(
                new CountedYields(office).shop(productionDate),
                evenings.of(productionDate, known, decodes).withAllowances(allowances(productionDate)),
                office.timetable().close(productionDate));
        return office.ledger().soaks().commit(call);
    }

    private List<Evening.Allowance> allowances(LocalDate productionDate) {
        return CallAllowances.of(office.shop(), productionDate, new HistoryAfterCall(office).packs(productionDate));
    }
}

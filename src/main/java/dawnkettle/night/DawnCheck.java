package dawnkettle.night;

import dawnkettle.book.BookLine;
import dawnkettle.book.ClosedBook;
import dawnkettle.plan.DayPlan;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** Before the first grind: what the night did to the soak, and what came after the close; a revision only if something changes. */
final class DawnCheck implements Work {
    private final Office office;
    private final PlanTomorrow planning;
    private final PrintSheets printing;

    DawnCheck(Office office, PlanTomorrow planning, PrintSheets printing) {
        this.office = office;
        this.planning = planning;
        this.printing = printing;
    }

    @Override
    public String run(LocalDate productionDate) {
        DayPlan before = office.plan(productionDate).orElseThrow(() -> new NoPlan(productionDate));
        String left = printLeft(before);
        List<BookLine> lines = office.book().bookFor(productionDate).stream()
                .filter(line -> line.packs() > 0)
                .toList();
        DayPlan after = planning.compute(productionDate, new ClosedBook(productionDate, office.now(), lines));
        if (isAlike(before, after)) return left + "nothing has changed since the plan";
        planning.keep(after);
        String sheets = printing.print(after, Optional.of(before));
        return "revision " + after.heading().revision() + ": " + PlanTomorrow.sentence(after) + "; " + sheets
                + " printed again";
    }

    /** A revision that was kept, and whose sheets did not all come out before the power went, hangs nowhere yet. */
    private String printLeft(DayPlan plan) {
        if (plan.heading().revisionOf().isEmpty()) return "";
        Optional<DayPlan> replaced = office.ledger()
                .plans()
                .find(
                        plan.heading().productionDate(),
                        plan.heading().revisionOf().getAsInt())
                .map(kept -> office.edges().plans().read(kept.json()));
        if (replaced.isEmpty()) return "";
        printing.print(plan, replaced);
        return "revision " + plan.heading().revision() + " hangs; ";
    }

    /** Whether nothing that anybody works by differs. */
    private static boolean isAlike(DayPlan before, DayPlan after) {
        return before.orders().equals(after.orders())
                && before.batches().equals(after.batches())
                && before.operations().equals(after.operations())
                && before.allocation().equals(after.allocation())
                && before.soaks().equals(after.soaks());
    }
}

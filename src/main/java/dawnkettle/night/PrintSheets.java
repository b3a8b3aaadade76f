package dawnkettle.night;

import dawnkettle.plan.DayPlan;
import dawnkettle.plan.Heading;
import dawnkettle.sheet.Sheet;
import dawnkettle.sheet.SheetSet;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Prints the sheets of the plan in force; of a revision only those that changed. */
final class PrintSheets implements Work {
    private final Office office;
    private final SheetEffects effects;

    PrintSheets(Office office, SheetEffects effects) {
        this.office = office;
        this.effects = effects;
    }

    @Override
    public String run(LocalDate productionDate) {
        DayPlan plan = office.plan(productionDate)
                .orElseThrow(() -> new IllegalStateException("there is no plan of " + productionDate));
        return print(plan, Optional.empty());
    }

    String print(DayPlan plan, Optional<DayPlan> before) {
        List<Sheet> sheets = sheets(plan);
        List<Sheet> changed = before.map(old -> changed(plan, old, sheets)).orElse(sheets);
        Heading heading = plan.heading();
        effects.print(heading.productionDate() + " revision " + heading.revision(), heading.productionDate(), changed);
        return changed.size() + " sheets";
    }

    /** Sheets that differ in more than the heading that every sheet of a revision carries. */
    private List<Sheet> changed(DayPlan plan, DayPlan before, List<Sheet> sheets) {
        Map<String, String> old = new HashMap<>();
        sheets(before).forEach(sheet -> old.put(sheet.name(), sheet.asText()));
        Map<String, String> alike = new HashMap<>();
        sheets(plan.withHeading(before.heading())).forEach(sheet -> alike.put(sheet.name(), sheet.asText()));
        return sheets.stream()
                .filter(sheet -> !alike.get(sheet.name()).equals(old.get(sheet.name())))
                .toList();
    }

    List<Sheet> sheets(DayPlan plan) {
        return SheetSet.of(plan, office.shop(), office.edges().paper().style());
    }
}

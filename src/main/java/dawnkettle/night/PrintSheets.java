package dawnkettle.night;

import dawnkettle.plan.DayPlan;
import dawnkettle.plan.Heading;
import dawnkettle.sheet.Printer;
import dawnkettle.sheet.Sheet;
import dawnkettle.sheet.SheetSet;
import dawnkettle.sheet.SheetStyle;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.stream.Stream;

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
        List<Sheet> sheets = new ArrayList<>(changed(plan, before, this::planned));
        List<Sheet> records = changed(plan, before, this::records);
        keep(plan, records);
        together(records).ifPresent(sheets::add);
        Heading heading = plan.heading();
        effects.print(heading.productionDate() + " revision " + heading.revision(), heading.productionDate(), sheets);
        return sheets.size() + " sheets";
    }

    /** The records of the batches are kept whether they come out on paper or not. */
    private void keep(DayPlan plan, List<Sheet> records) {
        Printer folder = office.edges().paper().records().apply(plan.heading().productionDate());
        int revision = plan.heading().revision();
        records.forEach(record -> folder.print(record.named(record.name() + "-r" + revision)));
    }

    private static Optional<Sheet> together(List<Sheet> records) {
        return records.isEmpty() ? Optional.empty() : Optional.of(Sheet.together("records", records));
    }

    /** Sheets that differ in more than the heading that every sheet of a revision carries. */
    private List<Sheet> changed(DayPlan plan, Optional<DayPlan> before, Function<DayPlan, List<Sheet>> sheets) {
        if (before.isEmpty()) return sheets.apply(plan);
        Map<String, String> old = new HashMap<>();
        sheets.apply(before.get()).forEach(sheet -> old.put(sheet.name(), sheet.asText()));
        Map<String, String> alike = new HashMap<>();
        sheets.apply(plan.withHeading(before.get().heading()))
                .forEach(sheet -> alike.put(sheet.name(), sheet.asText()));
        return sheets.apply(plan).stream()
                .filter(sheet -> !alike.get(sheet.name()).equals(old.get(sheet.name())))
                .toList();
    }

    /** All that is printed of a plan. */
    List<Sheet> sheets(DayPlan plan) {
        return Stream.concat(planned(plan).stream(), together(records(plan)).stream())
                .toList();
    }

    private List<Sheet> planned(DayPlan plan) {
        return replaced(plan)
                .map(old -> SheetSet.of(plan, old, office.shop(), style()))
                .orElseGet(() -> SheetSet.of(plan, office.shop(), style()));
    }

    /** The plan that this one replaces, whose sheets hang on the wall. */
    private Optional<DayPlan> replaced(DayPlan plan) {
        OptionalInt revision = plan.heading().revisionOf();
        if (revision.isEmpty()) return Optional.empty();
        return office.ledger()
                .plans()
                .find(plan.heading().productionDate(), revision.getAsInt())
                .map(kept -> office.edges().plans().read(kept.json()));
    }

    private List<Sheet> records(DayPlan plan) {
        return SheetSet.records(plan, office.shop(), style());
    }

    private SheetStyle style() {
        return office.edges().paper().style();
    }
}

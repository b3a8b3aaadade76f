package dawnkettle.night;

import dawnkettle.book.BookLine;
import dawnkettle.book.Conflict;
import dawnkettle.cost.PurchaseAdvice;
import dawnkettle.mail.NightReport;
import dawnkettle.plan.DayPlan;
import dawnkettle.stock.Fact;
import dawnkettle.stock.LotCode;
import dawnkettle.stock.Recorded;
import dawnkettle.store.Effect;
import dawnkettle.store.StepKey;
import dawnkettle.store.StepRow;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/** What the ledger knows of a night, gathered for the morning summary. */
final class GatherReport {
    private final Office office;

    GatherReport(Office office) {
        this.office = office;
    }

    NightReport of(LocalDate productionDate) {
        List<BookLine> lines = office.book().bookFor(productionDate);
        List<Effect> effects = office.ledger().effects().of(productionDate).stream()
                .filter(effect -> !ByHand.is(effect.key()))
                .filter(effect -> !SheetDate.isInDoubt(effect) || effect.state() == Effect.State.DONE)
                .toList();
        return new NightReport(
                orders(lines, new GatherMails(office, productionDate)),
                new NightReport.Sheets(
                        names(effects, Effect.Kind.SHEET, Effect.State.DONE), notes(effects, Effect.Kind.SHEET)),
                labels(productionDate, effects),
                new NightReport.Notes(soakNotes(productionDate), runningLow(productionDate), questions(productionDate)),
                yields(office.shop().calendar().previous(productionDate)));
    }

    private NightReport.Orders orders(List<BookLine> lines, GatherMails mails) {
        int orders = (int) lines.stream().map(BookLine::order).distinct().count();
        List<String> late = lines.stream()
                .filter(BookLine::late)
                .map(line ->
                        "order " + line.order() + " line " + line.line() + ": " + line.packs() + " " + line.product())
                .toList();
        List<String> refused = Stream.concat(
                        Alarms.leftOut(office).stream().map(OrderSource.LeftOut::said), mails.doubtful().stream())
                .toList();
        return new NightReport.Orders(orders, lines.size(), refused, mails.strange(), late);
    }

    private static List<String> names(List<Effect> effects, Effect.Kind kind, Effect.State state) {
        return effects.stream()
                .filter(effect -> effect.kind() == kind && effect.state() == state)
                .map(effect -> effect.key().substring(effect.key().lastIndexOf(' ') + 1))
                .distinct()
                .toList();
    }

    private static List<String> notes(List<Effect> effects, Effect.Kind kind) {
        return effects.stream()
                .filter(effect -> effect.kind() == kind
                        && effect.state() != Effect.State.DONE
                        && effect.state() != Effect.State.AMBIGUOUS)
                .map(effect -> effect.key() + ": " + effect.note())
                .toList();
    }

    private NightReport.Labels labels(LocalDate productionDate, List<Effect> effects) {
        List<String> uncertain =
                new BrokenRuns(office).open().stream().map(BrokenRun::said).toList();
        return new NightReport.Labels(printed(productionDate), uncertain, notes(effects, Effect.Kind.LABEL));
    }

    private int printed(LocalDate productionDate) {
        return office.plan(productionDate).map(DayPlan::labels).orElse(List.of()).stream()
                .mapToInt(label -> office.ledger().labels().confirmedCount(label.lot(), label.product()))
                .sum();
    }

    private List<String> soakNotes(LocalDate productionDate) {
        return office.ledger()
                .soaks()
                .find(productionDate)
                .map(call -> call.notes())
                .orElse(List.of());
    }

    /** Steps that were skipped or failed: the owner should know. */
    private List<String> steps(LocalDate productionDate) {
        return office.ledger().steps().of(productionDate).stream()
                .filter(step -> step.state() == StepRow.State.SKIPPED || step.state() == StepRow.State.FAILED)
                .flatMap(step -> Stream.of(step.key().step() + ": " + step.note()))
                .toList();
    }

    private List<String> questions(LocalDate productionDate) {
        List<String> questions = new ArrayList<>(steps(productionDate));
        office.ledger()
                .steps()
                .find(StepKey.of(Step.SHEETS.word(), productionDate))
                .filter(step -> step.note().endsWith(PrintSheets.WITHOUT_CARD))
                .ifPresent(step ->
                        questions.add("the if... card did not come out in time: there is none on the wall today"));
        questions.addAll(new GatherMails(office, productionDate).asked());
        office.plan(productionDate).ifPresent(plan -> questions.addAll(new Gate(office).said(plan)));
        for (Conflict conflict : office.book().conflicts())
            if (!conflict.first().deliveryDate().isBefore(productionDate))
                questions.add("order " + conflict.first().order() + " line "
                        + conflict.first().line() + " came twice with different content ("
                        + conflict.first().packs()
                        + " and " + conflict.other().packs() + " packs); the first stands. Which one is meant?");
        return questions;
    }

    /** What should be ordered before the next summary comes; of a material that was never booked in nobody knows. */
    private List<String> runningLow(LocalDate productionDate) {
        LocalDate next = office.shop().calendar().next(productionDate);
        return new StoreBook(office, productionDate)
                .advice().stream()
                        .filter(line -> line.isDueBy(next))
                        .map(PurchaseAdvice.Line::said)
                        .toList();
    }

    /** What each recipe gave on a day, as it was weighed; of a batch's records the last one counts. */
    private List<NightReport.Yielded> yields(LocalDate day) {
        Instant from = day.atStartOfDay(office.shop().house().zone()).toInstant();
        Map<LotCode, Fact.Yielded> batches = new TreeMap<>();
        for (Recorded recorded : office.ledger().records().of(Fact.Kind.YIELDED, from, from.plus(Duration.ofDays(2))))
            if (recorded.fact() instanceof Fact.Yielded yielded
                    && yielded.lot().productionDate().equals(day)) batches.put(yielded.lot(), yielded);
        Map<String, NightReport.Yielded> byRecipe = new TreeMap<>();
        for (Fact.Yielded yielded : batches.values())
            byRecipe.merge(
                    yielded.recipe(),
                    new NightReport.Yielded(day, yielded.recipe(), yielded.input(), yielded.product()),
                    (a, b) -> new NightReport.Yielded(
                            day,
                            a.recipe(),
                            a.ground().plus(b.ground()),
                            a.product().plus(b.product())));
        return List.copyOf(byRecipe.values());
    }
}

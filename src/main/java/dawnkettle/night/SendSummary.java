package dawnkettle.night;

import dawnkettle.book.BookLine;
import dawnkettle.mail.Mail;
import dawnkettle.mail.MorningSummary;
import dawnkettle.mail.NightReport;
import dawnkettle.plan.DayPlan;
import dawnkettle.store.Effect;
import dawnkettle.store.StepRow;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;

/** The mail that the owner reads first. */
final class SendSummary implements Work {
    private final Office office;
    private final Letters letters;

    SendSummary(Office office, Letters letters) {
        this.office = office;
        this.letters = letters;
    }

    @Override
    public String run(LocalDate productionDate) {
        DayPlan plan = office.plan(productionDate)
                .orElseThrow(() -> new IllegalStateException("there is no plan of " + productionDate));
        Mail mail = MorningSummary.of(plan, office.shop(), report(productionDate))
                .addressedTo(office.papers().settings().summaryTo());
        letters.send(mail);
        return mail.subject();
    }

    private NightReport report(LocalDate productionDate) {
        List<BookLine> lines = office.book().bookFor(productionDate);
        List<Effect> effects = office.ledger().effects().of(productionDate);
        return new NightReport(
                orders(lines),
                new NightReport.Sheets(
                        names(effects, Effect.Kind.SHEET, Effect.State.DONE), notes(effects, Effect.Kind.SHEET)),
                labels(effects),
                new NightReport.Notes(soakNotes(productionDate), List.of(), steps(productionDate)),
                List.of());
    }

    private static NightReport.Orders orders(List<BookLine> lines) {
        int orders = (int) lines.stream().map(BookLine::order).distinct().count();
        List<String> late = lines.stream()
                .filter(BookLine::late)
                .map(line ->
                        "order " + line.order() + " line " + line.line() + ": " + line.packs() + " " + line.product())
                .toList();
        return new NightReport.Orders(orders, lines.size(), List.of(), late);
    }

    private static List<String> names(List<Effect> effects, Effect.Kind kind, Effect.State state) {
        return effects.stream()
                .filter(effect -> effect.kind() == kind && effect.state() == state)
                .map(effect -> effect.key().substring(effect.key().lastIndexOf(' ') + 1))
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

    private NightReport.Labels labels(List<Effect> effects) {
        List<String> uncertain = office.ledger().labels().unresolved().stream()
                .map(group -> "lot " + group.lot() + " " + group.product() + ": look at labels " + group.from() + " to "
                        + group.to())
                .toList();
        int printed = effects.stream()
                .filter(effect -> effect.kind() == Effect.Kind.LABEL && effect.state() == Effect.State.DONE)
                .mapToInt(effect -> Integer.parseInt(effect.note().split(" ")[0]))
                .sum();
        return new NightReport.Labels(printed, uncertain, notes(effects, Effect.Kind.LABEL));
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
}

package dawnkettle.mail;

import dawnkettle.cost.Okara;
import dawnkettle.mail.Letter.Lines;
import dawnkettle.mail.Letter.Section;
import dawnkettle.measure.Mass;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.PlannedBatch;
import dawnkettle.plan.PlannedOperation;
import dawnkettle.shop.Shop;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** The few lines that the farmer gets who fetches the okara: how much, when, how to keep it, until when. */
public final class FarmerNote {
    /** At most 12 h at 30 °C (Azanza and Gascon 2015), counted from the first okara of the day. */
    private static final Duration KEEPS = Duration.ofHours(12);

    private FarmerNote() {}

    /** Nothing where no beans are ground that day. */
    public static Optional<Mail> of(DayPlan plan, Shop shop) {
        Mass beans = Mass.sum(plan.batches().stream().map(PlannedBatch::beans).toList());
        List<Instant> ready = plan.operations().stream()
                .filter(operation -> operation.stage().contains("filter"))
                .map(PlannedOperation::end)
                .sorted()
                .toList();
        if (beans.isZero() || ready.isEmpty()) return Optional.empty();
        var day = plan.heading().productionDate();
        Figures figures = new Figures(shop.house(), day);
        String last = figures.time(ready.get(ready.size() - 1));
        String much = figures.mass(Okara.expected(beans));
        String use = figures.time(ready.get(0).plus(KEEPS));
        Letter letter = new Letter(
                shop.house().name() + ", okara of " + Figures.day(day),
                true,
                List.of("About " + much + " of okara, ready to be fetched at " + last + "."),
                List.of(new Section(
                        "How to keep it",
                        Lines.of(
                                "Keep it cool and covered, at or below 5 °C (41 °F).",
                                "Not kept cool, feed it by " + use + "; when it smells sour, throw it away.",
                                "It is soy, and wet: about four fifths water."))),
                List.of("A reckoned figure: " + Okara.BASIS + "."));
        String id = Mail.idOf(day, "okara", plan.heading().revision());
        Mail.Body body = new Mail.Body(LetterText.of(letter), LetterHtml.of(letter), List.of());
        return Optional.of(
                new Mail(id, List.of(), Figures.day(day) + ": " + much + " of okara, ready " + last, body, List.of()));
    }
}

package dawnkettle.night;

import dawnkettle.mail.Answer;
import dawnkettle.plan.DayPlan;
import dawnkettle.trouble.BadFile;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** Does what the owner or somebody of the crew wrote, line by line, each as the command would. */
final class ObeyLines {
    private final Office office;
    private final String origin;
    private final Optional<Set<String>> permitted;
    private final List<String> done = new ArrayList<>();
    private final List<String> refused = new ArrayList<>();

    /** @param permitted which words may be written; empty for all */
    ObeyLines(Office office, String origin, Optional<Set<String>> permitted) {
        this.office = office;
        this.origin = origin;
        this.permitted = permitted;
    }

    Outcome obey(String body) {
        TypedLines.Split split = TypedLines.of(body);
        for (List<String> words : split.typed()) one(words);
        if (split.typed().isEmpty()) refused.add("No line of it begins with a word that the clerk knows.");
        List<Answer.Part> parts = List.of(
                new Answer.Part("Done", done),
                new Answer.Part("Not done", refused),
                new Answer.Part("Passed over", split.passedOver()));
        return new Outcome(done.size(), refused.size(), parts);
    }

    private void one(List<String> words) {
        String line = String.join(" ", words);
        String first = words.get(0).toLowerCase(Locale.ROOT);
        List<String> rest = words.subList(1, words.size());
        boolean bare = !TypedLines.DOORS.contains(first);
        String kind = bare ? first : first.equals("record") && !rest.isEmpty() ? rest.get(0) : first;
        if (permitted.filter(some -> !mayWrite(some, kind)).isPresent()) {
            refused.add("“" + line + "”: this address may not write \"" + kind + "\"; it may write "
                    + String.join(", ", permitted.get().stream().sorted().toList()) + ".");
            return;
        }
        try {
            done.add("“" + line + "”: " + done(first, bare ? words : rest));
        } catch (BadFile bad) {
            refused.add("“" + line + "”: " + bad.getMessage().replace("\n", " · "));
        }
    }

    private static boolean mayWrite(Set<String> words, String kind) {
        return words.contains(
                switch (kind.toLowerCase(Locale.ROOT)) {
                    case "cooked" -> "cook";
                    case "away" -> "hands";
                    case "up" -> "down";
                    default -> kind.toLowerCase(Locale.ROOT);
                });
    }

    private String done(String first, List<String> words) {
        TakeWords take = TakeWords.mailed(office, origin + " line " + (done.size() + refused.size() + 1));
        return switch (first) {
            case "order" -> take.order(words);
            case "amend" -> take.amend(words);
            case "receive" -> take.receive(words);
            case "cancel" -> isOrder(words) ? take.cancelOrder(words.subList(1, words.size())) : recorded(take, words);
            default -> recorded(take, words);
        };
    }

    /** A record is cancelled by its number, an order by one that is not a number alone. */
    private static boolean isOrder(List<String> words) {
        return words.size() > 1 && !words.get(1).matches("[0-9]+");
    }

    /** What keeps hands, a station or a batch from the rest of the day has it planned again. */
    private String recorded(TakeWords take, List<String> words) {
        List<Integer> before = new ReplanLosses(office).due();
        String told = take.record(asTyped(words), Optional.empty()).replace("\n", " ");
        boolean plansAgain = !new ReplanLosses(office).due().equals(before);
        return told
                + (plansAgain ? " What has not begun is planned again now; the sheets that change are printed." : "");
    }

    /** What a thumb leaves out: "cook" for cooked, "hands" for away, a batch of today's plan for its lot, why a batch is lost. */
    private List<String> asTyped(List<String> words) {
        List<String> typed = new ArrayList<>(words);
        if (!typed.isEmpty() && typed.get(0).equalsIgnoreCase("cook")) typed.set(0, "cooked");
        if (!typed.isEmpty() && typed.get(0).equalsIgnoreCase("hands")) typed.set(0, "away");
        if (typed.size() > 1) typed.set(1, lot(typed.get(1)));
        boolean lost = typed.size() == 2 && typed.get(0).equalsIgnoreCase("lost");
        if (lost) typed.add("told by mail");
        return typed;
    }

    private String lot(String word) {
        if (!word.matches("(?i)B[0-9]{1,3}")) return word;
        return current()
                .flatMap(plan -> plan.batches().stream()
                        .filter(batch -> batch.id().equalsIgnoreCase(word))
                        .findFirst())
                .map(batch -> batch.lot().text())
                .orElse(word);
    }

    /** The plan whose day it is, or the next one once it stands. */
    private Optional<DayPlan> current() {
        LocalDate today =
                LocalDate.ofInstant(office.now(), office.shop().house().zone());
        return Stream.of(today, office.shop().calendar().next(today))
                .flatMap(day -> office.plan(day).stream())
                .findFirst();
    }

    /** What came of a mail: what was done, what was not, and what the reply says of it. */
    record Outcome(int done, int open, List<Answer.Part> parts) {}
}

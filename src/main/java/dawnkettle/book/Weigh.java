package dawnkettle.book;

import dawnkettle.book.Decide.Decided;
import dawnkettle.book.Decide.Made;
import dawnkettle.book.Piece.Days;
import dawnkettle.book.Piece.Doubt;
import dawnkettle.book.Piece.Talk;
import dawnkettle.book.ReadMail.Question;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Weighs what was understood against what was not: a later sentence that is not understood can take an earlier one back. */
final class Weigh {
    private static final String UNCERTAIN = "Other words of your mail make this uncertain; is it meant?";

    private final List<Unit> units;
    private final Lexicon lexicon;
    private final FindProduct products;
    private final List<Made> kept = new ArrayList<>();
    private final List<Question> questions = new ArrayList<>();

    Weigh(List<Unit> units, Lexicon lexicon, FindProduct products) {
        this.units = units;
        this.lexicon = lexicon;
        this.products = products;
    }

    List<OrderWish> understood() {
        return kept.stream().map(Made::wish).toList();
    }

    List<Question> questions() {
        return questions;
    }

    /** @param clouded whether words of the mail can turn all of it round */
    void all(Decided decided, boolean clouded) {
        decided.wishes().stream()
                .filter(made -> !clouded && !mayBeTakenBack(made))
                .forEach(kept::add);
        decided.questions().forEach(this::ask);
        decided.twice().forEach(made -> ask(made, Decide.TWICE));
        decided.wishes().stream()
                .filter(made -> !kept.contains(made))
                .forEach(made -> ask(made, UNCERTAIN));
        units.forEach(this::doubts);
    }

    private void ask(Question question) {
        boolean asked = questions.stream().anyMatch(other -> other.words().equals(question.words()));
        if (!asked) questions.add(question);
    }

    private void ask(Made made, String why) {
        ask(new Question(isPartlyKept(made.unit()) ? made.wish().words() : made.unit().words(), why));
    }

    private boolean isPartlyKept(Unit unit) {
        return kept.stream().anyMatch(made -> made.unit() == unit);
    }

    /** A sentence of which nothing is booked is asked about whole. */
    private void doubts(Unit unit) {
        boolean partly = isPartlyKept(unit);
        for (Piece piece : unit.pieces())
            if (piece instanceof Doubt doubt)
                ask(new Question(partly ? doubt.words() : unit.words(), doubt.why()));
    }

    /** What of a sentence is neither booked nor asked and yet says something: all of it, where nothing of it is booked. */
    List<String> passedOver(Unit unit) {
        boolean talk = unit.pieces().stream().anyMatch(Talk.class::isInstance);
        boolean unclear = !unit.hasWants()
                && unit.days().stream().anyMatch(days -> !days.asked().isEmpty())
                && unit.pieces().stream().noneMatch(Doubt.class::isInstance);
        if (isPartlyKept(unit)) return words(unit);
        return talk && !isAskedWhole(unit) || unclear ? List.of(unit.words()) : List.of();
    }

    private static List<String> words(Unit unit) {
        return unit.pieces().stream()
                .filter(Talk.class::isInstance)
                .map(Piece::words)
                .toList();
    }

    private boolean isAskedWhole(Unit unit) {
        return questions.stream().anyMatch(question -> question.words().equals(unit.words()));
    }

    /** Whether a later sentence that is not understood is about the same product, and about no other day. */
    private boolean mayBeTakenBack(Made made) {
        String product = Decide.product(made.wish());
        if (product.isEmpty()) return false;
        for (int i = at(made.unit()) + 1; i < units.size(); i++) {
            Optional<Days> days = daysOf(i);
            boolean elsewhere = days.isPresent()
                    && days.get().asked().isEmpty()
                    && !days.get().days().contains(made.wish().day());
            if (!elsewhere && doubts(units.get(i), product)) return true;
        }
        return false;
    }

    /** By place: two sentences can be equal. */
    private int at(Unit unit) {
        for (int i = 0; i < units.size(); i++) if (units.get(i) == unit) return i;
        return units.size();
    }

    private boolean doubts(Unit unit, String product) {
        return unit.pieces().stream()
                .anyMatch(piece ->
                        piece instanceof Doubt doubt && products.mayBe(product, lexicon.senses(doubt.words())));
    }

    /** The days of a sentence, or of the last one before it that has any. */
    private Optional<Days> daysOf(int unit) {
        for (int i = unit; i >= 0; i--)
            if (units.get(i).hasDays()) return Optional.of(units.get(i).days().get(0));
        return Optional.empty();
    }
}

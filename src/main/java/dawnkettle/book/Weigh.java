package dawnkettle.book;

import dawnkettle.book.Decide.Decided;
import dawnkettle.book.Decide.Made;
import dawnkettle.book.Piece.Days;
import dawnkettle.book.Piece.Doubt;
import dawnkettle.book.Piece.Talk;
import dawnkettle.book.ReadMail.Question;
import dawnkettle.book.Sense.Kind;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collections;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Weighs what was understood against what was not: a later sentence that is not understood can take an earlier one back. */
final class Weigh {
    private static final String UNCERTAIN = "Other words of your mail make this uncertain; is it meant?";

    private static final Kind[] ALTERS = {
        Kind.NO,
        Kind.OLD,
        Kind.DROP,
        Kind.SET,
        Kind.SET_TO,
        Kind.ONLY,
        Kind.SKIP,
        Kind.UNSURE,
        Kind.FORGET,
        Kind.SAME,
        Kind.DOUBLE,
        Kind.MORE
    };

    private final List<Unit> units;
    private final FindProduct products;
    private final List<Made> kept = new ArrayList<>();
    private final Map<String, Question> questions = new LinkedHashMap<>();
    private final Map<Unit, Integer> places = new IdentityHashMap<>();
    private final Set<Unit> partlyKept = Collections.newSetFromMap(new IdentityHashMap<>());
    private final Map<String, BitSet> doubtsAbout = new HashMap<>();
    private final List<Optional<Days>> daysOf = new ArrayList<>();
    private final List<List<List<Sense>>> doubted = new ArrayList<>();

    Weigh(List<Unit> units, Lexicon lexicon, FindProduct products) {
        this.units = units;
        this.products = products;
        Optional<Days> days = Optional.empty();
        for (Unit unit : units) {
            places.put(unit, daysOf.size());
            if (unit.hasDays()) days = Optional.of(unit.days().get(0));
            daysOf.add(days);
            doubted.add(unit.pieces().stream()
                    .filter(Doubt.class::isInstance)
                    .map(doubt -> lexicon.senses(doubt.words()))
                    .toList());
        }
    }

    List<OrderWish> understood() {
        return kept.stream().map(Made::wish).toList();
    }

    List<Question> questions() {
        return List.copyOf(questions.values());
    }

    /** @param clouded whether words of the mail can turn all of it round */
    void all(Decided decided, boolean clouded) {
        decided.wishes().stream()
                .filter(made -> !clouded && !mayBeTakenBack(made))
                .forEach(kept::add);
        kept.forEach(made -> partlyKept.add(made.unit()));
        decided.questions().forEach(this::ask);
        decided.twice().forEach(made -> ask(made, Decide.TWICE));
        decided.wishes().stream()
                .filter(made -> clouded || mayBeTakenBack(made))
                .forEach(made -> ask(made, UNCERTAIN));
        units.forEach(this::doubts);
    }

    private void ask(Question question) {
        questions.putIfAbsent(question.words(), question);
    }

    private void ask(Made made, String why) {
        ask(new Question(
                isPartlyKept(made.unit()) ? made.wish().words() : made.unit().words(), why));
    }

    private boolean isPartlyKept(Unit unit) {
        return partlyKept.contains(unit);
    }

    /** A sentence of which nothing is booked is asked about whole. */
    private void doubts(Unit unit) {
        boolean partly = isPartlyKept(unit);
        for (Piece piece : unit.pieces())
            if (piece instanceof Doubt doubt) ask(new Question(partly ? doubt.words() : unit.words(), doubt.why()));
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
        return questions.containsKey(unit.words());
    }

    /** Whether a later sentence that is not understood is about the same product, and about no other day. */
    private boolean mayBeTakenBack(Made made) {
        String product = Decide.product(made.wish());
        if (product.isEmpty()) return false;
        BitSet about = doubtsAbout.computeIfAbsent(product, this::unitsThatDoubt);
        int from = places.get(made.unit()) + 1;
        for (int i = about.nextSetBit(from); i >= 0; i = about.nextSetBit(i + 1)) {
            Optional<Days> days = daysOf.get(i);
            boolean elsewhere = (units.get(i).hasDays() || !units.get(i).words().endsWith("?"))
                    && days.isPresent()
                    && days.get().asked().isEmpty()
                    && !days.get().days().contains(made.wish().day());
            if (!elsewhere) return true;
        }
        return false;
    }

    /** What tells of what was, and no more, takes nothing back. */
    private static boolean mayAlter(List<Sense> words) {
        boolean alters = words.stream().anyMatch(sense -> sense.is(ALTERS));
        boolean counts = words.stream().anyMatch(sense -> sense.is(Kind.NUMBER, Kind.A, Kind.DOZEN));
        boolean past = words.stream().anyMatch(sense -> sense.is(Kind.PAST, Kind.LAST, Kind.LAST_WEEK));
        boolean asks = words.get(words.size() - 1).is(Kind.QUESTION_MARK);
        boolean deeds = words.stream().anyMatch(sense -> sense.is(ALTERS) && !sense.is(Kind.UNSURE));
        return past ? deeds : alters && (counts || !asks) || counts;
    }

    private BitSet unitsThatDoubt(String product) {
        BitSet about = new BitSet();
        for (int i = 0; i < units.size(); i++)
            if (doubted.get(i).stream().anyMatch(words -> mayAlter(words) && products.mayBe(product, words)))
                about.set(i);
        return about;
    }
}

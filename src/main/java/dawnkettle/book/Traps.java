package dawnkettle.book;

import dawnkettle.book.Sense.Kind;
import dawnkettle.book.Sentence.Part;
import java.util.ArrayList;
import java.util.List;

/** Words of an order that look clear and can be meant in two ways. */
record Traps(Sentence sentence, FindProduct products) {
    /** "10-12" is no figure; "by" and "to" stand before a day, or in a change. */
    boolean isBroken(Part part, boolean changing) {
        List<Sense> senses = part.senses();
        for (int i = 2; i < senses.size(); i++)
            if (senses.get(i).is(Kind.NUMBER) && senses.get(i - 1).is(Kind.DASH) && isCount(senses, i - 2)) return true;
        Sense last = senses.get(senses.size() - 1);
        for (int i = 1; i < senses.size(); i++)
            if (senses.get(i - 1).is(Kind.NUMBER, Kind.A) && isOf(senses.get(i)) && !part.has(Kind.FORM, Kind.SIZE))
                return true;
        boolean by = senses.stream().anyMatch(s -> s != last && s.is(Kind.BY));
        boolean to = senses.stream().anyMatch(s -> s != last && s.is(Kind.TO))
                && !part.has(Kind.SET_TO, Kind.SET)
                && !isDown(part)
                && !changing;
        return by || to;
    }

    /** "The sesame down to 6" */
    static boolean isDown(Part part) {
        return part.senses().stream().anyMatch(s -> s.is(Kind.TO) && s.value().equals("down"));
    }

    /** "Case of firm": one. */
    Part counted(Part part) {
        List<Sense> senses = new ArrayList<>(part.senses());
        if (senses.size() < 3 || part.has(Kind.NUMBER, Kind.A)) return part;
        Sense pack = senses.get(0);
        boolean one =
                pack.is(Kind.CASE, Kind.FORM) && !sentence.words(List.of(pack)).endsWith("s") && isOf(senses.get(1));
        if (one) senses.add(0, pack.to(Kind.NUMBER, "1"));
        return one ? new Part(List.copyOf(senses), part.joined()) : part;
    }

    /** "6 firm for Friday?": a question in which nothing is asked for. */
    boolean isOnlyAsking() {
        return sentence.has(Kind.QUESTION_MARK) && !asksFor(sentence);
    }

    static boolean asksFor(Sentence sentence) {
        return sentence.senses().stream().anyMatch(Asking::isRequest);
    }

    private boolean isCount(List<Sense> senses, int at) {
        if (!senses.get(at).is(Kind.NUMBER)) return false;
        int product = at - 1;
        while (product > 0 && senses.get(product).is(Kind.NOISE)) product--;
        boolean behind = product >= 0 && senses.get(product).is(Kind.KIND, Kind.FORM);
        return !behind || !products.isSize(senses.get(at).value(), senses.subList(product, product + 1));
    }

    /** "2 cases of firm and 1 of medium": one what? */
    private boolean isOf(Sense sense) {
        return sense.is(Kind.NOISE) && sense.value().equals("of");
    }

    /** "16 x firm", where the customer also takes extra firm that fits the words. */
    boolean isEither(Part part) {
        List<Sense> other = new ArrayList<>(part.senses());
        boolean either = false;
        for (int i = 0; i + 1 < other.size(); i++) {
            if (!other.get(i).is(Kind.TIMES) || !other.get(i).value().startsWith("kind ")) continue;
            other.set(i + 1, other.get(i + 1).to(Kind.KIND, other.get(i).value().substring("kind ".length())));
            either = true;
        }
        return either && products.isUsual(other);
    }
}

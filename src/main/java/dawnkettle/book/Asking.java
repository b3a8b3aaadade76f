package dawnkettle.book;

import dawnkettle.book.Sense.Kind;
import java.util.List;

/** Words that ask for something ("please", "we need"), and such as begin what it is for; the word lists say which. */
final class Asking {
    private Asking() {}

    /** Whether words behind the last that we do not know ask for something; "want" does only of ourselves: "we want". */
    static boolean in(List<Sense> senses) {
        return in(senses, true);
    }

    /** @param orders whether the bare word "order" counts */
    static boolean in(List<Sense> senses, boolean orders) {
        int strange = senses.size() - 1;
        while (strange >= 0 && !senses.get(strange).is(Kind.UNKNOWN)) strange--;
        boolean ours = strange < 0;
        for (Sense sense : senses.subList(strange + 1, senses.size())) {
            ours |= says(sense, "we");
            if (isRequest(sense)
                    || says(sense, "order") && (orders || ours)
                    || says(sense, "so")
                    || ours && says(sense, "want")) return true;
        }
        return false;
    }

    static boolean is(Sense sense) {
        return isRequest(sense) || says(sense, "order") || says(sense, "so") || says(sense, "want");
    }

    /** "Could we", and the like: a question with it asks for packs. */
    static boolean isRequest(Sense sense) {
        return sense.is(Kind.NOISE) && sense.value().equals("request");
    }

    /** A word that says nothing of an order, but is of a sort that the list names: "we", "thing". */
    static boolean says(Sense sense, String sort) {
        return sense.is(Kind.NOISE) && sense.value().equals(sort);
    }

    /** "For the parish fair" */
    static boolean isPurpose(Sense sense) {
        return sense.is(Kind.NOISE) && sense.value().equals("for");
    }
}

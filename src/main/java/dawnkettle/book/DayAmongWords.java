package dawnkettle.book;

import dawnkettle.book.Sense.Kind;
import dawnkettle.book.Sentence.Part;
import java.util.List;

/** What a day in a sentence is about, by what stands beside it. */
final class DayAmongWords {
    private DayAmongWords() {}

    /** "Sold out by noon today" */
    static boolean isOver(List<Part> parts, int at) {
        Part day = parts.get(at);
        boolean past = at > 0 && parts.get(at - 1).has(Kind.PAST) && Taints.isRemark(parts.get(at - 1));
        return past && day.joined() && day.senses().get(0).value().equals(DaysSaid.LATE);
    }

    /** "6 firm Monday, and for Friday 8 medium": a day that heads what follows, behind one that ends what stands before. */
    static boolean heads(List<Part> parts, int at) {
        boolean last = parts.get(parts.size() - 1).isDay();
        if (last || at + 1 >= parts.size()) return false;
        Part next = parts.get(at + 1);
        return next.joined() && (next.isOfOrder() || next.has(Kind.SAME, Kind.SKIP));
    }

    /** "The choir sings on Friday, so we would like": the one day that the sentence names. */
    static boolean isOnlyOne(Sentence sentence, Sense day) {
        List<Sense> senses = sentence.senses();
        long days = senses.stream().filter(s -> s.is(Kind.ON, Kind.ON_ASKED)).count();
        List<Sense> before = senses.subList(0, senses.indexOf(day));
        boolean risky = before.stream()
                .anyMatch(s -> s.is(Leftover.RISKY) || s.is(ReadSentence.DEEDS) || s.is(Kind.MORE, Kind.ORDINAL));
        boolean order = before.stream().anyMatch(s -> s.is(Kind.KIND, Kind.CODE, Kind.FORM, Kind.NUMBER));
        return days == 1 && !risky && !order;
    }
}

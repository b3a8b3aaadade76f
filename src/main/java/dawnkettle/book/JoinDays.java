package dawnkettle.book;

import dawnkettle.book.Piece.Days;
import dawnkettle.book.Sense.Kind;
import dawnkettle.book.Sentence.Part;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/** Days that stand beside each other: several, where "and" or the like joins them; else not certain. */
final class JoinDays {
    private JoinDays() {}

    /** "Monday to Wednesday" */
    static Days unsure(Days days) {
        return new Days(
                days.days(), days.asked().isEmpty() ? ReadSentence.UNSURE : days.asked(), days.behind(), days.words());
    }

    /** "Wednesday and for Thursday" */
    static boolean isLink(Part part) {
        return part.senses().stream().allMatch(s -> s.is(Kind.NOISE) && s.until() - s.from() <= 3);
    }

    static Days both(Days one, Days other) {
        List<LocalDate> days = new ArrayList<>(one.days());
        other.days().stream().filter(day -> !days.contains(day)).forEach(days::add);
        String why = one.asked().isEmpty() ? other.asked() : one.asked();
        return new Days(days, why, one.behind(), one.words() + ", " + other.words());
    }
}

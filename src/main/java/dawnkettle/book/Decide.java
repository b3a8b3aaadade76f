package dawnkettle.book;

import dawnkettle.book.Piece.Verb;
import dawnkettle.book.Piece.Wish;
import dawnkettle.book.PlaceDays.Placed;
import dawnkettle.book.ReadMail.Question;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Makes wishes of what was placed, and questions of what is uncertain or said twice. */
final class Decide {
    static final String TWICE = "This is in your mail twice for the same day; which is meant?";

    private final LocalDate mail;
    private final List<Made> wishes = new ArrayList<>();
    private final Set<Question> questions = new LinkedHashSet<>();

    /** A wish with the sentence that it stands in. @param besides whether it says itself that it is more */
    record Made(OrderWish wish, Unit unit, boolean besides) {}

    /** What was decided. */
    record Decided(List<Made> wishes, List<Question> questions, List<Made> twice) {}

    private Decide(LocalDate mail) {
        this.mail = mail;
    }

    static Decided of(List<Placed> placed, LocalDate mail) {
        Decide decide = new Decide(mail);
        for (int i = 0; i < placed.size(); i++) decide.one(placed, i);
        List<Made> twice = decide.takeTwice();
        return new Decided(decide.wishes, List.copyOf(decide.questions), twice);
    }

    private void one(List<Placed> placed, int at) {
        Placed one = placed.get(at);
        if (!one.isCertain()) ask(one.unit().words(), one.days().asked());
        else if (one.want().wish().verb() == Verb.COPY) copy(placed, at);
        else
            for (LocalDate day : one.days().days())
                make(one.want().wish(), day, one.want().words(), one.unit());
    }

    private void ask(String words, String why) {
        questions.add(new Question(words, why));
    }

    /** "And the same for Wednesday": what was wished for the day just before. */
    private void copy(List<Placed> placed, int at) {
        List<Placed> before = new ArrayList<>();
        for (int i = at - 1;
                i >= 0 && placed.get(i).days() == placed.get(at - 1).days();
                i--) before.add(0, placed.get(i));
        Placed one = placed.get(at);
        boolean doubted =
                before.stream().anyMatch(p -> p.unit().pieces().stream().anyMatch(Piece.Doubt.class::isInstance));
        boolean clear = !before.isEmpty()
                && !doubted
                && before.stream()
                        .allMatch(p -> p.isCertain() && p.want().wish().verb() == Verb.MORE)
                && !before.get(0).days().sameAs(one.days());
        if (!clear) ask(one.unit().words(), "The same as what? Please write packs and products.");
        else
            for (LocalDate day : one.days().days())
                before.forEach(p -> make(
                        p.want().wish(),
                        day,
                        p.want().words() + "; " + one.want().words(),
                        one.unit()));
    }

    private void make(Wish wish, LocalDate day, String words, Unit unit) {
        Optional<OrderWish> made = switch (wish.verb()) {
            case MORE -> Optional.of(new OrderWish.More(day, wish.product(), wish.packs(), words));
            case SET -> Optional.of(new OrderWish.SetTo(day, wish.product(), wish.packs(), words));
            case DROP -> Optional.of(new OrderWish.Drop(day, wish.product(), words));
            case TWICE -> Optional.of(new OrderWish.Twice(day, wish.product(), words));
            case SKIP -> isSkipped(day) ? Optional.empty() : Optional.of(new OrderWish.SkipDay(day, words));
            case AS -> as(wish, day, words);
            case COPY -> Optional.empty();
        };
        made.ifPresent(found -> wishes.add(new Made(found, unit, wish.as().equals("more"))));
    }

    private boolean isSkipped(LocalDate day) {
        return wishes.stream()
                .map(Made::wish)
                .anyMatch(w -> w instanceof OrderWish.SkipDay && w.day().equals(day));
    }

    private Optional<OrderWish> as(Wish wish, LocalDate day, String words) {
        Optional<LocalDate> other = SayAgain.resolved(wish.as(), day, mail).filter(found -> !found.equals(day));
        if (other.isEmpty()) ask(words, "As on which day? Please write its date.");
        return other.map(found -> new OrderWish.SameAs(day, found, words));
    }

    /** One product twice on a day, or a whole day and a part of it, contradict each other or add up: nobody knows. */
    private List<Made> takeTwice() {
        List<Made> twice = wishes.stream()
                .filter(one -> wishes.stream().anyMatch(other -> other != one && clash(one, other)))
                .toList();
        wishes.removeAll(twice);
        return twice;
    }

    private static boolean clash(Made one, Made other) {
        if (!one.wish().day().equals(other.wish().day())) return false;
        if (isCopyAndChange(one, other) || isCopyAndChange(other, one)) return false;
        if (isCopyAndMore(one, other) || isCopyAndMore(other, one)) return false;
        String product = product(one.wish());
        return product.isEmpty() || product(other.wish()).isEmpty() || product.equals(product(other.wish()));
    }

    /** "The same as last Friday, but no pouches": in one sentence, the change behind. */
    private static boolean isCopyAndChange(Made one, Made other) {
        return one.wish() instanceof OrderWish.SameAs
                && (other.wish() instanceof OrderWish.SetTo || other.wish() instanceof OrderWish.Drop)
                && one.unit() == other.unit();
    }

    /** "The same as Friday, and one tray of pouches more" */
    private static boolean isCopyAndMore(Made one, Made other) {
        return one.wish() instanceof OrderWish.SameAs && other.besides();
    }

    static String product(OrderWish wish) {
        if (wish instanceof OrderWish.More more) return more.product();
        if (wish instanceof OrderWish.SetTo set) return set.product();
        if (wish instanceof OrderWish.Drop drop) return drop.product();
        return wish instanceof OrderWish.Twice twice ? twice.product() : "";
    }
}

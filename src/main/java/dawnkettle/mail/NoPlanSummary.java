package dawnkettle.mail;

import dawnkettle.book.BookLine;
import dawnkettle.mail.Letter.Bullets;
import dawnkettle.mail.Letter.Column;
import dawnkettle.mail.Letter.Grid;
import dawnkettle.mail.Letter.Section;
import dawnkettle.plan.Heading;
import dawnkettle.shop.Product;
import dawnkettle.shop.Shop;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** The morning's mail of a day that has no plan: which mode it is, what to work from, what is ordered. */
public final class NoPlanSummary {
    private NoPlanSummary() {}

    /**
     * How the day stands.
     *
     * @param mode how much of the computation could be had
     * @param sheet what is worked from, in words
     * @param lines what is ordered; empty where that could not be read
     * @param questions what the owner should know or answer
     */
    public record State(LocalDate day, Heading.Mode mode, String sheet, List<BookLine> lines, List<String> questions) {
        public State {
            lines = List.copyOf(lines);
            questions = List.copyOf(questions);
        }
    }

    public static Mail of(State state, Shop shop) {
        String mode = Verdict.mode(state.mode());
        Letter letter = new Letter(
                shop.house().name() + ", " + Figures.day(state.day()),
                false,
                List.of(
                        "Not all is well: " + mode + ".",
                        "Work from " + state.sheet() + ".",
                        "No label is dated and no lot is numbered by the clerk until a plan comes; it is tried again."),
                List.of(
                        new Section("Look at this", new Bullets(state.questions())),
                        new Section("Ordered", ordered(state, shop))),
                List.of(
                        "Your food-safety plan and local codes come first; no date is ever made longer.",
                        "Soy is an allergen in everything here. Keep packs at 5 °C (41 °F) or below."));
        Mail.Body body = new Mail.Body(LetterText.of(letter), LetterHtml.of(letter), List.of());
        return new Mail(
                Mail.idOf(state.day(), "summary", 0),
                List.of(),
                Figures.day(state.day()) + ": " + mode,
                body,
                List.of());
    }

    private static Grid ordered(State state, Shop shop) {
        Map<String, Integer> packs = new TreeMap<>();
        for (BookLine line : state.lines()) packs.merge(line.product(), line.packs(), Integer::sum);
        List<List<String>> rows = packs.entrySet().stream()
                .map(one -> List.of(
                        shop.findProduct(one.getKey()).map(Product::name).orElse(one.getKey()),
                        Integer.toString(one.getValue())))
                .toList();
        return new Grid("Packs by product", List.of(Column.words("Product"), Column.figures("Packs")), rows);
    }
}

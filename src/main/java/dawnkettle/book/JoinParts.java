package dawnkettle.book;

import dawnkettle.book.Sense.Kind;
import dawnkettle.book.Sentence.Part;
import java.util.ArrayList;
import java.util.List;

/** Puts parts together that a comma parts within an entry: "half blocks, 12", "firm, two buckets", "12 firm, 400 g". */
final class JoinParts {
    private static final Kind[] OF_PACK = {Kind.FORM, Kind.CASE, Kind.UNIT, Kind.SIZE, Kind.GRADE};
    private static final Kind[] OF_SIZE = {
        Kind.SIZE,
        Kind.NOISE,
        Kind.UNIT,
        Kind.FORM,
        Kind.CASE,
        Kind.GRADE,
        Kind.BRACKET,
        Kind.DASH,
        Kind.QUESTION_MARK,
        Kind.BY
    };
    private static final Kind[] STRANGE = {
        Kind.UNKNOWN, Kind.UNSURE, Kind.VAGUE, Kind.PAST, Kind.OLD, Kind.DROP, Kind.NO, Kind.EACH
    };

    private JoinParts() {}

    static List<Part> of(List<Part> parts) {
        List<Part> all = new ArrayList<>();
        for (int i = 0; i < parts.size(); i++) {
            Part part = parts.get(i);
            Part before = all.isEmpty() ? part : all.get(all.size() - 1);
            boolean two = before != part && !before.isDay() && !part.isDay();
            boolean alone = i + 1 == parts.size() || !isNameOnly(parts.get(i + 1));
            if (two && (isCounted(before, part) || isSized(before, part) || alone && isNamed(before, part)))
                all.set(all.size() - 1, with(before, part));
            else all.add(part);
        }
        return all;
    }

    /** "Half blocks, 12", "firm, two buckets": a product without a figure, and its figure. */
    private static boolean isCounted(Part product, Part figure) {
        boolean open =
                product.has(Kind.KIND, Kind.CODE, Kind.FORM) && !isCountedAlready(product) && !product.has(STRANGE);
        boolean begins = figure.senses().get(0).is(Kind.NUMBER, Kind.A, Kind.HALF_CASE)
                || figure.senses().get(0).is(Kind.SIZE) && figure.has(Kind.NUMBER);
        boolean nameless = !figure.has(Kind.KIND, Kind.CODE) && !figure.has(STRANGE);
        boolean formed = product.has(Kind.KIND, Kind.CODE) || !figure.has(Kind.FORM);
        return open && begins && nameless && formed;
    }

    private static boolean isCountedAlready(Part part) {
        return part.has(Kind.NUMBER, Kind.HALF_CASE) || part.senses().get(0).is(Kind.A);
    }

    /** "12 firm, 400 g", "medium, bucket" */
    private static boolean isSized(Part product, Part size) {
        boolean only = size.senses().stream().allMatch(s -> s.is(OF_SIZE)) && size.has(Kind.SIZE, Kind.FORM);
        boolean formed = product.has(Kind.FORM) && size.has(Kind.FORM);
        return product.has(Kind.KIND, Kind.CODE) && !product.has(STRANGE) && only && !formed;
    }

    /** "Three buckets, firm" */
    private static boolean isNamed(Part figure, Part product) {
        boolean open = figure.has(Kind.NUMBER) && figure.has(OF_PACK) && !figure.has(Kind.KIND, Kind.CODE);
        return open && !figure.has(STRANGE) && isNameOnly(product);
    }

    private static boolean isNameOnly(Part part) {
        return part.has(Kind.KIND)
                && part.senses().stream().allMatch(s -> s.is(Kind.KIND, Kind.NOISE, Kind.BRACKET, Kind.QUESTION_MARK));
    }

    private static Part with(Part one, Part next) {
        List<Sense> both = new ArrayList<>(one.senses());
        both.addAll(next.senses());
        return new Part(List.copyOf(both), one.joined());
    }
}

package dawnkettle.draw;

import dawnkettle.sheet.Lettering;
import dawnkettle.sheet.Typeface;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** The typeface of the sheets: Noto Sans in two weights, as it comes with the program, and what the shop named beside it. */
public final class PdfTypeface implements Typeface {
    private final TypefaceWeight regular;
    private final TypefaceWeight bold;

    /** @param more stand in, in this order, character by character, where Noto Sans has none */
    public PdfTypeface(List<TypefaceFile> more) {
        this.regular = new TypefaceWeight(TypefaceFile.ours("NotoSans-Regular.ttf"), more);
        this.bold = new TypefaceWeight(TypefaceFile.ours("NotoSans-Bold.ttf"), more);
    }

    public static PdfTypeface notoSans() {
        return new PdfTypeface(List.of());
    }

    @Override
    public double widthMm(String text, Lettering lettering) {
        return weight(lettering).ems(text) * lettering.points() * Lettering.MM_A_POINT;
    }

    /** Whether every character of {@code text} has a shape of its own. */
    public boolean shows(String text) {
        return lacking(text).isEmpty();
    }

    /** The first character of {@code text} that has no shape in one of the weights. */
    public Optional<String> lacking(String text) {
        OptionalInt plain = regular.lacking(text);
        OptionalInt first = plain.isPresent() ? plain : bold.lacking(text);
        return first.isPresent() ? Optional.of(Character.toString(first.getAsInt())) : Optional.empty();
    }

    TypefaceWeight weight(Lettering lettering) {
        return lettering.weight() == Lettering.Weight.BOLD ? bold : regular;
    }
}

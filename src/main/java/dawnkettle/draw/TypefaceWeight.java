package dawnkettle.draw;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.concurrent.ConcurrentHashMap;

/** One weight of the sheets' letters: our own typeface, and those that stand in where it lacks a character. */
final class TypefaceWeight {
    /** What is shown for a character that no typeface has: the replacement character, or the nearest there is. */
    private static final int[] REPLACEMENTS = {0xFFFD, 0x25A1, '?'};

    /** Below it every character is whole (Unicode: the combining diacritical marks begin here). */
    private static final int FIRST_ACCENT = 0x300;

    private final List<TypefaceFile> files = new ArrayList<>();
    /** Letters, figures and punctuation of the western scripts: nearly all that a sheet says. */
    private final Letter[] usual = new Letter[0x2100];

    private final Map<Integer, Letter> others = new ConcurrentHashMap<>();
    private final int replacement;

    TypefaceWeight(TypefaceFile ours, List<TypefaceFile> more) {
        files.add(ours);
        files.addAll(more);
        replacement = replacement(ours);
    }

    private static int replacement(TypefaceFile ours) {
        for (int codePoint : REPLACEMENTS) if (ours.has(codePoint)) return codePoint;
        throw new IllegalStateException("the typeface has not even a question mark");
    }

    /** A character as it is shown. */
    record Letter(TypefaceFile file, int codePoint, double ems) {}

    /** Characters in a row that are of one typeface. */
    record Run(TypefaceFile file, String text) {}

    TypefaceFile ours() {
        return files.get(0);
    }

    /** Ours where it has the character, else the first that does; control characters are a space. */
    private Letter letter(int codePoint) {
        if (codePoint >= usual.length) return others.computeIfAbsent(codePoint, this::look);
        Letter letter = usual[codePoint];
        if (letter == null) usual[codePoint] = letter = look(codePoint); // the same whoever looks first
        return letter;
    }

    private Letter look(int codePoint) {
        int shown = Character.isISOControl(codePoint) ? ' ' : codePoint;
        for (TypefaceFile file : files) if (file.has(shown)) return new Letter(file, shown, file.advance(shown));
        return new Letter(ours(), replacement, ours().advance(replacement));
    }

    /** Asked thousands of times a sheet, mostly of plain western text: hence no detour for that. */
    double ems(String text) {
        double ems = 0;
        for (int i = 0; i < text.length(); i++) {
            char plain = text.charAt(i);
            if (plain >= FIRST_ACCENT)
                return whole(text)
                        .codePoints()
                        .mapToDouble(one -> letter(one).ems())
                        .sum();
            ems += letter(plain).ems();
        }
        return ems;
    }

    /** The first character that no typeface has. */
    OptionalInt lacking(String text) {
        return whole(text)
                .codePoints()
                .filter(one -> !Character.isISOControl(one) && files.stream().noneMatch(file -> file.has(one)))
                .findFirst();
    }

    List<Run> runs(String text) {
        List<Run> runs = new ArrayList<>();
        StringBuilder run = new StringBuilder();
        TypefaceFile file = ours();
        for (int codePoint : whole(text).codePoints().toArray()) {
            Letter letter = letter(codePoint);
            if (letter.file() != file && run.length() > 0) {
                runs.add(new Run(file, run.toString()));
                run.setLength(0);
            }
            file = letter.file();
            run.appendCodePoint(letter.codePoint());
        }
        if (run.length() > 0) runs.add(new Run(file, run.toString()));
        return runs;
    }

    /** A letter and its accents as one character: typefaces have Vietnamese letters whole. */
    private static String whole(String text) {
        return Normalizer.isNormalized(text, Normalizer.Form.NFC)
                ? text
                : Normalizer.normalize(text, Normalizer.Form.NFC);
    }
}

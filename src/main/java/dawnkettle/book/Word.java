package dawnkettle.book;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A word, figure or mark of a line.
 *
 * @param bare small letters without accents
 * @param from where it begins
 * @param until where it ends, exclusive
 */
record Word(String bare, int from, int until) {
    private static final Pattern ONE = Pattern.compile(
            "\\d{4}-\\d{1,2}-\\d{1,2}(?!\\d)" // 2026-12-04
                    + "|\\d{1,2}/\\d{1,2}(?:/\\d{2,4})?(?![\\d/])" // 12/4
                    + "|\\d{1,2}\\.\\d{1,2}\\.(?:\\d{2,4})?(?!\\d)" // 4.12.
                    + "|\\d{1,2}:\\d{2}(?!\\d)" // 6:30
                    + "|\\d+(?:st|nd|rd|th)(?!\\p{L})" // 4th
                    + "|\\d{3,4}(?='?s(?!\\p{L}))" // 400s
                    + "|[-=]{1,3}>|[→➔]" // ->
                    + "|\\.{2,}|…|-{2,}|_{2,}"
                    + "|\\d+(?:[.,]\\d+)?"
                    + "|\\p{L}[\\p{L}\\p{M}]*(?:['’]\\p{L}+)?"
                    + "|\\S");
    /** An accent without its letter. */
    private static final String NO_WORD = "\u00A4";

    private static final Pattern ACCENTS = Pattern.compile("\\p{M}+");

    static List<Word> in(String line) {
        List<Word> words = new ArrayList<>();
        Matcher next = ONE.matcher(line.toLowerCase(Locale.ROOT).length() == line.length() ? small(line) : line);
        while (next.find()) words.add(new Word(bare(next.group()), next.start(), next.end()));
        return words;
    }

    /** A phrase as the words of it, parted by single blanks. */
    static String phrase(String written) {
        List<String> bare = in(written).stream().map(Word::bare).toList();
        return String.join(" ", bare);
    }

    private static String small(String line) {
        return line.toLowerCase(Locale.ROOT);
    }

    private static String bare(String word) {
        boolean simple = word.chars().allMatch(c -> c < 128);
        String plain = simple
                ? word
                : ACCENTS.matcher(Normalizer.normalize(word.replace('’', '\''), Normalizer.Form.NFD))
                        .replaceAll("");
        if (plain.isEmpty()) return NO_WORD;
        boolean owned = plain.length() > 4 && plain.endsWith("'s");
        return owned ? plain.substring(0, plain.length() - 2) : plain;
    }

    boolean isFigure() {
        return bare.charAt(0) >= '0' && bare.charAt(0) <= '9';
    }

    boolean isLetters() {
        return Character.isLetter(bare.charAt(0));
    }
}

package dawnkettle.book;

import java.util.Collection;
import java.util.List;
import java.util.Optional;

/**
 * The word that a shortened one stands for, where only one meaning fits: some of its consonants, at least three and the first
 * and last among them ("bckt", "blks"); or broken off after at least four ("kitch"), with two or more left out.
 */
final class Shortened {
    /**
     * Letters of a word that is written without its vowels, of one that is broken off, and of what is broken off
     * (common practice, no source).
     */
    private static final int FEWEST_WITHOUT_VOWELS = 3;

    private static final int FEWEST_BROKEN_OFF = 4;
    private static final int FEWEST_LEFT_OUT = 2;

    private Shortened() {}

    static Optional<String> meant(String written, Collection<Slip.Known> known) {
        return only(written, known)
                .or(() -> written.endsWith("s")
                        ? only(written.substring(0, written.length() - 1), known)
                        : Optional.empty());
    }

    private static Optional<String> only(String written, Collection<Slip.Known> known) {
        List<Slip.Known> fitting =
                known.stream().filter(one -> fits(written, one.word())).toList();
        boolean one = fitting.stream().map(Slip.Known::meaning).distinct().count() == 1;
        return one ? Optional.of(fitting.get(0).word()) : Optional.empty();
    }

    private static boolean fits(String written, String word) {
        boolean bare = written.length() >= FEWEST_WITHOUT_VOWELS
                && word.length() > written.length()
                && written.charAt(0) == word.charAt(0)
                && written.equals(withoutVowels(written))
                && isWithin(written, withoutVowels(word));
        boolean brokenOff = written.length() >= FEWEST_BROKEN_OFF
                && word.length() >= written.length() + FEWEST_LEFT_OUT
                && word.startsWith(written);
        return bare || brokenOff;
    }

    /** Whether all letters stand there in their order, the first and the last at its ends. */
    private static boolean isWithin(String written, String word) {
        int at = 0;
        for (int i = 0; i < word.length() && at < written.length(); i++) if (word.charAt(i) == written.charAt(at)) at++;
        return at == written.length()
                && word.charAt(0) == written.charAt(0)
                && word.charAt(word.length() - 1) == written.charAt(at - 1);
    }

    private static String withoutVowels(String word) {
        return word.charAt(0) + word.substring(1).replaceAll("[aeiou]", "");
    }
}

package dawnkettle.conf;

import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;

/** Finds the word that somebody probably meant. */
final class Nearest {
    private Nearest() {}

    /** The closest of {@code known}, unless even that differs in more than half of its letters. */
    static Optional<String> to(String written, Collection<String> known) {
        return known.stream()
                .min(Comparator.comparingInt((String word) -> distance(written, word))
                        .thenComparing(Comparator.naturalOrder()))
                .filter(word -> distance(written, word) * 2 <= Math.max(written.length(), word.length()));
    }

    /** Letters to insert, delete or change (Levenshtein 1965, from memory); case does not count. */
    static int distance(String from, String to) {
        String a = from.toLowerCase(Locale.ROOT);
        String b = to.toLowerCase(Locale.ROOT);
        int[] row = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) row[j] = j;
        for (int i = 1; i <= a.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int change = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.min(change, Math.min(row[j], row[j - 1]) + 1);
            }
        }
        return row[b.length()];
    }
}

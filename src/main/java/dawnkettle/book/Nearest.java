package dawnkettle.book;

import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;

/** The word that somebody most likely meant: the fewest letters to change, two of them or a third, one in a short word. */
public final class Nearest {
    private Nearest() {}

    public static Optional<String> to(String written, Collection<String> known) {
        String wanted = written.toLowerCase(Locale.ROOT);
        int most = wanted.length() < 4 ? 1 : Math.max(2, wanted.length() / 3);
        return known.stream()
                .filter(word -> changes(wanted, word.toLowerCase(Locale.ROOT)) <= most)
                .min(Comparator.<String>comparingInt(word -> changes(wanted, word.toLowerCase(Locale.ROOT)))
                        .thenComparing(Comparator.naturalOrder()));
    }

    /** Letters to put in, leave out or change (Levenshtein's distance). */
    static int changes(String from, String to) {
        int[] row = new int[to.length() + 1];
        for (int j = 0; j <= to.length(); j++) row[j] = j;
        for (int i = 1; i <= from.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= to.length(); j++) {
                int changed = diagonal + (from.charAt(i - 1) == to.charAt(j - 1) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.min(changed, 1 + Math.min(row[j], row[j - 1]));
            }
        }
        return row[to.length()];
    }
}

package dawnkettle.book;

import dawnkettle.book.Sense.Kind;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Puts misspelt and shortened words right, where it is certain which known word was meant. */
final class Spelling {
    /** A word longer than this is not looked at. */
    private static final int LONGEST = 24;

    private static final int FEWEST_OF_MANY = 6;

    /** Elsewhere a slip could turn the meaning round, as "wont" for "want". */
    private static final Kind[] MAY_BE_MISSPELT = {
        Kind.WEEKDAY, Kind.MONTH, Kind.DAY, Kind.NUMBER, Kind.DOZEN, Kind.KIND, Kind.FORM, Kind.CASE, Kind.UNIT
    };

    private static final Kind[] MAY_BE_SHORTENED = {Kind.WEEKDAY, Kind.MONTH, Kind.KIND, Kind.FORM, Kind.CASE, Kind.UNIT
    };

    private final Set<String> accepted = new HashSet<>();
    private final Map<String, String> meanings = new HashMap<>();
    private final List<Slip.Known> known = new ArrayList<>();
    private final List<Slip.Known> shortened = new ArrayList<>();
    private final Map<String, String> compounds = new HashMap<>();
    private final Map<String, String> found = new HashMap<>();

    /** A phrase of one word that others may be meant for. */
    void learn(String phrase, String meaning) {
        if (!Character.isLetter(phrase.charAt(0))) return;
        boolean two = phrase.indexOf(' ') > 0 && phrase.indexOf(' ') == phrase.lastIndexOf(' ');
        if (two && Lexicon.sense(meaning, 0, 0).is(Kind.KIND, Kind.FORM))
            compounds.put(phrase.replace(" ", ""), phrase);
        if (phrase.indexOf(' ') >= 0) return;
        meanings.put(phrase, meaning);
        known.add(new Slip.Known(phrase, meaning));
        if (Lexicon.sense(meaning, 0, 0).is(MAY_BE_SHORTENED)) shortened.add(new Slip.Known(phrase, meaning));
    }

    /** Words of a phrase are right as they are. */
    void accept(String phrase) {
        accepted.addAll(List.of(phrase.split(" ")));
    }

    /** The word that was meant, or the word as it is. */
    String of(String written) {
        if (written.length() > LONGEST || accepted.contains(written)) return written;
        return found.computeIfAbsent(written, this::meant);
    }

    /** "Medfirm": two words of different meanings in one are neither. */
    private boolean isCompound(String written) {
        for (int i = 3; i <= written.length() - 3; i++) {
            String first = meanings.getOrDefault(written.substring(0, i), "");
            String second = meanings.getOrDefault(written.substring(i), "");
            if (first.startsWith("kind") && second.startsWith("kind") && !first.equals(second)) return true;
        }
        return false;
    }

    /** "Puches": with the ending of several. */
    private Optional<String> ofMany(String written) {
        if (written.length() < FEWEST_OF_MANY || !written.endsWith("s")) return Optional.empty();
        Optional<String> one = Slip.meant(written.substring(0, written.length() - 1), known);
        boolean es = one.isEmpty() && written.endsWith("es");
        return es ? Slip.meant(written.substring(0, written.length() - 2), known) : one;
    }

    private String meant(String written) {
        if (compounds.containsKey(written)) return compounds.get(written);
        if (isCompound(written)) return written;
        return Slip.meant(written, known)
                .or(() -> ofMany(written))
                .or(() -> Shortened.meant(written, shortened))
                .filter(word -> Lexicon.sense(meanings.get(word), 0, 0).is(MAY_BE_MISSPELT))
                .orElse(written);
    }
}

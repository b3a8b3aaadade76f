package dawnkettle.conf;

import dawnkettle.book.Nearest;
import dawnkettle.shop.Allergen;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Reads the words for allergens. */
final class Allergens {
    private static final List<String> WORDS =
            Stream.of(Allergen.values()).map(Allergen::word).toList();

    private Allergens() {}

    /** The allergens that are named; a word that names none is noted. */
    static List<Allergen> read(List<Written> words) {
        return words.stream().flatMap(word -> one(word).stream()).distinct().toList();
    }

    private static Optional<Allergen> one(Written word) {
        int index = WORDS.indexOf(word.text());
        if (index >= 0) return Optional.of(Allergen.values()[index]);
        String remedy = Nearest.to(word.text(), WORDS)
                .map(near -> "write \"" + near + "\"")
                .orElse("write one of: " + String.join(", ", WORDS));
        return word.bad(Optional.empty(), "is no allergen", remedy);
    }
}

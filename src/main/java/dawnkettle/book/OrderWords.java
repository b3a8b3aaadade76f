package dawnkettle.book;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;

/**
 * A word list of one language: the words and short phrases that people use when they order, by what they mean.
 *
 * @param language as the file is named, "en"
 * @param meanings what a phrase means ("weekday 5", "kind firm"), by the phrase
 */
public record OrderWords(String language, Map<String, String> meanings) {
    private static final String ORDER = "order_of_dates";

    public OrderWords {
        meanings = Collections.unmodifiableMap(new LinkedHashMap<>(meanings));
    }

    /** Reads lines of {@code meaning = phrase | phrase}; what follows a # is a remark. */
    public static OrderWords parse(String language, String text) {
        Map<String, String> meanings = new LinkedHashMap<>();
        for (String line :
                text.lines().map(OrderWords::bare).filter(l -> !l.isEmpty()).toList()) {
            int equals = line.indexOf('=');
            if (equals < 1) throw new IllegalArgumentException(complaint(language, line));
            String meaning = line.substring(0, equals).strip();
            if (!isMeaning(meaning)) throw new IllegalArgumentException(complaint(language, line));
            for (String phrase : phrases(line.substring(equals + 1))) meanings.put(phrase, meaning);
        }
        return new OrderWords(language, meanings);
    }

    /** The first word of a meaning is one of {@link Sense.Kind}, or says in which order figures of a date stand. */
    private static boolean isMeaning(String meaning) {
        String name = meaning.split(" ")[0];
        return name.equals(ORDER)
                || Stream.of(Sense.Kind.values())
                        .anyMatch(kind -> kind.name().toLowerCase(Locale.ROOT).equals(name));
    }

    boolean knows(String word) {
        return meanings.containsKey(word)
                || word.endsWith("s") && meanings.containsKey(word.substring(0, word.length() - 1));
    }

    private static String bare(String line) {
        int remark = line.indexOf('#');
        return (remark < 0 ? line : line.substring(0, remark)).strip();
    }

    private static List<String> phrases(String listed) {
        List<String> phrases = new ArrayList<>();
        for (String phrase : listed.split("\\|", -1)) if (!phrase.isBlank()) phrases.add(phrase.strip());
        return phrases;
    }

    private static String complaint(String language, String line) {
        return "word list " + language + ": \"" + line + "\" has no meaning; write as in: weekday 5 = friday | fri";
    }
}

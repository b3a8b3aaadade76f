package dawnkettle.sheet;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.ResourceBundle;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/** One language of the sheets: its file of words, and nothing of what the machine knows of languages. */
final class Tongue {
    /** The languages that have a file of words. */
    static final List<String> SPOKEN = List.of("en", "es", "ja", "pt", "vi", "zh");

    /** Where Chinese is written in the traditional letters, which have no file. */
    private static final Set<String> TRADITIONAL = Set.of("TW", "HK", "MO");

    private static final String FILES = "dawnkettle.words.";
    private static final Map<String, Tongue> READ = new ConcurrentHashMap<>();

    private final String tag;
    private final ResourceBundle said;

    private Tongue(String tag) {
        this.tag = tag;
        ResourceBundle.Control plain =
                ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES);
        this.said = ResourceBundle.getBundle(FILES + tag, Locale.ROOT, plain);
    }

    /** The language of a BCP 47 tag; English where it is not spoken. */
    static Tongue of(String tag) {
        return READ.computeIfAbsent(spoken(tag).orElse("en"), Tongue::new);
    }

    /** Which of the spoken languages a tag asks for. */
    static Optional<String> spoken(String tag) {
        Locale asked = Locale.forLanguageTag(tag);
        boolean traditional = asked.getScript().equals("Hant") || TRADITIONAL.contains(asked.getCountry());
        return SPOKEN.contains(asked.getLanguage()) && !(asked.getLanguage().equals("zh") && traditional)
                ? Optional.of(asked.getLanguage())
                : Optional.empty();
    }

    String tag() {
        return tag;
    }

    String text(Word word) {
        return said.getString(word.key());
    }

    String item(Word list, int index) {
        return text(list).split(",")[index];
    }

    String say(Word word, Object... of) {
        String text = text(word);
        StringBuilder whole = new StringBuilder();
        int from = 0;
        for (int open = text.indexOf('{'); open >= 0; open = text.indexOf('{', from)) {
            int close = text.indexOf('}', open);
            whole.append(text, from, open).append(of[Integer.parseInt(text.substring(open + 1, close))]);
            from = close + 1;
        }
        return whole.append(text.substring(from)).toString();
    }
}

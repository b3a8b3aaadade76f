package dawnkettle.sheet;

import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;

/** The words of the sheets in one language; a word that a language lacks is said in English. */
final class Words {
    private final Locale locale;
    private final Map<Word, String> said;

    private Words(Locale locale, Map<Word, String> said) {
        this.locale = locale;
        this.said = said;
    }

    /** The words of a BCP 47 tag; only English so far, so that dates stay in English with them. */
    static Words of(String language) {
        Locale asked = Locale.forLanguageTag(language);
        Locale locale = asked.getLanguage().equals("en") ? asked : Locale.ENGLISH;
        return new Words(locale, new EnumMap<>(Word.class));
    }

    Locale locale() {
        return locale;
    }

    String say(Word word, Object... of) {
        String text = said.getOrDefault(word, word.english());
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

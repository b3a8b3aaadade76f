package dawnkettle.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** The words of the sheets, in one language or in two: then the second is said after a sign that no text holds. */
final class Words {
    /** Stands before what is said in the second language; it is set below the first, smaller. */
    static final String SECOND = "\u001E";

    private final List<Tongue> tongues;

    private Words(List<Tongue> tongues) {
        this.tongues = List.copyOf(tongues);
    }

    /** The words of one or two languages, as BCP 47 tags; one that is not spoken is said in English. */
    static Words of(List<String> languages) {
        return new Words(languages.stream().map(Tongue::of).distinct().toList());
    }

    /** The tag of the language that comes first. */
    String tag() {
        return tongues.get(0).tag();
    }

    /** In every language of the sheet. */
    String say(Word word, Object... of) {
        return together(IntStream.range(0, tongues.size())
                .mapToObj(i -> tongues.get(i).say(word, parts(of, i)))
                .toList());
    }

    /** In the first language only, for what is too short or too narrow for two. */
    String first(Word word, Object... of) {
        return tongues.get(0).say(word, parts(of, 0));
    }

    /** One of a list of words, as the name of a month. */
    String item(Word list, int index) {
        return together(tongues.stream().map(tongue -> tongue.item(list, index)).toList());
    }

    /** What stands in the first language of something said. */
    static String first(String said) {
        return part(said, 0);
    }

    /** Several things said, one after the other in each language. */
    static String join(String between, List<String> said) {
        int most = said.stream().mapToInt(one -> one.split(SECOND).length).max().orElse(1);
        List<String> joined = new ArrayList<>();
        for (int i = 0; i < most; i++) {
            int language = i;
            joined.add(said.stream().map(one -> part(one, language)).collect(Collectors.joining(between)));
        }
        return together(joined);
    }

    /** The same thing is not said twice. */
    private static String together(List<String> said) {
        return said.stream().distinct().collect(Collectors.joining(SECOND));
    }

    private static Object[] parts(Object[] of, int language) {
        Object[] parts = new Object[of.length];
        for (int i = 0; i < of.length; i++) parts[i] = part(String.valueOf(of[i]), language);
        return parts;
    }

    private static String part(String said, int language) {
        String[] parts = said.split(SECOND, -1);
        return parts[Math.min(language, parts.length - 1)];
    }
}

package dawnkettle.sheet;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The planner's reasons and warnings in the languages of a sheet. The plan keeps them in English, as it is published; each is
 * known by its form in the English file of words and said again in the others. One that has no form there stays as it is.
 */
final class PlanTalk {
    private static final Pattern PLACE = Pattern.compile("\\{(\\d)}");
    private static final List<Form> FORMS = Arrays.stream(Word.values())
            .filter(word -> word.name().startsWith("PLAN_"))
            .map(PlanTalk::form)
            .toList();

    private PlanTalk() {}

    /** What a sentence looks like, its places standing in the order of their numbers. */
    private record Form(Word word, Pattern looks) {
        Optional<Object[]> in(String sentence) {
            Matcher matcher = looks.matcher(sentence);
            if (!matcher.matches()) return Optional.empty();
            Object[] of = new Object[matcher.groupCount()];
            for (int i = 0; i < of.length; i++) of[i] = matcher.group(i + 1);
            return Optional.of(of);
        }
    }

    private static Form form(Word word) {
        String english = Tongue.of("en").text(word);
        StringBuilder looks = new StringBuilder();
        Matcher place = PLACE.matcher(english);
        int from = 0;
        while (place.find()) {
            looks.append(Pattern.quote(english.substring(from, place.start()))).append("(.+?)");
            from = place.end();
        }
        return new Form(word, Pattern.compile(looks + Pattern.quote(english.substring(from))));
    }

    static String say(String sentence, Words words) {
        for (Form form : FORMS) {
            Optional<Object[]> of = form.in(sentence);
            if (of.isPresent()) return words.say(form.word(), of.get());
        }
        return sentence;
    }

    /** Whether a sentence has its form in the files of words. */
    static boolean knows(String sentence) {
        return FORMS.stream().anyMatch(form -> form.in(sentence).isPresent());
    }

    static List<String> say(List<String> sentences, Words words) {
        List<String> said = new ArrayList<>();
        for (String sentence : sentences) said.add(say(sentence, words));
        return said;
    }
}

package dawnkettle.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Every language says everything, with the same places; none was left in English. */
class WordsTest {
    private static final Pattern PLACE = Pattern.compile("\\{\\d+}");

    /** Words that are spelt alike in a language and in English. */
    private static final Set<String> ALIKE = Set.of(
            "es minutes",
            "es hours",
            "es hours-minutes",
            "pt hours",
            "pt hours-minutes",
            "es record-material",
            "pt record-material",
            "es station-degrees",
            "pt minutes",
            "pt fallback-mass",
            "pt run-routes");

    static List<String> languages() {
        return Tongue.SPOKEN;
    }

    private static Properties file(String language) {
        Properties words = new Properties();
        try (InputStream in = Words.class.getResourceAsStream("/dawnkettle/words/" + language + ".properties")) {
            words.load(new InputStreamReader(in, StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
        return words;
    }

    private static Set<String> places(String text) {
        return PLACE.matcher(text).results().map(found -> found.group()).collect(Collectors.toCollection(TreeSet::new));
    }

    @ParameterizedTest
    @MethodSource("languages")
    void each_language_says_every_word_and_no_other(String language) {
        assertThat(file(language).stringPropertyNames())
                .containsExactlyInAnyOrderElementsOf(
                        Arrays.stream(Word.values()).map(Word::key).toList());
    }

    @ParameterizedTest
    @MethodSource("languages")
    void each_sentence_has_the_places_of_the_english_one(String language) {
        Properties english = file("en");
        file(language)
                .forEach((key, text) -> assertThat(places((String) text))
                        .as("%s %s", language, key)
                        .isEqualTo(places(english.getProperty((String) key))));
    }

    @ParameterizedTest
    @MethodSource("languages")
    void no_sentence_was_left_in_english(String language) {
        if (language.equals("en")) return;
        Properties english = file("en");
        file(language).forEach((key, text) -> {
            String bare = PLACE.matcher((String) text).replaceAll("").toLowerCase(Locale.ROOT);
            boolean unit = bare.replaceAll("[^\\p{L}]", "").length() <= 3;
            if (!unit && !ALIKE.contains(language + " " + key))
                assertThat(text).as("%s %s", language, key).isNotEqualTo(english.getProperty((String) key));
        });
    }

    @ParameterizedTest
    @MethodSource("languages")
    void a_list_has_as_many_words_as_there_are_days_or_months(String language) {
        for (Word list : List.of(Word.WEEKDAYS, Word.WEEKDAYS_SHORT))
            assertThat(Tongue.of(language).text(list).split(",")).hasSize(7).doesNotContain("");
        for (Word list : List.of(Word.MONTHS, Word.MONTHS_SHORT))
            assertThat(Tongue.of(language).text(list).split(",")).hasSize(12).doesNotContain("");
    }

    @Test
    void days_are_said_in_the_words_of_the_file_not_of_the_machine() {
        assertThat(full("en")).isEqualTo("Friday 4 December 2026");
        assertThat(full("es")).isEqualTo("viernes 4 de diciembre de 2026");
        assertThat(full("pt")).isEqualTo("sexta-feira, 4 de dezembro de 2026");
        assertThat(full("ja")).isEqualTo("2026年12月4日 金曜日");
        assertThat(full("zh")).isEqualTo("2026年12月4日 星期五");
        assertThat(full("vi")).isEqualTo("thứ Sáu, ngày 4 tháng 12 năm 2026");
        Dates japanese = new Dates(Words.of(List.of("ja")), ZoneId.of("Asia/Tokyo"));
        assertThat(japanese.dayAndTime(Instant.parse("2026-12-03T06:00:00Z"))).isEqualTo("12月3日(木) 15:00");
        assertThat(japanese.onLabel(LocalDate.of(2026, 12, 18))).isEqualTo("18 DEC 2026");
    }

    private static String full(String language) {
        return new Dates(Words.of(List.of(language)), ZoneId.of("UTC")).full(LocalDate.of(2026, 12, 4));
    }

    @Test
    void two_languages_are_said_one_after_the_other_and_what_is_alike_once() {
        Words words = Words.of(List.of("en", "es"));
        assertThat(words.say(Word.SOAK_TITLE)).isEqualTo("Soak sheet" + Words.SECOND + "Hoja de remojo");
        assertThat(words.say(Word.KG, "12")).isEqualTo("12 kg");
        assertThat(words.first(Word.SOAK_TITLE)).isEqualTo("Soak sheet");
        String lot = words.say(Word.SOAK_LOT, "A");
        assertThat(words.say(Word.CONTINUED, lot)).isEqualTo("lot A (continued)" + Words.SECOND + "lote A (continúa)");
        assertThat(Words.join(", ", List.of(lot, "T1"))).isEqualTo("lot A, T1" + Words.SECOND + "lote A, T1");
    }

    @ParameterizedTest
    @ValueSource(strings = {"zh-Hant", "zh-TW", "de", ""})
    void what_is_not_spoken_is_not_taken_for_something_else(String tag) {
        assertThat(SheetSettings.spoken(tag)).isEmpty();
        assertThat(Words.of(List.of(tag)).tag()).isEqualTo("en");
    }

    @Test
    void a_tag_may_name_a_country_or_a_script() {
        assertThat(SheetSettings.spoken("pt-BR")).contains("pt");
        assertThat(SheetSettings.spoken("zh-Hans-CN")).contains("zh");
        assertThat(SheetSettings.spoken("en-US")).contains("en");
    }
}

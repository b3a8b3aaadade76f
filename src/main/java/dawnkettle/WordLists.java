package dawnkettle;

import static java.nio.charset.StandardCharsets.UTF_8;

import dawnkettle.book.OrderWords;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/** The word lists that come along, by which mails are read; a language is a file. */
final class WordLists {
    private static final List<String> LANGUAGES = List.of("en", "es");

    private WordLists() {}

    /** @param first the shop's own language */
    static List<OrderWords> of(Locale first) {
        List<OrderWords> lists = new ArrayList<>();
        LANGUAGES.stream()
                .sorted(Comparator.comparing(language -> !language.equals(first.getLanguage())))
                .forEach(language -> read(language, lists));
        return lists;
    }

    private static void read(String language, List<OrderWords> lists) {
        try (InputStream in = WordLists.class.getResourceAsStream("words/" + language + ".txt")) {
            if (in != null) lists.add(OrderWords.parse(language, new String(in.readAllBytes(), UTF_8)));
        } catch (IOException e) {
            throw new UncheckedIOException("the word list " + language + " cannot be read from the program", e);
        }
    }
}

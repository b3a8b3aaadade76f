package dawnkettle.conf;

import dawnkettle.book.OrderWords;
import dawnkettle.trouble.BadFile;
import dawnkettle.trouble.Place;
import dawnkettle.trouble.Problem;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The word lists that order mails are read with: English and Spanish are shipped; a file {@code words/<language>.txt} in the
 * folder of the configuration takes the place of the shipped one or adds a language.
 */
public final class WordLists {
    private static final List<String> SHIPPED = List.of("en", "es");
    private static final String ENDING = ".txt";

    private WordLists() {}

    /** The shipped ones. */
    public static List<OrderWords> shipped() {
        return SHIPPED.stream().map(WordLists::shipped).toList();
    }

    /** @throws BadFile with every problem of the folder's own lists */
    public static List<OrderWords> from(Path conf) {
        List<OrderWords> lists = new ArrayList<>(shipped());
        Path folder = conf.resolve("words");
        if (!Files.isDirectory(folder)) return lists;
        Problems problems = new Problems();
        for (String name : names(folder)) own(folder, name, problems).ifPresent(list -> put(lists, list));
        problems.throwIfAny();
        return lists;
    }

    private static void put(List<OrderWords> lists, OrderWords list) {
        for (int i = 0; i < lists.size(); i++)
            if (lists.get(i).language().equals(list.language())) {
                lists.set(i, list);
                return;
            }
        lists.add(list);
    }

    private static List<String> names(Path folder) {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString())
                    .filter(name -> name.endsWith(ENDING))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new BadFile(List.of(new Problem(
                    Place.of(folder.toString()), "the folder cannot be read", "look at its permissions and the disk")));
        }
    }

    private static Optional<OrderWords> own(Path folder, String name, Problems problems) {
        Optional<String> text = new SourceText(problems).read(folder, name);
        if (text.isEmpty()) return Optional.empty();
        try {
            return Optional.of(OrderWords.parse(name.substring(0, name.length() - ENDING.length()), text.get()));
        } catch (IllegalArgumentException e) {
            problems.add(Place.of("words/" + name), e.getMessage(), "copy the form of the shipped list");
            return Optional.empty();
        }
    }

    private static OrderWords shipped(String language) {
        String resource = "/dawnkettle/words/" + language + ENDING;
        try (InputStream in = WordLists.class.getResourceAsStream(resource)) {
            if (in == null) throw new IllegalStateException("no word list " + resource + " in the program");
            return OrderWords.parse(language, new String(in.readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new IllegalStateException("word list " + resource + " cannot be read", e);
        }
    }
}

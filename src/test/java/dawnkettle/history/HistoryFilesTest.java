package dawnkettle.history;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.DemoDay;
import dawnkettle.conf.ReadConfiguration;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The invented weeks: their files are what the generator makes, and what they tell adds up. */
class HistoryFilesTest {
    static final Path FOLDER = DemoDay.CONF.resolve("rehearsal/history");
    private static final long MOST_BYTES = 1_500_000;

    private static MillraceHistory history;

    @BeforeAll
    static void make_it_up() throws IOException {
        history = new MillraceHistory(ReadConfiguration.from(DemoDay.CONF));
    }

    /** {@code -Dgolden=accept} writes them anew, after {@code conf/} or the generator have changed. */
    @Test
    void the_files_are_what_the_generator_makes() throws IOException {
        Map<String, String> made = new HistoryFiles(history).texts();
        if ("accept".equals(System.getProperty("golden"))) {
            Files.createDirectories(FOLDER);
            for (Map.Entry<String, String> file : made.entrySet())
                Files.writeString(FOLDER.resolve(file.getKey()), file.getValue(), UTF_8);
        }
        try (Stream<Path> files = Files.list(FOLDER)) {
            assertThat(files.map(file -> file.getFileName().toString()))
                    .containsExactlyInAnyOrderElementsOf(made.keySet());
        }
        for (Map.Entry<String, String> file : made.entrySet())
            assertThat(difference(Files.readString(FOLDER.resolve(file.getKey()), UTF_8), file.getValue()))
                    .as("%s; accept with -Dgolden=accept if the change is meant", file.getKey())
                    .isEmpty();
    }

    /** The first line that differs, as it is and as it is made; empty where all bytes are the same. */
    private static String difference(String is, String made) {
        if (is.equals(made)) return "";
        List<String> old = List.of(is.split("\n", -1));
        List<String> fresh = List.of(made.split("\n", -1));
        int line = 0;
        while (line < Math.min(old.size(), fresh.size()) && old.get(line).equals(fresh.get(line))) line++;
        return "line " + (line + 1) + ": \"" + (line < old.size() ? old.get(line) : "") + "\" is made as \""
                + (line < fresh.size() ? fresh.get(line) : "") + "\"";
    }

    @Test
    void the_files_stay_small() {
        assertThat(new HistoryFiles(history)
                        .texts().values().stream().mapToLong(String::length).sum())
                .isLessThan(MOST_BYTES);
    }

    @Test
    void every_pack_of_a_traced_lot_was_delivered_or_sold_or_is_in_the_cold_room() {
        Map<String, Integer> gone = new HashMap<>();
        Stream.concat(history.days.delivered.stream(), history.days.sold.stream())
                .forEach(each -> gone.merge(each.lot().code + " " + each.product(), each.packs(), Integer::sum));
        for (Lot lot : history.days.ready())
            lot.left.forEach((product, packs) -> gone.merge(lot.code + " " + product, packs, Integer::sum));
        for (Lot lot : history.days.lots)
            if (!lot.day.isBefore(Span.TRACED_FROM))
                lot.filled.forEach((product, packs) -> assertThat(gone).containsEntry(lot.code + " " + product, packs));
    }

    @Test
    void tubs_hold_the_beans_of_the_batches_and_no_more_than_they_may() {
        Map<Object, Long> soaked = new HashMap<>();
        Map<Object, Long> tubs = new HashMap<>();
        for (Tubs.Filled tub : history.tubs.filled) {
            soaked.merge(tub.making(), tub.grams(), Long::sum);
            tubs.merge(List.of(tub.making(), tub.tub()), tub.grams(), Long::sum);
        }
        Map<Object, Long> ground = new HashMap<>();
        for (Lot lot : history.days.lots)
            if (lot.recipe.soakGroup().isPresent()) ground.merge(lot.day, lot.inputGrams, Long::sum);
        assertThat(soaked).isEqualTo(ground);
        assertThat(tubs.values()).allMatch(grams -> grams <= 90_000);
    }

    @Test
    void nearly_everything_that_was_wanted_was_had() {
        int wanted = new Span(history.shop.calendar())
                .workDays().stream()
                        .flatMap(day -> history.books.madeOn(day).stream())
                        .mapToInt(Wanted::packs)
                        .sum();
        assertThat(history.days.shortPacks()).isBetween(0, wanted / 200);
    }
}

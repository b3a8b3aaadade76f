package dawnkettle;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import dawnkettle.book.OrderBook;
import dawnkettle.book.OrderLine;
import dawnkettle.command.Dawnkettle;
import dawnkettle.conf.ReadConfiguration;
import dawnkettle.intake.DropFolder;
import dawnkettle.intake.Dropped;
import dawnkettle.intake.Reading;
import dawnkettle.trouble.BadFile;
import dawnkettle.trouble.Problem;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Holds README.md and DEVELOPERS.md to what is there: files, commands, samples, the table of packages. */
class ReadmeTest {
    private static final Instant NOW = Instant.parse("2026-12-03T15:00:00Z");

    private final String readme = read("README.md");

    @TempDir
    Path folder;

    private static String read(String file) {
        try {
            return Files.readString(Path.of(file), UTF_8);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    private List<String> found(String pattern) {
        return Pattern.compile(pattern, Pattern.MULTILINE)
                .matcher(readme)
                .results()
                .map((MatchResult match) -> match.group(1))
                .distinct()
                .toList();
    }

    @Test
    void it_is_short_enough_to_be_read() {
        assertThat(readme.lines().count()).isLessThanOrEqualTo(150);
    }

    @Test
    void every_file_that_it_names_is_there() {
        List<String> files = found("(?:[ `])((?:conf|labels|systemd)/[a-z0-9.-]*)");

        assertThat(files).contains("conf/shop.toml", "conf/products.csv", "conf/calendar.csv");
        assertThat(files).allSatisfy(file -> assertThat(Path.of(file)).exists());
    }

    @Test
    void the_build_server_calls_its_test_command_and_nothing_else_of_maven() {
        List<String> commands = found("^    (mvn .*)$");

        assertThat(commands).hasSize(2);
        assertThat(read(".ci/run").lines().filter(line -> line.startsWith("mvn")))
                .containsExactly(commands.get(1));
    }

    @Test
    void it_names_every_command_and_every_option_it_names_is_one() {
        String commands = section("Commands");
        List<String> words = Pattern.compile("^  ([a-z]+) ", Pattern.MULTILINE)
                .matcher(said("--help"))
                .results()
                .map(match -> match.group(1))
                .toList();
        String help = String.join(
                "\n", words.stream().map(word -> said(word, "--help")).toList());

        assertThat(words)
                .contains("run", "rehearse")
                .allSatisfy(word -> assertThat(commands).contains("`" + word));
        assertThat(Pattern.compile("--[a-z]+").matcher(commands).results().map(MatchResult::group))
                .contains("--conf", "--ledger")
                .allSatisfy(option -> assertThat(help).contains(option));
    }

    @Test
    void the_contributors_table_of_packages_is_the_one_that_is_held() {
        Map<String, Set<String>> table = Pattern.compile("^\\| `([a-z]+)` \\|.*\\| ([^|]*) \\|$", Pattern.MULTILINE)
                .matcher(read("DEVELOPERS.md"))
                .results()
                .collect(Collectors.toMap(row -> row.group(1), row -> words(row.group(2))));
        Map<String, Set<String>> held = LayersTest.MAY_IMPORT.entrySet().stream()
                .collect(Collectors.toMap(Map.Entry::getKey, row -> words(row.getValue())));

        assertThat(table).isEqualTo(held);
        assertThat(read("DEVELOPERS.md").lines().count()).isLessThanOrEqualTo(250);
    }

    private static Set<String> words(String row) {
        String plain = row.replace(", and any class named `…Settings`", "").replace("the core", LayersTest.CORE);
        return Stream.of(plain.split("[ ,]+"))
                .filter(word -> word.matches("[a-z]+") && !word.equals("trouble"))
                .collect(Collectors.toSet());
    }

    private String section(String heading) {
        int from = readme.indexOf("\n## " + heading + "\n");
        assertThat(from).as(heading).isPositive();
        return readme.substring(from, readme.indexOf("\n## ", from + 1));
    }

    /** What a command says; nothing is built for its help. */
    private static String said(String... words) {
        PrintStream before = System.out;
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        System.setOut(new PrintStream(bytes, true, UTF_8));
        try {
            assertThat(Dawnkettle.run(null, words)).isZero();
        } finally {
            System.setOut(before);
        }
        return bytes.toString(UTF_8);
    }

    @Test
    void its_sample_of_orders_is_taken_as_it_says() throws IOException {
        String sample = readme.substring(readme.indexOf("```csv\n") + "```csv\n".length(), readme.lastIndexOf("```"));
        Files.writeString(folder.resolve("web.csv"), sample, UTF_8);
        var conf = ReadConfiguration.from(Path.of("conf"));
        OrderBook book = new OrderBook(conf.shop(), List.of(), List.of(), conf.standing(), List.of());

        Dropped dropped = new DropFolder(folder, Duration.ZERO).look(NOW).get(0);
        Reading reading = dropped.read(conf.shop(), book, NOW);
        dropped.acknowledge(reading);

        assertThat(reading.lines())
                .extracting(line -> line.order() + "/" + line.line() + " " + line.packs() + " " + line.product())
                .containsExactly(
                        "W-0412/1 24 FIRM-400",
                        "W-0412/2 12 MILK-1L",
                        "W-0413/1 3 MED-BKT",
                        "S-C001-20261204/1 6 MED-400");
        assertThat(reading.lines().get(3).source()).isEqualTo(OrderLine.Source.STANDING);
        assertThat(reading.amendments())
                .extracting(amendment -> amendment.packs())
                .containsExactly(12);
        assertThat(reading.problems()).hasSize(1);
        assertThat(readme).contains("`" + reading.problems().get(0) + "`");
        assertThat(folder.resolve("taken/web.csv.refusals.txt")).exists();
    }

    @Test
    void its_new_product_is_one_and_its_mistakes_are_answered_as_it_says() throws IOException {
        String row = found("^    (SES-KIT,.*)$").get(0);

        assertThat(problemsWith(row, "right")).isEmpty();
        assertThat(problemsWith(row.replace(",sesame,", ",seasame,").replace(",soy;sesame,", ",,"), "wrong"))
                .extracting(Problem::toString)
                .isEqualTo(found("^    (products\\.csv:[0-9].*)$"));
    }

    private List<Problem> problemsWith(String row, String name) throws IOException {
        Path conf = Files.createDirectory(folder.resolve(name));
        try (Stream<Path> files = Files.list(Path.of("conf"))) {
            for (Path file : files.filter(Files::isRegularFile).toList())
                Files.copy(file, conf.resolve(file.getFileName()));
        }
        Files.writeString(conf.resolve("products.csv"), row + "\n", UTF_8, StandardOpenOption.APPEND);
        BadFile bad = catchThrowableOfType(BadFile.class, () -> ReadConfiguration.from(conf));
        return bad == null ? List.of() : bad.problems();
    }
}

package dawnkettle;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The cards for a person at half past two: short, and with commands that are there. */
class RunbookTest {
    private static final List<String> SYMPTOMS = List.of(
            "No sheet in the tray",
            "The same sheet twice",
            "A label is missing",
            "A label is there twice",
            "The printer shows a red light",
            "The power was off",
            "A wrong date is on a label",
            "A mail did not come",
            "The machine is dead",
            "The disk is full",
            "The clock is not trusted",
            "A kettle or a batch is lost");

    private static String book() throws IOException {
        return Files.readString(Path.of("src/docs/runbook.md"), UTF_8);
    }

    private static List<String> found(String pattern, String text) {
        return Pattern.compile(pattern, Pattern.MULTILINE)
                .matcher(text)
                .results()
                .map((MatchResult match) -> match.group(1))
                .toList();
    }

    /** The same command with the word for help behind it: nothing is done, and words that are none are refused. */
    private static Terminal.Told help(List<String> words) {
        Object[] asked = new Object[words.size() + 1];
        for (int i = 0; i < words.size(); i++) asked[i] = words.get(i);
        asked[words.size()] = "--help";
        return Terminal.run(asked);
    }

    @Test
    void there_is_a_card_for_each_symptom_and_none_is_longer_than_six_steps() throws IOException {
        String[] cards = book().split("\n## ");

        assertThat(List.of(cards).stream()
                        .skip(1)
                        .map(card -> card.lines().findFirst().orElseThrow()))
                .containsAll(SYMPTOMS);
        for (int i = 1; i < cards.length; i++) {
            List<String> steps = found("^(\\d+)\\. ", cards[i]);
            assertThat(steps).as(cards[i].lines().findFirst().orElseThrow()).hasSizeBetween(2, 6);
            for (int step = 0; step < steps.size(); step++)
                assertThat(steps.get(step)).isEqualTo(String.valueOf(step + 1));
        }
    }

    @Test
    void every_command_on_a_card_is_one_and_every_option_belongs_to_it() throws IOException {
        List<String> commands = found("`dawnkettle ([^`]+)`", book());

        assertThat(commands).hasSizeGreaterThan(20);
        for (String command : commands) {
            List<String> words = found("(\"[^\"]*\"|\\S+)", command);
            List<String> path = words.get(0).equals("print") || command.startsWith("clock confirm")
                    ? words.subList(0, 2)
                    : words.subList(0, 1);
            Terminal.Told told = help(path);
            assertThat(told.status()).as(command).isZero();
            for (String option : words)
                if (option.startsWith("--")) assertThat(told.out()).as(command).contains(option);
        }
    }

    @Test
    void every_word_that_a_card_records_is_one_that_the_command_knows() throws IOException {
        String help = help(List.of("record")).out();

        List<String> kinds = found("`dawnkettle record ([a-z]+) ", book());
        assertThat(kinds).contains("hold", "release", "lost");
        assertThat(kinds).allSatisfy(kind -> assertThat(help).containsPattern("[ ·] " + kind + " [A-Z]"));
    }

    @Test
    void whatever_else_is_typed_belongs_to_the_machine() throws IOException {
        assertThat(found("`((?:systemctl|timedatectl|[a-z]+ctl) [a-z-]+)[^`]*`", book()))
                .isSubsetOf("systemctl stop", "systemctl start", "timedatectl set-time");
    }
}

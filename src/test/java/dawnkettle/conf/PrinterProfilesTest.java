package dawnkettle.conf;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.label.Pitch;
import dawnkettle.label.PrinterProfile;
import dawnkettle.trouble.Problem;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class PrinterProfilesTest {
    private static List<String> problems(String name, String from, String to) throws IOException {
        String text = Files.readString(Path.of("labels/printers", name));
        assertThat(text).contains(from);
        List<Problem> problems = new ArrayList<>();
        PrinterProfiles.read(name, text.replace(from, to), problems);
        return problems.stream().map(Problem::toString).toList();
    }

    @Test
    void the_profiles_that_come_along_are_whole() {
        assertThat(PrinterProfiles.read(Path.of("labels/printers")))
                .containsOnlyKeys("line-words", "rows-behind-escape", "text-with-deflated-dots", "text-with-hex-runs");
    }

    @Test
    void a_head_is_read_in_dots() {
        PrinterProfile profile =
                PrinterProfiles.read(Path.of("labels/printers")).get("rows-behind-escape");
        assertThat(profile.head()).isEqualTo(new PrinterProfile.Head(new Pitch(8_000), 832, 2_400));
    }

    @Test
    void unknown_keys_and_impossible_values_are_named_with_their_place() throws IOException {
        assertThat(problems("line-words.toml", "darkness = 8", "darkness = 900"))
                .containsExactly(
                        "labels/printers/line-words.toml:26:1: darkness \"900\" is not a whole number that goes"
                                + " here; write 0 to 255");
        assertThat(problems("line-words.toml", "black = 0", "black = 0\ncolour = 3"))
                .singleElement()
                .asString()
                .contains("key \"picture.colour\" is not known; known are form, black");
        assertThat(problems("line-words.toml", "\"band\"", "\"bands\""))
                .singleElement()
                .asString()
                .contains("form \"bands\" is not known; write rows, band, hex-runs or deflated");
        assertThat(problems("line-words.toml", "means = \"jam\"", "means = \"jammed\""))
                .singleElement()
                .asString()
                .contains("means \"jammed\" is not known; write one of busy, paper-out");
    }

    @Test
    void a_template_that_cannot_be_read_is_named() throws IOException {
        assertThat(problems("line-words.toml", "{rowBytes},{rows}", "{rowBites},{rows}"))
                .singleElement()
                .asString()
                .contains("\"{rowBites}\" is not known; known are bytes, copies");
        assertThat(problems("line-words.toml", "<22>~<22>", "<2>~<22>"))
                .singleElement()
                .asString()
                .contains("cannot be read at character 5; write plain characters, <1B> or {rows}");
    }

    @Test
    void a_printer_that_cannot_say_what_came_out_is_refused() throws IOException {
        assertThat(problems(
                        "line-words.toml",
                        "inTurn = { question = \"OUT <22>~<22><0D><0A>\", mask = 0xFF, is = 0x7E }",
                        ""))
                .containsExactly(
                        "labels/printers/line-words.toml: ask has neither inTurn nor remaining, so that nothing"
                                + " printed could be known; add it as your printer's manual says");
    }

    @Test
    void text_that_is_not_toml_is_named() throws IOException {
        assertThat(problems("line-words.toml", "[head]", "[head"))
                .first()
                .asString()
                .startsWith("labels/printers/line-words.toml:9:");
    }
}

package dawnkettle.draw;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import dawnkettle.label.Design;
import dawnkettle.label.Dots;
import dawnkettle.label.Symbology;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Two readers that share no code with the library that draws, as the system installs them: zbarimg and dmtxread. */
class OtherEyesTest {
    @TempDir
    Path folder;

    private String read(Dots dots, String... command) throws Exception {
        assumeThat(Files.isExecutable(Path.of("/usr/bin/" + command[0])))
                .as(command[0] + " is not there")
                .isTrue();
        Path png = Files.write(folder.resolve("label.png"), new DotPng().png(dots));
        List<String> words = new ArrayList<>(List.of(command));
        words.add(png.toString());
        Process reader = new ProcessBuilder(words)
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        String said = new String(reader.getInputStream().readAllBytes(), ISO_8859_1);
        assertThat(reader.waitFor(60, TimeUnit.SECONDS)).isTrue();
        return said.strip();
    }

    private static List<Design> with(Symbology symbology) {
        List<Design> designs = SampleLabels.designs().designs().stream()
                .filter(design -> design.symbols().stream().anyMatch(bars -> bars.symbology() == symbology))
                .toList();
        assertThat(designs).isNotEmpty();
        return designs;
    }

    @Test
    void linear_symbols_of_every_design_read_as_what_was_meant() throws Exception {
        for (Design design : with(Symbology.GS1_128)) {
            String said =
                    read(SampleLabels.drawn(design.name()), "zbarimg", "-q", "--raw", "-Sdisable", "-Scode128.enable");
            assertThat(said.lines())
                    .as(design.name())
                    .containsExactlyInAnyOrder("011952123450001515261214", "10261204-FI03");
        }
    }

    @Test
    void two_dimensional_symbols_of_every_design_read_as_what_was_meant() throws Exception {
        for (Design design : with(Symbology.GS1_DATAMATRIX)) {
            Dots dots = SampleLabels.drawn(design.name());
            var area = design.symbols().stream()
                    .filter(bars -> bars.symbology() == Symbology.GS1_DATAMATRIX)
                    .findFirst()
                    .orElseThrow()
                    .area();
            // The symbol with its own quiet zone, as a hand scanner is held at it; among bars the reader seeks too
            // long.
            Dots held = dots.part(
                    8 * area.x() / 1_000, 8 * area.y() / 1_000, 8 * area.width() / 1_000, 8 * area.height() / 1_000);
            String said = read(held, "dmtxread", "-n", "-N1", "-G", "29", "-m", "20000");
            assertThat(said.replace("\u001D", ""))
                    .as(design.name())
                    .isEqualTo(SampleLabels.ELEMENTS.joined().substring(1));
        }
    }
}

package dawnkettle.draw;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import dawnkettle.label.Dots;
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

    @Test
    void linear_symbols_read_as_what_was_meant() throws Exception {
        String said =
                read(SampleLabels.drawn("case-100x150"), "zbarimg", "-q", "--raw", "-Sdisable", "-Scode128.enable");
        assertThat(said.lines()).contains("011952123450001515261214", "10261204-FI03");
    }

    @Test
    void two_dimensional_symbols_read_as_what_was_meant() throws Exception {
        for (String name : List.of("bucket-100x50", "case-100x70", "part-case-100x70")) {
            String said = read(SampleLabels.drawn(name), "dmtxread", "-n", "-N1", "-G", "29", "-m", "20000");
            assertThat(said.replace("\u001D", ""))
                    .isEqualTo(SampleLabels.ELEMENTS.joined().substring(1));
        }
    }
}

package dawnkettle;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The same night twice, the second time on a machine that is set up for another country. */
class SameNightAgainTest {
    private static final String AT = "2026-12-03T15:00";

    @TempDir
    Path folder;

    @Test
    void a_machine_of_another_language_and_zone_makes_the_same_bytes() throws IOException, InterruptedException {
        CopiedShop shop = CopiedShop.quick(folder);
        shop.rehearse(AT, "--room", "17.5");
        Left here = new Left(shop.out());
        Path elsewhere = folder.resolve("elsewhere");
        rehearseInTokyo(shop, elsewhere);

        Map<String, String> made = here.bytes();
        assertThat(made).containsKeys("plan.json", "sheets/pick.pdf", "sheets/fallback.pdf");
        for (List<String> kind : List.of(List.of("labels", ".png"), List.of("labels", ".bin"), List.of("mail", ".eml")))
            assertThat(here.names(kind.get(0), kind.get(1))).isNotEmpty();
        assertThat(new Left(elsewhere).bytes()).isEqualTo(made);
    }

    /** In a Java of its own, so that nothing that was set up before the change of language stays. */
    private void rehearseInTokyo(CopiedShop shop, Path out) throws IOException, InterruptedException {
        Path said = folder.resolve("said.txt");
        Process there = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Duser.language=de",
                        "-Duser.country=DE",
                        "-Duser.timezone=Asia/Tokyo",
                        "-Dfile.encoding=ISO-8859-1",
                        "-cp",
                        System.getProperty("java.class.path"),
                        Main.class.getName(),
                        "rehearse",
                        "--conf",
                        shop.conf().toString(),
                        "--out",
                        out.toString(),
                        "--at",
                        AT,
                        "--room",
                        "17.5")
                .redirectErrorStream(true)
                .redirectOutput(said.toFile())
                .start();
        assertThat(there.waitFor(3, TimeUnit.MINUTES)).isTrue();
        assertThat(there.exitValue()).as(Files.readString(said, ISO_8859_1)).isZero();
        assertThat(Files.readString(out.resolve("story.txt"), UTF_8)).contains("Friday 4 December 2026");
    }
}

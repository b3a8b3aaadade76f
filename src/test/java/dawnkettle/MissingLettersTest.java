package dawnkettle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import dawnkettle.conf.Configuration;
import dawnkettle.trouble.BadFile;
import dawnkettle.trouble.Problem;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Names that no typeface has are known before the night, and a typeface that has them is enough. */
class MissingLettersTest {
    /** Debian's package fonts-droid-fallback. */
    private static final Path DROID = Path.of("/usr/share/fonts/truetype/droid/DroidSansFallbackFull.ttf");

    @TempDir
    private Path folder;

    private CopiedShop shop;

    @BeforeEach
    void named() throws IOException {
        shop = CopiedShop.in(folder)
                .with("products.csv", ",Firm tofu", ",木綿豆腐 firm tofu")
                .with("customers.csv", "C001,", "C001,豆の店 ");
    }

    @Test
    void without_a_typeface_that_has_them_the_first_letter_of_each_name_is_told_but_never_a_customers_name() {
        BadFile bad = catchThrowableOfType(BadFile.class, () -> new Main().configuration(shop.conf()));
        String remedy = "; install a typeface that has it, as the package fonts-droid-fallback, and name its file"
                + " under files of [typefaces] in shop.toml";
        assertThat(bad.problems().stream().map(Problem::toString))
                .anyMatch(
                        said -> said.matches("products.csv: no typeface has \"木\" of the name of product \"[A-Z0-9-]+\""
                                + remedy.replace("[", "\\[")))
                .contains("customers.csv: no typeface has \"豆\" of the name of customer \"C001\"" + remedy)
                .noneMatch(said -> said.contains("豆の店"));
    }

    @Test
    void with_one_the_shop_is_whole_and_labels_are_drawn_with_it_too() throws IOException {
        assumeTrue(Files.exists(DROID), "fonts-droid-fallback is not installed");
        Configuration conf = new Main()
                .configuration(shop.with("shop.toml", "[typefaces]", "[typefaces]\nfiles = [\"" + DROID + "\"]")
                        .conf());
        assertThat(conf.typefaces()).containsExactly(DROID);
    }
}

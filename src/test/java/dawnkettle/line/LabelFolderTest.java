package dawnkettle.line;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.draw.DotDrawing;
import dawnkettle.draw.DotPng;
import dawnkettle.draw.LabelTypefaces;
import dawnkettle.draw.SampleLabels;
import dawnkettle.label.CaseLabels;
import dawnkettle.label.CaseLabelsTest;
import dawnkettle.label.Confirmed;
import dawnkettle.label.Dots;
import dawnkettle.label.LabelCopies;
import dawnkettle.label.LabelRun;
import dawnkettle.label.LabelSlips;
import dawnkettle.label.LotLabels;
import dawnkettle.label.Pitch;
import dawnkettle.label.PrinterProfile;
import dawnkettle.label.ProfileReader;
import dawnkettle.label.SampleProfiles;
import dawnkettle.shop.Product;
import dawnkettle.shop.Sealing;
import java.awt.image.BufferedImage;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LabelFolderTest {
    private static final PrinterProfile PROFILE = SampleProfiles.profile("text-with-hex-runs");
    private static final Product FIRM = CaseLabelsTest.firm(Sealing.WATER_PACK, 10);

    @TempDir
    Path folder;

    private static LotLabels lotLabels() {
        CaseLabels labels = new CaseLabels(CaseLabelsTest.house("us-california"));
        return new LotLabels(
                SampleLabels.designs(),
                labels,
                new DotDrawing(
                        LabelTypefaces.ours(),
                        new Pitch(8_000),
                        labels.wording().type().leastXHeight()));
    }

    @Test
    void a_lot_leaves_a_picture_and_its_bytes() throws Exception {
        LabelRun run = lotLabels().run(CaseLabelsTest.planned(), FIRM);
        assertThat(run.labels())
                .extracting(LabelCopies::kind)
                .containsExactly(LabelCopies.Kind.SLIP, LabelCopies.Kind.CASE, LabelCopies.Kind.PART_CASE);
        List<Confirmed> confirmed = new ArrayList<>();
        new LabelFolder(folder, PROFILE, new DotPng(), 10).print(run, confirmed::add);

        assertThat(confirmed).containsExactly(new Confirmed("261204-FI03", "FIRM-12", 1, 5));
        try (var files = Files.list(folder)) {
            assertThat(files.map(file -> file.getFileName().toString()))
                    .containsExactlyInAnyOrder("261204-FI03-FIRM-12.png", "261204-FI03-FIRM-12.bin");
        }
        Dots shown = run.shown().orElseThrow();
        byte[] bytes = Files.readAllBytes(folder.resolve("261204-FI03-FIRM-12.bin"));
        List<ProfileReader.Printed> printed = new ProfileReader(PROFILE, bytes, shown.width(), shown.height()).read();
        assertThat(printed).extracting(ProfileReader.Printed::copies).containsExactly(1, 4, 1);
        assertThat(printed.get(1).picture()).isEqualTo(shown);

        BufferedImage png =
                ImageIO.read(folder.resolve("261204-FI03-FIRM-12.png").toFile());
        assertThat(png.getWidth()).isEqualTo(shown.width());
        for (int y = 0; y < png.getHeight(); y++)
            for (int x = 0; x < png.getWidth(); x++)
                if ((png.getRGB(x, y) == 0xFF000000) != shown.isBlack(x, y))
                    throw new AssertionError("the picture differs at " + x + "," + y);
    }

    @Test
    void a_second_rehearsal_leaves_the_same_files() throws Exception {
        LabelRun run = lotLabels().run(CaseLabelsTest.planned(), FIRM);
        new LabelFolder(folder, PROFILE, new DotPng(), 10).print(run, group -> {});
        byte[] once = Files.readAllBytes(folder.resolve("261204-FI03-FIRM-12.bin"));
        new LabelFolder(folder, PROFILE, new DotPng(), 10).print(run, group -> {});
        assertThat(Files.readAllBytes(folder.resolve("261204-FI03-FIRM-12.bin")))
                .isEqualTo(once);
    }

    @Test
    void a_reprint_is_marked_as_a_copy() {
        LabelRun copies = lotLabels().copies(CaseLabelsTest.planned(), FIRM, 3, 5);
        assertThat(copies.first()).isEqualTo(3);
        assertThat(copies.last()).isEqualTo(5);
        assertThat(copies.labels().get(0).picture())
                .isNotEqualTo(lotLabels()
                        .run(CaseLabelsTest.planned(), FIRM)
                        .labels()
                        .get(1)
                        .picture());
    }

    @Test
    void copies_and_slips_lie_beside_the_lots_own_labels() throws Exception {
        LabelFolder labels = new LabelFolder(folder, PROFILE, new DotPng(), 10);
        LabelRun run = lotLabels().run(CaseLabelsTest.planned(), FIRM);
        labels.print(run, group -> {});
        labels.print(lotLabels().copies(CaseLabelsTest.planned(), FIRM, 1, 2), group -> {});
        LabelRun slip = lotLabels()
                .slip(
                        CaseLabelsTest.planned().lot(),
                        FIRM,
                        LabelSlips.count(run.lot(), "Firm", List.of("1 printed", "look at 2 to 3", "4 to 5 printed")))
                .orElseThrow();
        labels.print(slip, group -> {});

        try (var files = Files.list(folder)) {
            assertThat(files.map(file -> file.getFileName().toString()).filter(name -> name.endsWith(".bin")))
                    .containsExactlyInAnyOrder(
                            "261204-FI03-FIRM-12.bin",
                            "261204-FI03-FIRM-12-copy-1-to-2.bin",
                            "261204-FI03-FIRM-12-slip.bin");
        }
    }

    @Test
    void a_product_that_fits_its_design_has_nothing_to_be_said_about() {
        assertThat(lotLabels().check(FIRM)).isEmpty();
    }
}

package dawnkettle.paper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dawnkettle.trouble.DeviceAway;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PaperFolderTest {
    @TempDir
    private Path folder;

    @Test
    void a_sheet_lies_whole_in_the_tray_and_a_later_one_takes_its_place() throws IOException {
        Path tray = folder.resolve("out").resolve("sheets");
        new PaperFolder(tray, sheet -> new byte[] {1, 2, 3}).print(PrintQueueTest.SOAK);
        new PaperFolder(tray, sheet -> new byte[] {4}).print(PrintQueueTest.SOAK);
        assertThat(tray.resolve("soak.pdf")).hasBinaryContent(new byte[] {4});
        try (var files = Files.list(tray)) {
            assertThat(files).hasSize(1);
        }
    }

    @Test
    void a_tray_that_cannot_be_written_says_so_and_nothing_went_out() throws IOException {
        Path file = Files.createFile(folder.resolve("not-a-folder"));
        PaperFolder tray = new PaperFolder(file, sheet -> new byte[] {1});
        assertThatThrownBy(() -> tray.print(PrintQueueTest.SOAK))
                .isInstanceOfSatisfying(
                        DeviceAway.class, away -> assertThat(away.isAmbiguous()).isFalse())
                .hasMessage("out-tray: sheet \"soak\" could not be written to \"" + file.resolve("soak.pdf")
                        + "\"; see that the folder can be written and the disk has room");
    }
}

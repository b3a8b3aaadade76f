package dawnkettle.post;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dawnkettle.trouble.DeviceAway;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PostFolderTest {
    private static final MimeForm FORM = new MimeForm("clerk@millrace.example", ZoneId.of("America/New_York"));

    @TempDir
    Path folder;

    @Test
    void a_mail_is_one_whole_file_named_by_its_id_and_the_same_when_it_is_sent_again() throws IOException {
        PostFolder post = new PostFolder(folder.resolve("mail"), FORM);
        post.send(MimeFormTest.mail("s"), MimeFormTest.DAWN);
        post.send(MimeFormTest.mail("s"), MimeFormTest.DAWN);
        Path file = folder.resolve("mail/2026-12-04.summary.1.eml");
        try (Stream<Path> files = Files.list(file.getParent())) {
            assertThat(files).containsExactly(file);
        }
        assertThat(Files.readAllBytes(file)).isEqualTo(FORM.bytes(MimeFormTest.mail("s"), MimeFormTest.DAWN));
    }

    @Test
    void a_folder_that_can_not_be_written_is_said_with_what_to_do() throws IOException {
        Path file = Files.writeString(folder.resolve("tray"), "not a folder");
        assertThatThrownBy(() -> new PostFolder(file, FORM).send(MimeFormTest.mail("s"), MimeFormTest.DAWN))
                .isInstanceOfSatisfying(
                        DeviceAway.class, away -> assertThat(away.isAmbiguous()).isFalse())
                .hasMessage("mail 2026-12-04.summary.1: could not be written to \"" + file
                        + "\"; see that the folder can be written to and that the disk has room");
    }
}

package dawnkettle.post;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.junit.jupiter.api.Test;

class SecretTest {
    private static final Path CREDENTIAL = Path.of("/run/credentials/dawnkettle.service/smtp");
    private static final Path FILE = Path.of("/etc/dawnkettle/smtp-password");

    private static boolean isOpen(Path file, String permissions) {
        return Secret.isOpen(file, PosixFilePermissions.fromString(permissions));
    }

    @Test
    void a_file_that_others_can_read_or_write_is_open() {
        assertThat(isOpen(FILE, "r--------")).isFalse();
        assertThat(isOpen(FILE, "rw-------")).isFalse();
        assertThat(isOpen(FILE, "r--r-----")).isTrue();
        assertThat(isOpen(FILE, "r-----r--")).isTrue();
        assertThat(isOpen(FILE, "rw--w----")).isTrue();
    }

    /** As conf/ sees it too: the group's bit there stands for the access list that lets the service read it. */
    @Test
    void a_credential_of_the_init_system_is_not_open_for_its_group_bit() {
        assertThat(isOpen(CREDENTIAL, "r--r-----")).isFalse();
        assertThat(isOpen(CREDENTIAL, "r--r--r--")).isTrue();
        assertThat(isOpen(CREDENTIAL, "rw-rw----")).isTrue();
    }
}

package dawnkettle.conf;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.util.Set;

/** The file that holds a secret: it must be there, and nobody but the service may read it. */
final class SecretFile {
    /** Where the init system puts credentials; it shows its access list there as the group's bit (from memory). */
    private static final Path CREDENTIALS = Path.of("/run/credentials");

    private SecretFile() {}

    static Path read(Written written, Path dir) {
        Path file = ReadNight.path(written, dir);
        if (!Files.isRegularFile(file))
            return written.bad(file, "is not there", "put the password alone into that file");
        try {
            if (isOpen(file, Files.getPosixFilePermissions(file)))
                return written.bad(file, "can be read or changed by other users", "run chmod 600 on it");
        } catch (IOException | UnsupportedOperationException e) {
            return written.bad(file, "does not show who may read it", "keep it on a file system with permissions");
        }
        return file;
    }

    static boolean isOpen(Path file, Set<PosixFilePermission> permissions) {
        return permissions.contains(PosixFilePermission.OTHERS_READ)
                || permissions.contains(PosixFilePermission.OTHERS_WRITE)
                || permissions.contains(PosixFilePermission.GROUP_WRITE)
                || permissions.contains(PosixFilePermission.GROUP_READ) && !file.startsWith(CREDENTIALS);
    }
}

package dawnkettle.post;

import dawnkettle.trouble.DeviceAway;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.util.EnumSet;
import java.util.Set;

/** A password in a file of its own, refused where other users can read it. */
final class Secret {
    private static final Set<PosixFilePermission> OTHERS = EnumSet.of(
            PosixFilePermission.GROUP_READ,
            PosixFilePermission.GROUP_WRITE,
            PosixFilePermission.OTHERS_READ,
            PosixFilePermission.OTHERS_WRITE);

    /** Where the init system puts credentials; it shows its access list there as the group's bit (from memory). */
    private static final Path CREDENTIALS = Path.of("/run/credentials");

    private Secret() {}

    static String read(Path file) {
        try {
            if (isOpen(file, Files.getPosixFilePermissions(file)))
                throw DeviceAway.clean(
                        "mail: other users may read or write \"" + file + "\"; make it ours alone with chmod 600",
                        null);
            return Files.readString(file).strip();
        } catch (IOException e) {
            throw DeviceAway.clean(
                    "mail: the password file \"" + file + "\" can't be read; put it there, readable for the service",
                    e);
        }
    }

    static boolean isOpen(Path file, Set<PosixFilePermission> permissions) {
        Set<PosixFilePermission> seen = EnumSet.copyOf(OTHERS);
        seen.retainAll(permissions);
        if (file.startsWith(CREDENTIALS)) seen.remove(PosixFilePermission.GROUP_READ);
        return !seen.isEmpty();
    }
}

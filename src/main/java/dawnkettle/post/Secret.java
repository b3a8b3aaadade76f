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

    private Secret() {}

    static String read(Path file) {
        try {
            Set<PosixFilePermission> seen = EnumSet.noneOf(PosixFilePermission.class);
            seen.addAll(Files.getPosixFilePermissions(file));
            seen.retainAll(OTHERS);
            if (!seen.isEmpty())
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
}

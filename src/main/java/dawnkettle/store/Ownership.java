package dawnkettle.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFileAttributes;
import java.nio.file.attribute.PosixFilePermission;
import java.util.EnumSet;
import java.util.Set;

/** Whose a file beside the ledger is: what the superuser puts there by hand must be the service's, or it can't write it. */
final class Ownership {
    private static final Set<PosixFilePermission> OWNER_AND_GROUP = EnumSet.of(
            PosixFilePermission.OWNER_READ,
            PosixFilePermission.OWNER_WRITE,
            PosixFilePermission.GROUP_READ,
            PosixFilePermission.GROUP_WRITE);

    private Ownership() {}

    /** Gives a file the owner and the group of the folder that it lies in, as far as we may, and both of them the right to write. */
    static void ofFolder(Path file) {
        PosixFileAttributeView view = Files.getFileAttributeView(file, PosixFileAttributeView.class);
        if (view == null) return;
        try {
            PosixFileAttributes folder =
                    Files.readAttributes(file.toAbsolutePath().getParent(), PosixFileAttributes.class);
            PosixFileAttributes now = view.readAttributes();
            if (!now.permissions().equals(OWNER_AND_GROUP)) view.setPermissions(OWNER_AND_GROUP);
            if (!now.group().equals(folder.group())) view.setGroup(folder.group());
            if (!now.owner().equals(folder.owner())) view.setOwner(folder.owner());
        } catch (IOException notOursToGive) {
            // Then it was not the superuser who asked, and whoever did is in the group that may write here.
        }
    }
}

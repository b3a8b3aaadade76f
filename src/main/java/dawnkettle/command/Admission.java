package dawnkettle.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFileAttributes;
import java.nio.file.attribute.PosixFilePermission;

/** Says who may use the shop's files, to somebody who may not. */
final class Admission {
    private Admission() {}

    /** @throws Dawnkettle.Refused where the folder is there and this account may not read it */
    static Path toRead(Path folder) {
        Path shut = shut(folder.toAbsolutePath());
        if (shut == null && Files.exists(folder) && !Files.isReadable(folder)) shut = folder;
        if (shut != null) throw refusal(folder, "may not be read", shut, PosixFilePermission.GROUP_READ);
        return folder;
    }

    /** @throws Dawnkettle.Refused where the file or its folder is there and this account may not write to it */
    static Path toWrite(Path file) {
        Path shut = shut(file.toAbsolutePath());
        Path folder = file.toAbsolutePath().getParent();
        if (shut == null && Files.exists(folder) && !Files.isWritable(folder)) shut = folder;
        if (shut == null && Files.exists(file) && !Files.isWritable(file)) shut = file;
        if (shut != null) throw refusal(file, "may not be written", shut, PosixFilePermission.GROUP_WRITE);
        return file;
    }

    /** The first folder on the way that this account may not go through; null where none is. */
    private static Path shut(Path target) {
        Path way = target.getRoot();
        for (Path step : target.getRoot().relativize(target)) {
            if (!Files.isDirectory(way)) return null;
            if (!Files.isExecutable(way)) return way;
            way = way.resolve(step);
        }
        return null;
    }

    private static Dawnkettle.Refused refusal(Path named, String what, Path shut, PosixFilePermission wanted) {
        String user = System.getProperty("user.name");
        return new Dawnkettle.Refused(named + ": it " + what + " by \"" + user + "\"; " + remedy(user, shut, wanted));
    }

    private static String remedy(String user, Path shut, PosixFilePermission wanted) {
        try {
            PosixFileAttributes facts =
                    Files.readAttributes(shut, PosixFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
            String group = facts.group().getName();
            boolean opens = facts.permissions().contains(wanted) && !group.equals("root");
            return opens
                    ? "it is for the group \"" + group + "\": sudo adduser " + user + " " + group + ", then log in anew"
                    : "it is for \"" + facts.owner().getName() + "\" alone: ask for it, or name another";
        } catch (IOException | UnsupportedOperationException hidden) {
            return "ask whoever looks after this machine";
        }
    }
}

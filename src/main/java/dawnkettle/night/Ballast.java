package dawnkettle.night;

import dawnkettle.trouble.DeviceAway;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.Random;

/**
 * A file beside the ledger that holds room for a bad night: a full disk can't be freed from within a ledger that may not
 * grow, so what is given up lies outside it. And whether the disk takes anything at all.
 */
public final class Ballast {
    /** Below this a ledger may stop in the middle of a night; its write-ahead file alone may grow by some megabytes. */
    private static final long LOW = 50_000_000;

    private static final String NAME = "ballast";
    private static final String PROBE = "probe";

    private final Path folder;
    private final NightSettings.Room room;

    /** @param folder where the ledger lies */
    public Ballast(Path folder, NightSettings.Room room) {
        this.folder = folder;
        this.room = room;
    }

    /** The one beside the ledger that an office works on. */
    public static Ballast of(Office office) {
        Path ledger = office.ledger().file().toAbsolutePath();
        return new Ballast(ledger.getParent(), office.papers().settings().care().room());
    }

    Path file() {
        return folder.resolve(NAME);
    }

    boolean isWanted() {
        return room.ballast() > 0;
    }

    /** Whether it was given up and there is still no room for it. */
    public boolean isGivenUp() {
        return isWanted() && !isThere() && free() < room.ballast() + room.free();
    }

    boolean isThere() {
        return Files.isRegularFile(file(), LinkOption.NOFOLLOW_LINKS);
    }

    /** Bytes that are free. */
    long free() {
        try {
            return Files.getFileStore(folder).getUsableSpace();
        } catch (IOException e) {
            return 0;
        }
    }

    /** Whether the disk is nearly full. */
    boolean isLow() {
        return isWanted() && free() < Math.min(LOW, room.free());
    }

    /** Gives it up, where it is there. @return whether that made room */
    public boolean giveUp() {
        try {
            return Files.deleteIfExists(file());
        } catch (IOException e) {
            return false;
        }
    }

    /** Makes it where it is not there and there is room for it and for the night. @return whether it is there now */
    boolean make() {
        if (isThere()) return true;
        if (!isWanted() || free() < room.ballast() + room.free()) return false;
        Path part = folder.resolve(NAME + ".part");
        try {
            try (OutputStream out = Files.newOutputStream(part)) {
                // No zeros: some file systems keep those without taking any room.
                byte[] some = new byte[1 << 16];
                new Random(1).nextBytes(some);
                for (long left = room.ballast(); left > 0; left -= some.length)
                    out.write(some, 0, (int) Math.min(some.length, left));
            }
            Files.move(part, file());
            return true;
        } catch (IOException e) {
            part.toFile().delete();
            return false;
        }
    }

    /** Writes a byte down to the disk and takes it away again. @throws DeviceAway where that can't be */
    void writeSomething() {
        Path probe = folder.resolve(PROBE);
        try {
            Files.write(
                    probe,
                    new byte[] {1},
                    java.nio.file.StandardOpenOption.CREATE,
                    java.nio.file.StandardOpenOption.WRITE,
                    java.nio.file.StandardOpenOption.SYNC);
            Files.delete(probe);
        } catch (IOException e) {
            throw DeviceAway.clean(
                    "folder \"" + folder + "\" can't be written to (" + e.getMessage() + "); look at the disk", e);
        }
    }
}

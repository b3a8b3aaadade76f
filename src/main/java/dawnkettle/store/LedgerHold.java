package dawnkettle.store;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Optional;

/**
 * That one program alone is at work on a ledger: the service holds it as long as it runs, and putting back a copy holds it.
 * The machine lets go of it when the program ends, however it ends.
 */
public final class LedgerHold implements AutoCloseable {
    private final FileChannel channel;

    private LedgerHold(FileChannel channel) {
        this.channel = channel;
    }

    /** @return empty where another program holds it */
    public static Optional<LedgerHold> take(Path ledger) {
        Path file = ledger.resolveSibling(ledger.getFileName() + ".hold");
        FileChannel channel = null;
        boolean held = false;
        try {
            channel = FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
            Ownership.ofFolder(file);
            FileLock lock = channel.tryLock();
            held = lock != null;
            return held ? Optional.of(new LedgerHold(channel)) : Optional.empty();
        } catch (OverlappingFileLockException inThisProgram) {
            return Optional.empty();
        } catch (IOException e) {
            throw new LedgerTrouble(file)
                    .clean("it can't be held (" + e.getMessage() + ")", "see that its folder can be written to", e);
        } finally {
            if (!held && channel != null) closeQuietly(channel);
        }
    }

    @Override
    public void close() {
        closeQuietly(channel);
    }

    private static void closeQuietly(FileChannel channel) {
        try {
            channel.close();
        } catch (IOException letGoAnyway) {
            // The lock goes with the program at the latest.
        }
    }
}

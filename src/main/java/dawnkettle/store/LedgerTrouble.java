package dawnkettle.store;

import dawnkettle.trouble.DeviceAway;
import dawnkettle.trouble.DiskAway;
import java.nio.file.Path;
import java.sql.SQLException;

/** What SQLite refused, in words for whoever has to act; what only a bug of ours can cause stays an exception. */
record LedgerTrouble(Path file) {
    // Primary result codes of SQLite (sqlite.org/rescode.html).
    private static final int BUSY = 5;
    private static final int READONLY = 8;
    private static final int IOERR = 10;
    private static final int CORRUPT = 11;
    private static final int FULL = 13;
    private static final int CANTOPEN = 14;
    private static final int NOTADB = 26;

    RuntimeException of(SQLException e) {
        return switch (e.getErrorCode() & 0xff) {
            case BUSY ->
                clean("another program has been writing to it for more than 10 s", "try again when it is done", e);
            case FULL -> clean("the disk is full, nothing was written", "make room; the ledger itself is sound", e);
            case CANTOPEN ->
                clean("it cannot be opened", "see that its folder is there and the service may write in it", e);
            case READONLY ->
                gone(
                        "it cannot be written",
                        "give the service write access to the file and its folder, or look at the disk",
                        e);
            case CORRUPT, NOTADB ->
                gone("it is damaged", "stop the service and put back a checked copy: dawnkettle restore", e);
            case IOERR -> gone("the disk failed while it was read or written", "look at the disk, then start again", e);
            default -> new IllegalStateException("ledger " + file + ": " + e.getMessage(), e);
        };
    }

    DeviceAway clean(String what, String remedy, Throwable cause) {
        return DeviceAway.clean(message(what, remedy), cause);
    }

    /** What no second try makes better. */
    private DiskAway gone(String what, String remedy, Throwable cause) {
        return new DiskAway(message(what, remedy), cause);
    }

    /** The same of a ledger that was open: a file that can't be opened any more is then the disk's failure, too. */
    RuntimeException whileOpen(SQLException e) {
        return (e.getErrorCode() & 0xff) == CANTOPEN
                ? gone("the files beside it cannot be opened any more", "look at the disk, then start again", e)
                : of(e);
    }

    /** Whether the disk had no room. */
    static boolean isFull(SQLException e) {
        return (e.getErrorCode() & 0xff) == FULL;
    }

    private String message(String what, String remedy) {
        return "ledger " + file + ": " + what + "; " + remedy;
    }
}

package dawnkettle.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The power goes before a disk has all that was given to it: of what was not yet synced each sector is there, is as it was, or
 * holds anything, and the file has any length between. What was acknowledged was synced, by the order in which SQLite asks for
 * it (sqlite.org/wal.html, with full sync at each commit). {@code -Dtorn=10000} loses power so often.
 */
class UnsyncedWritesTest {
    private static final int TRIES = Integer.getInteger("torn", 100);
    private static final int[] SECTORS = {512, 4_096};

    @TempDir
    Path folder;

    private final Random dice = new Random(261206);
    private final List<String> acknowledged = new ArrayList<>();

    /** The two files as they lie there. */
    private record Both(byte[] main, byte[] ahead) {}

    private Both files(Path file) throws IOException {
        return new Both(Files.readAllBytes(file), Files.readAllBytes(Path.of(file + "-wal")));
    }

    private void write(Ledger ledger, int orders) {
        for (int i = 0; i < orders; i++) {
            String order = "N" + acknowledged.size();
            ledger.inTransaction(() -> {
                ledger.orders().add(List.of(KeptNight.line(order, 3)));
                ledger.effects().intend("sheet " + order, Effect.Kind.SHEET, KeptNight.THURSDAY, KeptNight.CUT_OFF);
            });
            acknowledged.add(order);
        }
    }

    /** Sector by sector what was synced, what was written since, or anything; where the disk tells no lies. */
    private byte[] torn(byte[] synced, byte[] written, int firstUnsynced) {
        int sector = SECTORS[dice.nextInt(SECTORS.length)];
        int shortest = Math.max(firstUnsynced, Math.min(synced.length, written.length));
        int length = shortest + dice.nextInt(Math.max(synced.length, written.length) - shortest + 1);
        byte[] torn = new byte[length];
        int kind = dice.nextInt(4);
        for (int from = 0; from < length; from += sector) {
            boolean isNew = kind == 0 || dice.nextBoolean();
            boolean isAnything = kind == 1 && !isNew && isWritten(synced, written, from, from + sector);
            for (int i = from; i < Math.min(length, from + sector); i++) {
                byte old = i < synced.length ? synced[i] : 0;
                byte now = i < written.length ? written[i] : old;
                torn[i] = i < firstUnsynced || isNew ? now : isAnything ? (byte) dice.nextInt(256) : old;
            }
        }
        return torn;
    }

    /** A sector that nothing was written to stays as it is. */
    private static boolean isWritten(byte[] synced, byte[] written, int from, int to) {
        int end = Math.min(to, written.length);
        if (from >= end) return false;
        return end > synced.length || !Arrays.equals(synced, from, end, written, from, end);
    }

    private int opened(byte[] main, byte[] ahead, int atLeast, int atMost) throws IOException {
        Path file = folder.resolve("torn.db");
        for (String end : List.of("-wal", "-shm")) Files.deleteIfExists(Path.of(file + end));
        Files.write(file, main);
        Files.write(Path.of(file + "-wal"), ahead);
        try (Ledger torn = Ledger.open(file)) {
            List<String> kept =
                    torn.sql.list(row -> row.text("order_number"), "SELECT order_number FROM order_line ORDER BY seq");
            assertThat(kept.size()).isBetween(atLeast, atMost);
            assertThat(kept).isEqualTo(acknowledged.subList(0, kept.size()));
            assertThat(torn.effects().in(Effect.State.INTENDED)).hasSize(kept.size());
            assertThat(torn.faults()).isEmpty();
            return kept.size();
        }
    }

    @Test
    void of_a_commit_that_was_not_synced_all_or_nothing_is_there() throws IOException {
        Path file = folder.resolve("whole.db");
        int whole = 0;
        try (Ledger ledger = Ledger.open(file)) {
            ledger.checkpoint();
            for (int i = 0; i < TRIES; i++) {
                if (i % 40 == 39) ledger.checkpoint();
                write(ledger, 1);
                Both synced = files(file);
                int sure = acknowledged.size();
                write(ledger, 1 + dice.nextInt(3));
                Both written = files(file);
                byte[] ahead = torn(synced.ahead(), written.ahead(), synced.ahead().length);
                if (opened(written.main(), ahead, sure, acknowledged.size()) > sure) whole++;
            }
        }
        System.out.printf("%d commits cut off before the sync: %d of them whole all the same%n", TRIES, whole);
    }

    /** While the write-ahead file is moved into the ledger that file is synced and stays whole. */
    @Test
    void a_ledger_torn_while_the_write_ahead_file_was_moved_into_it_has_all() throws IOException {
        Path file = folder.resolve("whole.db");
        try (Ledger ledger = Ledger.open(file)) {
            ledger.checkpoint();
            for (int i = 0; i < TRIES; i++) {
                write(ledger, 1 + dice.nextInt(4));
                Both synced = files(file);
                ledger.sql.list(row -> true, "PRAGMA wal_checkpoint(PASSIVE)");
                byte[] main = torn(synced.main(), Files.readAllBytes(file), 0);
                opened(main, synced.ahead(), acknowledged.size(), acknowledged.size());
            }
        }
    }

    /** The head of a write-ahead file (sqlite.org/fileformat2.html, 4.1). */
    private static final int HEAD = 32;

    /**
     * After that the write-ahead file is written anew from its beginning, over what was in it: its head first, which is synced
     * before a frame is written (sqlite.org/src/info/ff5be73dee, from memory), else old frames could come back.
     */
    @Test
    void a_write_ahead_file_torn_while_it_began_anew_loses_nothing() throws IOException {
        Path file = folder.resolve("whole.db");
        int anew = 0;
        try (Ledger ledger = Ledger.open(file)) {
            ledger.checkpoint();
            for (int i = 0; i < TRIES; i++) {
                write(ledger, 2 + dice.nextInt(4));
                ledger.sql.list(row -> true, "PRAGMA wal_checkpoint(RESTART)");
                Both synced = files(file);
                int sure = acknowledged.size();
                write(ledger, 1);
                Both written = files(file);
                if (written.ahead()[16] != synced.ahead()[16] || written.ahead()[19] != synced.ahead()[19]) anew++;
                byte[] head = synced.ahead().clone();
                System.arraycopy(written.ahead(), 0, head, 0, HEAD);
                byte[] before = torn(synced.ahead(), head, 0);
                byte[] after = torn(head, written.ahead(), HEAD);
                opened(written.main(), dice.nextInt(4) == 0 ? before : after, sure, acknowledged.size());
            }
        }
        assertThat(anew)
                .as("write-ahead files that began anew, seen by another salt")
                .isGreaterThan(TRIES / 2);
    }
}

package dawnkettle.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowable;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import dawnkettle.trouble.Trouble;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.TreeSet;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A disk that is really full, at one write after the other; one that is read-only; and ledger files that are torn.
 * {@code -Ddisk=300} leaves from none to so many blocks, {@code -Dtorn=10000} tears so often.
 */
class FullDiskTest {
    private static final int MOST_BLOCKS = Integer.getInteger("disk", 60);
    private static final int TORN = Integer.getInteger("torn", 150);

    @TempDir
    Path folder;

    private FullDisk disk;

    @BeforeEach
    void mount() throws Exception {
        disk = FullDisk.mount(folder.resolve("disk"));
    }

    @AfterEach
    void unmount() throws Exception {
        if (disk != null) disk.unmount();
    }

    @Test
    void whichever_write_finds_the_disk_full_nothing_that_was_acknowledged_is_lost() throws Exception {
        assumeTrue(disk != null, "only root can mount a small disk");
        TreeSet<Integer> refusedAt = new TreeSet<>();
        Path file = disk.folder.resolve("ledger.db");
        for (int blocks = 0; blocks <= MOST_BLOCKS; blocks++) {
            disk.makeRoom();
            for (String end : List.of("", "-wal", "-shm")) Files.deleteIfExists(Path.of(file + end));
            List<String> acknowledged = new ArrayList<>();
            try (Ledger ledger = Ledger.open(file)) {
                disk.leave(blocks);
                Throwable refused = catchThrowable(() -> write(ledger, acknowledged, 2_000));
                assertThat(refused)
                        .as("with " + blocks + " blocks left")
                        .isInstanceOf(Trouble.class)
                        .hasMessageContaining("the disk is full, nothing was written; make room");
                refusedAt.add(acknowledged.size());
                assertThat(orders(ledger)).isEqualTo(acknowledged);
                disk.makeRoom();
                write(ledger, acknowledged, 5);
                assertThat(orders(ledger)).as("it goes on where there is room").isEqualTo(acknowledged);
            }
            try (Ledger again = Ledger.open(file)) {
                assertThat(orders(again)).isEqualTo(acknowledged);
                assertThat(integrity(again)).isEqualTo("ok");
            }
        }
        System.out.printf(
                "full with 0 to %d blocks left: refused at %d different writes, from the %d. to the %d.%n",
                MOST_BLOCKS, refusedAt.size(), refusedAt.first() + 1, refusedAt.last() + 1);
        assertThat(refusedAt).as("an order takes some six blocks").hasSizeGreaterThan(MOST_BLOCKS / 8);
    }

    /** Orders in transactions of three lines, steps and effects between them; what returned is acknowledged. */
    private static void write(Ledger ledger, List<String> acknowledged, int most) {
        int from = acknowledged.size();
        for (int i = from; i < from + most; i++) {
            String order = "N" + i;
            ledger.inTransaction(() -> {
                ledger.orders().add(List.of(KeptNight.line(order, 1 + order.length())));
                ledger.orders()
                        .takeFile(
                                String.format("%064d", Integer.parseInt(order.substring(1))), order, KeptNight.CUT_OFF);
            });
            acknowledged.add(order);
            ledger.effects().intend("sheet " + i, Effect.Kind.SHEET, KeptNight.THURSDAY, KeptNight.CUT_OFF);
        }
    }

    private static List<String> orders(Ledger ledger) {
        return ledger.sql.list(row -> row.text("order_number"), "SELECT order_number FROM order_line ORDER BY seq");
    }

    private static String integrity(Ledger ledger) {
        return String.join("; ", ledger.sql.list(row -> row.text("integrity_check"), "PRAGMA integrity_check"));
    }

    @Test
    void on_a_disk_that_became_read_only_it_says_so_and_keeps_what_it_has() throws Exception {
        assumeTrue(disk != null, "only root can mount a small disk");
        Path file = disk.folder.resolve("ledger.db");
        List<String> acknowledged = new ArrayList<>();
        try (Ledger ledger = Ledger.open(file)) {
            write(ledger, acknowledged, 20);
        }
        assumeTrue(disk.remount("ro"), "this disk can't be made read-only");
        assertThatThrownBy(() -> {
                    try (Ledger ledger = Ledger.open(file)) {
                        write(ledger, acknowledged, 1);
                    }
                })
                .isInstanceOf(Trouble.class)
                .hasMessageStartingWith("ledger " + file + ": it cannot be ")
                .hasMessageContaining("write");
        assertThat(disk.remount("rw")).isTrue();
        try (Ledger ledger = Ledger.open(file)) {
            assertThat(orders(ledger)).isEqualTo(acknowledged);
            assertThat(integrity(ledger)).isEqualTo("ok");
        }
    }

    /** SQLite checks each frame of the write-ahead file, so that a torn one ends at a commit (sqlite.org/walformat.html). */
    @Test
    void a_torn_write_ahead_file_opens_at_a_commit() throws Exception {
        Random dice = new Random(261204);
        Path whole = folder.resolve("whole.db");
        List<String> acknowledged = new ArrayList<>();
        byte[] base;
        byte[] log;
        try (Ledger ledger = Ledger.open(whole)) {
            ledger.checkpoint();
            write(ledger, acknowledged, 60);
            base = Files.readAllBytes(whole);
            log = Files.readAllBytes(Path.of(whole + "-wal"));
        }
        Path torn = folder.resolve("torn.db");
        int shorter = 0;
        for (int i = 0; i < TORN; i++) {
            byte[] part = i % 2 == 0 ? java.util.Arrays.copyOf(log, dice.nextInt(log.length)) : log.clone();
            if (i % 2 == 1) part[dice.nextInt(part.length)] ^= (byte) (1 << dice.nextInt(8));
            Files.deleteIfExists(Path.of(torn + "-shm"));
            Files.write(torn, base);
            Files.write(Path.of(torn + "-wal"), part);
            try (Ledger ledger = Ledger.open(torn)) {
                List<String> kept = orders(ledger);
                if (kept.size() < acknowledged.size()) shorter++;
                assertThat(kept).as("tear " + i).isEqualTo(acknowledged.subList(0, kept.size()));
                assertThat(integrity(ledger)).as("tear " + i).isEqualTo("ok");
            }
        }
        System.out.printf(
                "%d torn write-ahead files: all opened at a commit, %d of them at an earlier one%n", TORN, shorter);
        assertThat(shorter).isPositive();
    }

    @Test
    void a_ledger_that_was_cut_short_is_noticed() throws Exception {
        Random dice = new Random(261205);
        Path whole = folder.resolve("whole.db");
        try (Ledger ledger = Ledger.open(whole)) {
            write(ledger, new ArrayList<>(), 200);
            ledger.checkpoint();
        }
        byte[] base = Files.readAllBytes(whole);
        Path torn = folder.resolve("torn.db");
        int refused = 0;
        int found = 0;
        for (int i = 0; i < TORN; i++) {
            for (String end : List.of("-wal", "-shm")) Files.deleteIfExists(Path.of(torn + end));
            Files.write(torn, java.util.Arrays.copyOf(base, 1 + dice.nextInt(base.length - FullDisk.BLOCK)));
            try (Ledger ledger = Ledger.open(torn)) {
                String verdict = integrity(ledger);
                assertThat(verdict).as("cut " + i).isNotEqualTo("ok");
                found++;
            } catch (Trouble damaged) {
                assertThat(damaged.getMessage()).startsWith("ledger " + torn + ": it is ");
                refused++;
            }
        }
        System.out.printf(
                "%d ledgers cut short: %d refused at opening, %d found by the check of a copy%n", TORN, refused, found);
        assertThat(refused + found).isEqualTo(TORN);
    }
}

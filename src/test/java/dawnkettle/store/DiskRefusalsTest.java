package dawnkettle.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dawnkettle.trouble.DeviceAway;
import dawnkettle.trouble.DiskAway;
import dawnkettle.trouble.Trouble;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.SQLException;
import java.time.Instant;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the disk may answer, and whether it is asked again. */
class DiskRefusalsTest {
    private static final Instant NOW = Instant.parse("2026-12-03T17:00:00Z");

    @TempDir
    Path folder;

    /** Primary and some extended result codes (sqlite.org/rescode.html). */
    @ParameterizedTest
    @CsvSource({
        "5, BUSY, again",
        "261, BUSY_RECOVERY, again",
        "8, READONLY, ends",
        "264, READONLY_RECOVERY, ends",
        "1544, READONLY_DIRECTORY, ends",
        "10, IOERR, ends",
        "266, IOERR_READ, ends",
        "778, IOERR_WRITE, ends",
        "1034, IOERR_FSYNC, ends",
        "1290, IOERR_DIR_FSYNC, ends",
        "11, CORRUPT, ends",
        "13, FULL, again",
        "14, CANTOPEN, again",
        "26, NOTADB, ends",
        "1, ERROR, mistake",
        "19, CONSTRAINT, mistake"
    })
    void each_answer_of_the_disk_is_tried_again_or_ends_the_process(int code, String name, String what) {
        RuntimeException said =
                new LedgerTrouble(Path.of("ledger.db")).of(new SQLException("[SQLITE_" + name + "]", "", code));

        assertThat(said)
                .isInstanceOf(
                        what.equals("again")
                                ? DeviceAway.class
                                : what.equals("ends") ? DiskAway.class : IllegalStateException.class);
    }

    @Test
    void a_file_beside_an_open_ledger_that_cannot_be_opened_any_more_ends_the_process() {
        assertThat(new LedgerTrouble(Path.of("ledger.db")).whileOpen(new SQLException("[SQLITE_CANTOPEN]", "", 14)))
                .isInstanceOf(DiskAway.class)
                .hasMessage("ledger ledger.db: the files beside it cannot be opened any more; "
                        + "look at the disk, then start again");
    }

    @Test
    void once_the_disk_failed_nothing_is_asked_of_it_again() throws IOException {
        Path file = folder.resolve("ledger.db");
        Ledger ledger = Ledger.open(file);
        StepKey close = StepKey.of("close", KeptNight.THURSDAY);
        ledger.steps().due(close, NOW, NOW);
        ledger.checkpoint();
        ledger.sql.script("PRAGMA query_only = 1"); // what a read-only remount comes to: SQLITE_READONLY

        assertThatThrownBy(() -> ledger.steps().start(close, NOW)).isInstanceOf(DiskAway.class);
        assertThat(ledger.gone()).isPresent();
        assertThatThrownBy(() -> ledger.steps().find(close))
                .isInstanceOf(DiskAway.class)
                .hasMessageEndingWith("it cannot be written; give the service write access to the file and its folder, "
                        + "or look at the disk");
        byte[] before = Files.readAllBytes(file);
        ledger.close();
        assertThat(Files.readAllBytes(file)).as("not even closing writes").isEqualTo(before);
        try (Ledger again = Ledger.open(file)) {
            assertThat(again.steps().find(close)).isPresent();
        }
    }

    /** A real small file system; only the superuser may mount one. */
    @Test
    void on_a_full_disk_nothing_is_half_written_and_room_makes_it_go_on() throws Exception {
        try (SmallDisk disk = SmallDisk.mounted(folder.resolve("disk"), 8)) {
            Path ballast = disk.folder().resolve("ballast");
            Files.write(ballast, new byte[2 << 20]);
            try (Ledger ledger = Ledger.open(disk.folder().resolve("ledger.db"))) {
                int taken = untilFull(ledger);

                assertThat(taken).isBetween(5, 100_000);
                assertThat(ledger.wasFull()).isTrue();
                assertThat(ledger.gone()).isEmpty();
                Files.delete(ballast);
                assertThat(ledger.outbox().queue("after", "s", new byte[9_000], NOW))
                        .isTrue();
                assertThat(ledger.outbox().waiting())
                        .as("all that was said to be kept")
                        .hasSize(taken + 1);
                assertThat(ledger.faults()).isEmpty();
                assertThat(ledger.wasFull()).isFalse();
            }
        }
    }

    private static int untilFull(Ledger ledger) {
        for (int n = 0; n < 100_000; n++)
            try {
                ledger.outbox().queue("mail " + n, "subject", new byte[9_000], NOW);
            } catch (DeviceAway away) {
                assertThat(away)
                        .hasMessageEndingWith(
                                "the disk is full, nothing was written; make room; the ledger itself is sound");
                return n;
            }
        return 100_000;
    }

    @Test
    void a_disk_that_came_back_read_only_is_said_to_be_so_and_has_lost_nothing() throws Exception {
        try (SmallDisk disk = SmallDisk.mounted(folder.resolve("disk"), 8)) {
            Path file = disk.folder().resolve("ledger.db");
            try (Ledger ledger = Ledger.open(file)) {
                ledger.outbox().queue("before", "s", new byte[9], NOW);
            }
            disk.readOnly();
            assertThatThrownBy(() -> {
                        try (Ledger closed = Ledger.open(file)) {
                            closed.outbox().queue("after", "s", new byte[9], NOW);
                        }
                    })
                    .isInstanceOf(Trouble.class)
                    .hasMessageStartingWith("ledger " + file + ": it cannot be ");
            disk.writable();
            try (Ledger again = Ledger.open(file)) {
                assertThat(again.outbox().waiting()).hasSize(1);
            }
        }
    }

    @Test
    void a_folder_that_may_not_be_written_is_said_to_be_so() throws IOException {
        Path closed = Files.createDirectory(folder.resolve("closed"));
        Ledger.open(closed.resolve("ledger.db")).close();
        Files.setPosixFilePermissions(closed, PosixFilePermissions.fromString("r-xr-xr-x"));
        Assumptions.assumeFalse(Files.isWritable(closed), "the superuser writes everywhere");

        assertThatThrownBy(() -> Ledger.open(closed.resolve("ledger.db"))).isInstanceOf(RuntimeException.class);
        Files.setPosixFilePermissions(closed, PosixFilePermissions.fromString("rwxr-xr-x"));
    }
}

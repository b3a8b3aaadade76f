package dawnkettle.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dawnkettle.trouble.DeviceAway;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFileAttributes;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A copy of a real ledger put back in its place, and copies that must never be. */
class PutBackTest {
    private static final Instant NOW = Instant.parse("2026-12-04T07:30:00Z");
    private static final ZoneId ZONE = ZoneId.of("America/New_York");

    @TempDir
    Path folder;

    private Path ledger() {
        return folder.resolve("ledger.db");
    }

    private LedgerCopy copy() {
        return new LedgerCopy(folder.resolve("ledger-2026-12-03.db"));
    }

    private void fill() {
        try (Ledger ledger = Ledger.open(ledger())) {
            KeptNight.fill(ledger);
            ledger.copyTo(copy().file()).seal();
        }
    }

    private void goOn() {
        try (Ledger ledger = Ledger.open(ledger())) {
            ledger.orders().add(List.of(KeptNight.line("A7", 5), KeptNight.line("A8", 6)));
            ledger.orders().takeFile("1".repeat(64), "late.csv", NOW);
            ledger.labels().confirmed(new LabelGroup(KeptNight.FED, "FRY-10", 1, 2), NOW);
        }
    }

    private List<String> names(String begin) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString())
                    .filter(name -> name.startsWith(begin))
                    .sorted()
                    .toList();
        }
    }

    @Test
    void a_checked_copy_stands_in_the_ledgers_place_and_what_stood_there_lies_aside_whole() throws IOException {
        fill();
        goOn();

        PutBack.Done done = new PutBack(ledger()).from(copy(), NOW, ZONE);

        assertThat(done.aside()).contains(folder.resolve("ledger-aside-2026-12-04T02-30-00.db"));
        try (Ledger back = Ledger.open(ledger());
                Ledger aside = Ledger.open(done.aside().orElseThrow())) {
            assertThat(back.orders().lines(KeptNight.THURSDAY)).hasSize(2);
            assertThat(aside.orders().lines(KeptNight.THURSDAY)).hasSize(4);
            assertThat(back.faults()).isEmpty();
        }
        assertThat(names("ledger.db.coming")).isEmpty();
    }

    @Test
    void it_says_what_the_copy_does_not_know_and_keeps_which_labels_are_in_doubt() {
        fill();
        goOn();

        LostSince lost = new PutBack(ledger()).from(copy(), NOW, ZONE).lost().orElseThrow();

        assertThat(lost.orders()).containsExactly("A7", "A8");
        assertThat(lost.files()).containsExactly("late.csv");
        assertThat(lost.labels()).containsExactly(new LabelRows.Labelled(KeptNight.FED, "FRY-10"));
        try (Ledger back = Ledger.open(ledger())) {
            RestoredRows.Restored last = back.restored().last().orElseThrow();
            assertThat(last.isExact()).isTrue();
            assertThat(last.copy()).isEqualTo("ledger-2026-12-03.db");
            assertThat(last.labels()).isEqualTo(lost.labels());
            assertThat(last.from()).isEqualTo(KeptNight.CUT_OFF);
        }
    }

    @Test
    void where_the_ledger_is_damaged_nobody_knows_what_is_lost_and_its_files_lie_aside_together() throws IOException {
        fill();
        Files.write(ledger(), new byte[8_192]);
        Files.writeString(folder.resolve("ledger.db-wal"), "torn");

        PutBack.Done done = new PutBack(ledger()).from(copy(), NOW, ZONE);

        assertThat(done.lost()).isEmpty();
        assertThat(names("ledger-aside"))
                .contains("ledger-aside-2026-12-04T02-30-00.db", "ledger-aside-2026-12-04T02-30-00.db-wal");
        try (Ledger back = Ledger.open(ledger())) {
            assertThat(back.restored().last().orElseThrow().isExact()).isFalse();
            assertThat(back.orders().lines(KeptNight.THURSDAY)).hasSize(2);
        }
    }

    @Test
    void nothing_is_touched_while_the_service_is_at_work_on_it() throws IOException {
        fill();
        byte[] before = Files.readAllBytes(ledger());

        try (LedgerHold service = LedgerHold.take(ledger()).orElseThrow()) {
            assertThat(service).isNotNull();
            assertThatThrownBy(() -> new PutBack(ledger()).from(copy(), NOW, ZONE))
                    .isInstanceOf(DeviceAway.class)
                    .hasMessage("ledger " + ledger() + ": the service is at work on it; "
                            + "stop the service first (systemctl stop dawnkettle), then say this again");
        }
        assertThat(Files.readAllBytes(ledger())).isEqualTo(before);
        assertThat(names("ledger-aside")).isEmpty();
    }

    @Test
    void the_service_lets_go_of_it_when_it_ends() {
        fill();
        LedgerHold.take(ledger()).orElseThrow().close();

        assertThat(LedgerHold.take(ledger())).isPresent().get().satisfies(LedgerHold::close);
    }

    @Test
    void a_whole_copy_is_sound_and_is_not_changed_by_being_looked_at() throws IOException {
        fill();
        byte[] before = Files.readAllBytes(copy().file());

        LedgerCopy.Verdict verdict = copy().checked();

        assertThat(verdict.problems()).isEmpty();
        assertThat(verdict.isSealed()).isTrue();
        assertThat(verdict.rows()).containsEntry("order_line", 2L);
        assertThat(Files.readAllBytes(copy().file())).isEqualTo(before);
        assertThat(names("ledger-2026-12-03.db"))
                .containsExactly("ledger-2026-12-03.db", "ledger-2026-12-03.db.sha256");
    }

    @Test
    void whoever_puts_it_back_the_ledger_is_its_folders_owners_and_groups_to_write() throws IOException {
        fill();

        new PutBack(ledger()).from(copy(), NOW, ZONE);

        PosixFileAttributes of = Files.readAttributes(ledger(), PosixFileAttributes.class);
        PosixFileAttributes in = Files.readAttributes(folder, PosixFileAttributes.class);
        assertThat(PosixFilePermissions.toString(of.permissions())).isEqualTo("rw-rw----");
        assertThat(of.owner()).isEqualTo(in.owner());
        assertThat(of.group()).isEqualTo(in.group());
    }

    @Test
    void its_checksum_is_written_as_the_usual_tool_reads_it() throws IOException {
        fill();

        assertThat(Files.readString(copy().checksumFile())).matches("[0-9a-f]{64}  ledger-2026-12-03\\.db\n");
    }

    /** Bits flipped, ends cut off, pages torn, zeroed, swapped; each is refused, and the ledger stays as it was. */
    @Test
    void two_hundred_damaged_copies_are_refused_each_and_every_one() throws IOException {
        fill();
        byte[] whole = Files.readAllBytes(copy().file());
        byte[] ledger = Files.readAllBytes(ledger());
        Random random = new Random(20261204);
        Map<String, Integer> refused = new TreeMap<>();
        Map<String, Integer> unsealed = new TreeMap<>();
        Path bare = folder.resolve("bare.db");
        for (int n = 0; n < 200; n++) {
            Damage damage = Damage.values()[n % Damage.values().length];
            byte[] damaged = damage.of(whole.clone(), random);
            assertThat(damaged).as("damage %s no. %s", damage, n).isNotEqualTo(whole);
            Files.write(copy().file(), damaged);
            Files.write(bare, damaged);
            try {
                new PutBack(ledger()).from(copy(), NOW, ZONE);
            } catch (DeviceAway away) {
                assertThat(away).hasMessageContaining("this copy is not sound").hasMessageContaining("checksum");
                refused.merge(damage.name(), 1, Integer::sum);
            }
            if (!new LedgerCopy(bare).checked().isSound()) unsealed.merge(damage.name(), 1, Integer::sum);
        }
        assertThat(refused.values().stream().mapToInt(Integer::intValue).sum())
                .as("refused by its checksum, by damage %s", refused)
                .isEqualTo(200);
        assertThat(Files.readAllBytes(ledger())).isEqualTo(ledger);
        assertThat(unsealed.values().stream().mapToInt(Integer::intValue).sum())
                .as("without a checksum only some is seen (measured: 3 of 40 flipped bits)")
                .isLessThan(200);
    }

    @Test
    void a_copy_whose_checksum_is_damaged_itself_is_refused_as_well() throws IOException {
        fill();
        Files.writeString(copy().checksumFile(), "0".repeat(64) + "  ledger-2026-12-03.db\n");
        assertThat(copy().checked().isSound()).isFalse();
        Files.writeString(copy().checksumFile(), "");
        assertThat(copy().checked().isSound()).isFalse();
    }

    /** How a file comes to be other than it was written. */
    private enum Damage {
        BIT_FLIPPED {
            @Override
            byte[] of(byte[] bytes, Random random) {
                bytes[random.nextInt(bytes.length)] ^= (byte) (1 << random.nextInt(8));
                return bytes;
            }
        },
        END_CUT_OFF {
            @Override
            byte[] of(byte[] bytes, Random random) {
                return java.util.Arrays.copyOf(bytes, random.nextInt(bytes.length));
            }
        },
        PAGE_TORN {
            @Override
            byte[] of(byte[] bytes, Random random) {
                int page = random.nextInt(bytes.length / PAGE) * PAGE;
                byte[] other = new byte[PAGE / 2];
                random.nextBytes(other);
                System.arraycopy(other, 0, bytes, page + PAGE / 2, other.length);
                return bytes;
            }
        },
        PAGE_ZEROED {
            @Override
            byte[] of(byte[] bytes, Random random) {
                int page = random.nextInt(bytes.length / PAGE) * PAGE;
                java.util.Arrays.fill(bytes, page, page + PAGE, (byte) 0);
                return bytes;
            }
        },
        PAGES_SWAPPED {
            @Override
            byte[] of(byte[] bytes, Random random) {
                int pages = bytes.length / PAGE;
                int one = 1 + random.nextInt(pages - 1);
                int other = (one + 1 + random.nextInt(pages - 2)) % pages;
                byte[] kept = java.util.Arrays.copyOfRange(bytes, one * PAGE, (one + 1) * PAGE);
                System.arraycopy(bytes, other * PAGE, bytes, one * PAGE, PAGE);
                System.arraycopy(kept, 0, bytes, other * PAGE, PAGE);
                if (java.util.Arrays.equals(kept, java.util.Arrays.copyOfRange(bytes, one * PAGE, (one + 1) * PAGE)))
                    bytes[one * PAGE] ^= 1;
                return bytes;
            }
        };

        private static final int PAGE = 4_096;

        abstract byte[] of(byte[] bytes, Random random);
    }
}

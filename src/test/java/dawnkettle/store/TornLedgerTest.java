package dawnkettle.store;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.trouble.Trouble;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A ledger as a power cut may leave it: it opens with the first so many of what was written, or refuses in words; never with
 * a part in the middle missing. The suite takes a hundred of each, {@code -Dtorn=10000} so many.
 */
class TornLedgerTest {
    private static final Instant NOW = Instant.parse("2026-12-04T08:00:00Z");
    private static final int MAILS = 40;
    private static final int TRIES = Integer.getInteger("torn", 100);

    @TempDir
    Path folder;

    private byte[] ledger;
    private byte[] writeAhead;

    /** The two files of a ledger at work, as they lie there while it is open. */
    private void write() throws IOException {
        Path file = folder.resolve("whole.db");
        try (Ledger whole = Ledger.open(file)) {
            whole.checkpoint();
            for (int n = 0; n < MAILS; n++)
                whole.outbox().queue(name(n), "subject " + n, new byte[1_500], NOW.plusSeconds(n));
            ledger = Files.readAllBytes(file);
            writeAhead = Files.readAllBytes(folder.resolve("whole.db-wal"));
        }
    }

    private static String name(int n) {
        return String.format(java.util.Locale.ROOT, "mail %03d", n);
    }

    private static List<String> first(int count) {
        return IntStream.range(0, count).mapToObj(TornLedgerTest::name).toList();
    }

    /** @return how many of what was written it holds; -1 where it refused */
    private int opened(int n, byte[] main, byte[] ahead) throws IOException {
        Path file = folder.resolve("torn" + n + ".db");
        Files.write(file, main);
        Files.write(folder.resolve("torn" + n + ".db-wal"), ahead);
        try (Ledger torn = Ledger.open(file)) {
            List<String> held =
                    torn.outbox().waiting().stream().map(QueuedMail::messageId).toList();
            assertThat(held).as("no. %s", n).isEqualTo(first(held.size()));
            assertThat(torn.faults()).as("no. %s", n).isEmpty();
            torn.outbox().queue("after", "s", new byte[9], NOW.plusSeconds(1_000));
            return held.size();
        } catch (Trouble refused) {
            assertThat(refused.getMessage()).startsWith("ledger " + file + ": ").contains("; ");
            return -1;
        } finally {
            for (String end : List.of("", "-wal", "-shm"))
                Files.deleteIfExists(folder.resolve("torn" + n + ".db" + end));
        }
    }

    @Test
    void cut_off_anywhere_the_write_ahead_file_gives_the_first_so_many_of_what_was_written() throws IOException {
        write();
        Random random = new Random(1);
        int last = -1;
        int[] cuts = IntStream.range(0, TRIES)
                .map(n -> random.nextInt(writeAhead.length + 1))
                .sorted()
                .toArray();
        for (int n = 0; n < TRIES; n++) {
            int held = opened(n, ledger, Arrays.copyOf(writeAhead, cuts[n]));
            assertThat(held).as("cut at %s", cuts[n]).isGreaterThanOrEqualTo(Math.max(0, last));
            last = held;
        }
        assertThat(opened(TRIES, ledger, writeAhead)).as("whole").isEqualTo(MAILS);
    }

    @Test
    void a_flipped_bit_in_it_gives_the_first_so_many_too() throws IOException {
        write();
        Random random = new Random(2);
        for (int n = 0; n < TRIES; n++) {
            byte[] flipped = writeAhead.clone();
            flipped[random.nextInt(flipped.length)] ^= (byte) (1 << random.nextInt(8));
            assertThat(opened(n, ledger, flipped)).isBetween(0, MAILS);
        }
    }

    @Test
    void a_torn_page_of_the_ledger_itself_is_refused_or_found_by_its_own_check() throws IOException {
        write();
        try (Ledger whole = Ledger.open(folder.resolve("whole.db"))) {
            KeptNight.fill(whole);
        }
        byte[] main = Files.readAllBytes(folder.resolve("whole.db"));
        List<Integer> written = writtenHalves(main);
        Random random = new Random(3);
        int found = 0;
        for (int n = 0; n < TRIES; n++) {
            byte[] torn = main.clone();
            byte[] half = new byte[2_048];
            random.nextBytes(half);
            System.arraycopy(half, 0, torn, written.get(random.nextInt(written.size())), half.length);
            Path file = Files.write(folder.resolve("page" + n + ".db"), torn);
            found += isFound(file) ? 1 : 0;
            Files.delete(file);
        }
        // What it can't see is room between rows; where half a page has nothing in it, nothing is lost either.
        assertThat(found).isGreaterThanOrEqualTo(TRIES * 9 / 10);
    }

    /** Where the second halves of pages begin that have something in them. */
    private static List<Integer> writtenHalves(byte[] main) {
        return IntStream.range(0, main.length / 4_096)
                .map(page -> page * 4_096 + 2_048)
                .filter(half -> IntStream.range(half, half + 2_048).anyMatch(at -> main[at] != 0))
                .boxed()
                .toList();
    }

    private static boolean isFound(Path file) {
        return !new LedgerCopy(file).checked().isSound();
    }
}

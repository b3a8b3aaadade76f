package dawnkettle.store;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.book.OrderNumber;
import dawnkettle.store.LedgerCopy.Verdict;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ChainRowsTest {
    @TempDir
    Path folder;

    private Ledger ledger;

    @BeforeEach
    void keepANight() {
        ledger = Ledger.open(folder.resolve("ledger.db"));
        KeptNight.fill(ledger);
    }

    @AfterEach
    void close() {
        ledger.close();
    }

    @Test
    void each_link_holds_the_rows_since_the_one_before_and_none_is_added_for_nothing() {
        assertThat(ledger.chain().add(KeptNight.CUT_OFF)).isGreaterThan(15);
        assertThat(ledger.chain().add(KeptNight.CUT_OFF)).isZero();
        ledger.orders().add(List.of(KeptNight.line("A9", 3)));
        assertThat(ledger.chain().add(KeptNight.CUT_OFF)).isEqualTo(1);
        assertThat(ledger.chain().broken()).isEmpty();
    }

    /** The digest is SHA-256 of the rows' text, each ended by a line feed, made here by hand. */
    @Test
    void a_part_is_the_sha_256_of_the_text_of_its_rows() throws Exception {
        ledger.chain().add(KeptNight.CUT_OFF);
        String text = ledger.sql
                .first(
                        row -> row.text("t"),
                        "SELECT quote(production_date) || ',' || quote(closed_at) || ',' || quote(line_count) || ',' ||"
                                + " quote(pack_count) AS t FROM book_close")
                .orElseThrow();
        String hash =
                HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest((text + "\n").getBytes()));
        assertThat(ledger.sql.first(
                        row -> row.text("hash"), "SELECT hash FROM chain_part WHERE rows_of = 'book_close'"))
                .contains(hash);
    }

    /** Each fault is put in past the triggers, as a bug, a damaged disk or somebody's hand would. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
        UPDATE order_line SET packs = 9 WHERE order_number = 'A2'    | rows of "order_line" after number 0 up to 2 are not as they were written: 2 then, 2 now, with other words
        DELETE FROM order_line WHERE order_number = 'A2'             | rows of "order_line" after number 0 up to 2 are not as they were written: 2 then, 1 now
        UPDATE plan SET json = '{}'                                  | rows of "plan" of 2026-12-03 revision 1 are not as they were written: 1 then, 1 now, with other words
        DELETE FROM book_close_line WHERE order_number = 'A2'        | rows of "book_close_line" of 2026-12-03 are not as they were written: 2 then, 1 now
        UPDATE step_event SET at = at + 1                            | rows of "step_event" after number 0 up to
        UPDATE label_group SET to_number = to_number + 1             | rows of "label_group" after number 0 up to
        DELETE FROM chain_part WHERE rows_of = 'plan'                | link 1 of the ledger's chain is not as it was written
        UPDATE chain_part SET hash = replace(hash, substr(hash, 9, 1), 'x')    | link 1 of the ledger's chain is not as it was written
        DELETE FROM chain WHERE seq = 1                              | link 2 of the ledger's chain is not as it was written
        """)
    void an_old_row_that_is_not_as_it_was_written_is_found_and_said(String fault, String sentence) {
        ledger.chain().add(KeptNight.CUT_OFF);
        ledger.orders().add(List.of(KeptNight.line("A9", 3)));
        ledger.chain().add(KeptNight.CUT_OFF);
        plant(fault);

        assertThat(ledger.chain().broken()).anySatisfy(said -> assertThat(said).startsWith(sentence));
    }

    @Test
    void in_a_month_of_nights_every_old_row_is_looked_at() {
        for (int night = 0; night < 60; night++) {
            ledger.orders().add(List.of(KeptNight.line("B" + night, 3)));
            ledger.chain().add(KeptNight.CUT_OFF);
        }
        plant("UPDATE order_line SET packs = 4 WHERE order_number = 'B20'");
        long noticed = KeptNight.FRIDAY
                .datesUntil(KeptNight.FRIDAY.plusDays(30))
                .filter(day -> !ledger.chain().brokenOf(day).isEmpty())
                .count();
        assertThat(noticed).isEqualTo(1);
        assertThat(ledger.chain().broken()).hasSize(1);
    }

    @Test
    void erased_mails_and_a_new_column_leave_the_chain_whole() {
        ledger.outbox().queue("2026-12-04.summary.1", "Friday", new byte[] {1}, KeptNight.CUT_OFF);
        ledger.outbox().sending("2026-12-04.summary.1", KeptNight.CUT_OFF);
        ledger.outbox().sent("2026-12-04.summary.1", KeptNight.CUT_OFF);
        ledger.chain().add(KeptNight.CUT_OFF);
        ledger.erased().blank(List.of("2026-12-04.summary.1"), KeptNight.CUT_OFF, "asked for");
        ledger.sql.script("ALTER TABLE order_line ADD COLUMN said TEXT");

        assertThat(ledger.outbox().message("2026-12-04.summary.1")).isEmpty();
        assertThat(ledger.chain().broken()).isEmpty();
        assertThat(ledger.chain().add(KeptNight.CUT_OFF))
                .as("that it was erased")
                .isEqualTo(1);
    }

    @Test
    void a_copy_has_the_chain_and_says_which_old_rows_were_changed_in_it() {
        ledger.chain().add(KeptNight.CUT_OFF);
        LedgerCopy sound = ledger.copyTo(folder.resolve("sound.db"));
        assertThat(sound.changed(KeptNight.FRIDAY)).isEmpty();
        plant("UPDATE amendment SET packs = 1");
        Verdict verdict = ledger.copyTo(folder.resolve("changed.db")).checked();

        assertThat(verdict.isSound()).as("it may be put back").isTrue();
        assertThat(verdict.changed())
                .containsExactly(
                        "rows of \"amendment\" after number 0 up to 1 are not as they were written: 1 then, 1 now,"
                                + " with other words");
        assertThat(ledger.orders().lines(KeptNight.FRIDAY)).extracting("order").contains(new OrderNumber("A1"));
    }

    private void plant(String fault) {
        ledger.sql.script("PRAGMA foreign_keys = OFF");
        ledger.sql
                .list(row -> row.text("name"), "SELECT name FROM sqlite_schema WHERE type = 'trigger'")
                .forEach(trigger -> ledger.sql.script("DROP TRIGGER " + trigger));
        ledger.sql.script(fault);
    }
}

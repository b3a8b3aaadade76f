package dawnkettle.store;

import static dawnkettle.store.KeptNight.THURSDAY;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dawnkettle.book.ClosedBook;
import dawnkettle.plan.DayPlan;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ConservationTest {
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
    void a_night_by_the_rules_breaks_none() {
        assertThat(ledger.broken(THURSDAY)).isEmpty();
    }

    @Test
    void a_line_that_was_cancelled_after_the_close_need_not_be_in_the_plan() {
        plant("DELETE FROM plan_order WHERE order_number = 'A2'");
        plant("INSERT INTO amendment (order_number, line, packs, source, origin, taken_at, late)"
                + " VALUES ('A2', 1, 0, 'file', 'changes.csv:2:1', 0, 1)");

        assertThat(ledger.broken(THURSDAY))
                .doesNotContain("order A2 line 1 was closed in the book and is not in the plan");
    }

    /** Each fault is put in past the triggers, as a bug or a damaged disk would. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
        UPDATE book_close SET pack_count = 25                             | the close says 25 packs, its lines add up to 24
        DELETE FROM plan_order WHERE order_number = 'A2'                  | order A2 line 1 was closed in the book and is not in the plan
        UPDATE plan_order SET packs = 9 WHERE order_number = 'A2'         | order A2 line 1 was closed with 8 packs and is planned as 9 without a late change
        DELETE FROM book_close_line WHERE order_number = 'A2'             | order A2 line 1 is in the plan, but was neither closed nor late
        UPDATE plan_order SET planned_packs = 7 WHERE order_number = 'A2' | order A2 line 1 has 1 packs declined without a reason
        UPDATE plan_allocation SET packs = 7 WHERE order_number = 'A2'    | order A2 line 1 is planned with 8 packs and gets 7
        UPDATE plan_pack SET packs = 20                                   | lot 261203-FI01 fills 20 packs of "FIRM-12" and 24 are given away
        UPDATE plan_pack SET lot = '261203-FR01'                          | order A2 line 1 gets "FIRM-12" of lot 261203-FI01, which the plan does not make
        UPDATE plan_label SET packs = 29                                  | lot 261203-FI01 has 30 packs of "FIRM-12" and labels for 29
        UPDATE plan_pack SET cases = 3                                    | lot 261203-FI01 has 3 whole cases of "FIRM-12" and labels for 2
        UPDATE label_group SET to_number = 4                              | lot 261203-FI01 needs 3 labels of "FIRM-12" and 4 came out
        UPDATE plan_tub SET beans_mg = 7000000                            | tub T1 holds 7000 g of beans for batches that take 6000 g
        UPDATE plan_batch_tub SET beans_mg = 5000000                      | lot 261203-FI01 takes 6000 g of beans and its tubs give 5000 g
        UPDATE step SET state = 'failed'                                  | step close stands as failed and its history as done
        """)
    void each_broken_law_is_said_in_a_sentence(String fault, String sentence) {
        plant(fault);

        assertThat(ledger.broken(THURSDAY)).contains(sentence);
    }

    @Test
    void a_step_done_twice_is_said() {
        ledger.sql.script("DROP INDEX step_done_once");
        plant("INSERT INTO step_event (step, business_date, revision, state, at, note) "
                + "SELECT step, business_date, revision, state, at, note FROM step_event WHERE state = 'done'");

        assertThat(ledger.broken(THURSDAY)).containsExactly("step close was done 2 times");
    }

    @Test
    void a_run_of_labels_that_is_done_must_have_printed_them_all() {
        plant("UPDATE label_group SET to_number = 2");
        assertThat(ledger.broken(THURSDAY)).as("it is still printing").isEmpty();

        plant("UPDATE effect SET state = 'done'");
        assertThat(ledger.broken(THURSDAY))
                .containsExactly("lot 261203-FI01 needs 3 labels of \"FIRM-12\" and 2 came out");
    }

    @Test
    void a_plan_is_kept_once_and_the_last_revision_is_in_force() {
        ClosedBook book = ledger.closes().find(THURSDAY).orElseThrow();
        DayPlan first = KeptNight.plan(1, book);
        ledger.plans().keep(first, "{\"revision\":1}");
        assertThatThrownBy(() -> ledger.plans().keep(first, "{\"revision\":0}"))
                .hasMessage("revision 1 of 2026-12-03 is kept already, with other content");

        assertThat(ledger.plans().nextRevision(THURSDAY)).isEqualTo(2);
        ledger.plans().keep(KeptNight.plan(2, book), "{\"revision\":2}");

        assertThat(ledger.plans().latest(THURSDAY).orElseThrow().json()).isEqualTo("{\"revision\":2}");
        assertThat(ledger.plans().find(THURSDAY, 1).orElseThrow().json()).isEqualTo("{\"revision\":1}");
        assertThat(ledger.plans().destinations(KeptNight.LOT)).hasSize(2);
        assertThat(ledger.broken(THURSDAY)).isEmpty();
    }

    private void plant(String fault) {
        ledger.sql.script("PRAGMA foreign_keys = OFF");
        ledger.inTransaction(() -> ledger.sql
                .list(row -> row.text("name"), "SELECT name FROM sqlite_schema WHERE type = 'trigger'")
                .forEach(trigger -> ledger.sql.script("DROP TRIGGER " + trigger)));
        ledger.sql.script(fault);
    }
}

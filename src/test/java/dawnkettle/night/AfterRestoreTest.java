package dawnkettle.night;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.store.Effect;
import dawnkettle.store.LabelRows;
import dawnkettle.store.Ledger;
import dawnkettle.store.RestoredRows;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Labels of a ledger that was put back: none prints twice. */
class AfterRestoreTest {
    @TempDir
    Path folder;

    private Ledger ledger;
    private LabelShop shop;

    @BeforeEach
    void open() {
        ledger = Ledger.open(folder.resolve("ledger.db"));
        shop = new LabelShop(ledger);
    }

    @AfterEach
    void close() {
        ledger.close();
    }

    private void putBack(boolean isExact, LabelRows.Labelled... labels) {
        ledger.restored()
                .note(new RestoredRows.Restored(
                        shop.now.minus(Duration.ofMinutes(5)),
                        "ledger-2026-12-04.db",
                        shop.now.minus(Duration.ofHours(20)),
                        isExact,
                        List.of(labels)));
    }

    private void tick() {
        new PrintLabels(shop.office).run(LabelShop.PLAN);
    }

    @Test
    void labels_that_came_out_since_the_copy_are_in_doubt_and_all_others_print() {
        putBack(true, new LabelRows.Labelled(LabelShop.MOST.lot(), LabelShop.MOST.product()));

        tick();
        tick();

        assertThat(shop.printer.runsOfMost()).isEmpty();
        assertThat(shop.printer.printed).isNotEmpty();
        assertThat(ledger.effects()
                        .find(BrokenRuns.key(LabelShop.MOST))
                        .orElseThrow()
                        .state())
                .isEqualTo(Effect.State.AMBIGUOUS);
        assertThat(new BrokenRuns(shop.office).open())
                .singleElement()
                .satisfies(run -> assertThat(run.said())
                        .startsWith("lot " + LabelShop.MOST.lot() + " " + LabelShop.MOST.product()
                                + ": no label is certain, look at 1 to " + LabelShop.MOST.count()));
    }

    @Test
    void where_nobody_can_say_what_came_out_no_label_of_that_day_prints_by_itself() {
        putBack(false);

        tick();

        assertThat(shop.printer.printed).isEmpty();
        assertThat(new BrokenRuns(shop.office).open())
                .hasSize(LabelShop.PLAN.labels().size());
    }

    @Test
    void a_person_counts_and_prints_what_is_missing_and_it_is_over() {
        putBack(false);
        tick();
        LabelsAgain.Asked all = new LabelsAgain.Asked(
                LabelShop.MOST.lot().text(),
                java.util.Optional.of(LabelShop.MOST.product()),
                1,
                LabelShop.MOST.count(),
                "none is there");

        new LabelsAgain(shop.office).print(all);
        tick();

        assertThat(shop.printer.printed).hasSize(LabelShop.MOST.count()).allMatch(label -> label.endsWith(" copy"));
        assertThat(ledger.effects()
                        .find(BrokenRuns.key(LabelShop.MOST))
                        .orElseThrow()
                        .state())
                .isEqualTo(Effect.State.DONE);
    }

    @Test
    void without_a_putting_back_all_print_as_ever() {
        tick();

        assertThat(shop.printer.runsOfMost()).isNotEmpty();
    }
}

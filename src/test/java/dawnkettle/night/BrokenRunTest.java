package dawnkettle.night;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.label.LabelCopies;
import dawnkettle.label.LabelRun;
import dawnkettle.store.Effect;
import dawnkettle.store.LabelGroup;
import dawnkettle.store.Ledger;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A run of labels that breaks off in its second group, and what a person is told of it. */
class BrokenRunTest {
    private static final int COUNT = LabelShop.MOST.count();
    private static final String LOT = "lot " + LabelShop.MOST.lot() + " " + LabelShop.MOST.product();
    private static final String COMMAND =
            "`print labels --lot " + LabelShop.MOST.lot() + " --product " + LabelShop.MOST.product();

    private static final String SAID = LOT + ": labels 1 to 4 are certain, look at 5 to 8, 9 to " + COUNT
            + " are not printed: print them with " + COMMAND + " --from 9 --to " + COUNT + " --why …`";

    @TempDir
    Path folder;

    private Ledger ledger;
    private LabelShop shop;

    @BeforeEach
    void open() {
        assertThat(COUNT).isGreaterThan(12);
        ledger = Ledger.open(folder.resolve("ledger.db"));
        shop = new LabelShop(ledger);
    }

    @AfterEach
    void close() {
        ledger.close();
    }

    private void night() {
        new PrintLabels(shop.office).run(LabelShop.PLAN);
    }

    private Effect.State state() {
        return ledger.effects()
                .find(BrokenRuns.key(LabelShop.MOST))
                .orElseThrow()
                .state();
    }

    @Test
    void it_is_told_exactly_and_never_gone_on_with_by_itself() {
        shop.printer.stopAt = 6;
        night();
        shop.printer.stopAt = 0;
        shop.now = shop.now.plus(Duration.ofHours(2));
        night();

        assertThat(shop.story).contains(SAID);
        assertThat(new BrokenRuns(shop.office).open())
                .extracting(BrokenRun::said)
                .containsExactly(SAID);
        assertThat(shop.printer.printed.stream().filter(one -> one.startsWith(LOT.substring(4))))
                .hasSize(4);
        assertThat(state()).isEqualTo(Effect.State.AMBIGUOUS);
    }

    @Test
    void the_other_lots_are_printed_all_the_same() {
        shop.printer.stopAt = 6;
        night();

        int others = LabelShop.PLAN.labels().stream()
                        .mapToInt(label -> label.count())
                        .sum()
                - COUNT;
        assertThat(shop.printer.printed).hasSize(others + 4).doesNotHaveDuplicates();
    }

    @Test
    void a_slip_among_the_labels_says_so_where_the_printer_takes_it() {
        shop.printer.stopAt = 6;
        night();

        LabelRun slip = shop.printer.runsOfMost().get(1);
        assertThat(slip.labels()).extracting(LabelCopies::kind).containsExactly(LabelCopies.Kind.SLIP);
        assertThat(slip.last()).isZero();
        assertThat(slip.labels().get(0).picture())
                .isNotEqualTo(shop.printer.runsOfMost().get(0).labels().get(0).picture());
    }

    @Test
    void a_printer_that_is_gone_gets_no_slip_and_that_is_told() {
        shop.printer.stopAt = 6;
        shop.printer.isGone = true;
        night();

        assertThat(shop.story).contains("no slip says so beside the labels: the label printer is not there");
        assertThat(state()).isEqualTo(Effect.State.AMBIGUOUS);
    }

    @Test
    void the_morning_summary_counts_what_is_certain_and_says_the_rest() {
        shop.printer.stopAt = 6;
        night();

        var labels = new GatherReport(shop.office).of(LabelShop.DAY).labels();
        assertThat(labels.printed()).isEqualTo(shop.printer.printed.size());
        assertThat(labels.uncertain()).containsExactly(SAID);
    }

    @Test
    void a_run_that_was_stopped_cleanly_goes_on_without_what_a_person_printed_meanwhile() {
        shop.printer.stopAt = 6;
        shop.printer.isClean = true;
        night();
        ledger.labels()
                .found(
                        new LabelGroup(LabelShop.MOST.lot(), LabelShop.MOST.product(), 9, 10),
                        shop.now,
                        "printed by hand");
        shop.printer.stopAt = 0;
        shop.now = shop.now.plus(Duration.ofHours(2));
        night();

        assertThat(shop.printer.runsOfMost().stream().map(LabelRun::first)).containsExactly(1, 5, 11);
        assertThat(shop.printer.printed).doesNotHaveDuplicates();
        assertThat(state()).isEqualTo(Effect.State.DONE);
        assertThat(ledger.labels().certain(LabelShop.MOST.lot(), LabelShop.MOST.product()))
                .hasToString("1 to " + COUNT);
    }

    @Test
    void after_a_power_cut_all_that_was_not_confirmed_is_in_doubt() {
        ledger.effects().intend(BrokenRuns.key(LabelShop.MOST), Effect.Kind.LABEL, LabelShop.DAY, shop.now);
        ledger.effects().sending(BrokenRuns.key(LabelShop.MOST), shop.now);
        ledger.labels()
                .confirmed(new LabelGroup(LabelShop.MOST.lot(), LabelShop.MOST.product(), 1, COUNT - 1), shop.now);

        new BrokenRuns(shop.office).interrupted();

        List<BrokenRun> open = new BrokenRuns(shop.office).open();
        assertThat(open)
                .extracting(BrokenRun::said)
                .containsExactly(LOT + ": labels 1 to " + (COUNT - 1) + " are certain, look at " + COUNT
                        + ", print what is not there with " + COMMAND + " --from " + COUNT + " --to " + COUNT
                        + " --why …`");
    }
}

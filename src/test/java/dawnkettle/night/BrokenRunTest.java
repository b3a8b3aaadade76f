package dawnkettle.night;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dawnkettle.label.LabelCopies;
import dawnkettle.label.LabelRun;
import dawnkettle.stock.Fact;
import dawnkettle.stock.Recorded;
import dawnkettle.store.Effect;
import dawnkettle.store.LabelGroup;
import dawnkettle.store.Ledger;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
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

    private static final String LOOK = "print what is not there with " + COMMAND + " --from 5 --to 8 --why …`";
    private static final String BROKEN =
            LOT + ": labels 1 to 4 are certain, look at 5 to 8, 9 to " + COUNT + " come by themselves, " + LOOK;
    private static final String SAID =
            LOT + ": labels 1 to 4 and 9 to " + COUNT + " are certain, look at 5 to 8, " + LOOK;

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

    /** The night's run breaks off, and what surely did not come out is printed at the next try. */
    private void brokenNight() {
        shop.printer.stopAt = 6;
        night();
        shop.printer.stopAt = 0;
        shop.now = shop.now.plus(Duration.ofHours(2));
        night();
    }

    @Test
    void the_rest_is_printed_and_what_is_in_doubt_never_again_by_itself() {
        shop.printer.stopAt = 6;
        night();
        assertThat(shop.story).contains(BROKEN);
        assertThat(new BrokenRuns(shop.office).open())
                .extracting(BrokenRun::said)
                .containsExactly(BROKEN);
        assertThat(state()).isEqualTo(Effect.State.FAILED);

        shop.printer.stopAt = 0;
        for (int i = 0; i < 3; i++) {
            shop.now = shop.now.plus(Duration.ofHours(2));
            night();
        }

        assertThat(shop.story).contains(SAID);
        assertThat(new BrokenRuns(shop.office).open())
                .extracting(BrokenRun::said)
                .containsExactly(SAID);
        assertThat(shop.printer.printed.stream().filter(one -> one.startsWith(LOT.substring(4))))
                .hasSize(COUNT - 4)
                .doesNotHaveDuplicates();
        assertThat(state()).isEqualTo(Effect.State.AMBIGUOUS);
    }

    // As a packer reads it: "1 to 37 printed, look at 38, 39 to 60 printed".
    @Test
    void the_slip_counts_in_the_order_of_the_labels() {
        brokenNight();

        assertThat(new BrokenRuns(shop.office).of(LabelShop.MOST).counted())
                .containsExactly("1 to 4 printed", "look at 5 to 8", "9 to " + COUNT + " printed");
    }

    @Test
    void each_group_that_breaks_off_is_left_in_doubt_and_the_next_is_gone_on_with() {
        for (int stop : new int[] {2, 6, 10}) {
            shop.printer.stopAt = stop;
            night();
            shop.now = shop.now.plus(Duration.ofHours(1));
        }

        assertThat(new BrokenRuns(shop.office).of(LabelShop.MOST).look()).hasToString("1 to 12");
        assertThat(shop.printer.runsOfMost().stream()
                        .filter(run -> run.last() > 0)
                        .map(LabelRun::first))
                .containsExactly(1, 5, 9);
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
        brokenNight();

        assertThat(shop.printer.runsOfMost()).hasSize(3);
        LabelRun slip = shop.printer.runsOfMost().get(2);
        assertThat(slip.labels()).extracting(LabelCopies::kind).containsExactly(LabelCopies.Kind.SLIP);
        assertThat(slip.last()).isZero();
        assertThat(slip.labels().get(0).picture())
                .isNotEqualTo(shop.printer.runsOfMost().get(0).labels().get(0).picture());
    }

    @Test
    void a_printer_that_is_gone_gets_no_slip_and_that_is_told() {
        shop.printer.isGone = true;
        brokenNight();

        assertThat(shop.story).contains("no slip says so beside the labels: the label printer is not there");
        assertThat(state()).isEqualTo(Effect.State.AMBIGUOUS);
    }

    @Test
    void the_morning_summary_counts_what_is_certain_and_says_the_rest() {
        brokenNight();

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
    void after_a_power_cut_only_the_group_on_the_line_is_in_doubt_and_the_rest_is_printed() {
        shop.printer.cutAt = 6;
        assertThatThrownBy(this::night).isInstanceOf(LabelShop.PowerCut.class);
        assertThat(state()).isEqualTo(Effect.State.SENDING);

        shop.printer.cutAt = 0;
        new BrokenRuns(shop.office).interrupted();
        assertThat(new BrokenRuns(shop.office).open())
                .extracting(BrokenRun::said)
                .containsExactly(BROKEN);
        shop.now = shop.now.plus(Duration.ofHours(2));
        night();

        assertThat(new BrokenRuns(shop.office).open())
                .extracting(BrokenRun::said)
                .containsExactly(SAID);
        assertThat(shop.printer.printed).doesNotHaveDuplicates();
        new BrokenRuns(shop.office).interrupted();
        assertThat(new BrokenRuns(shop.office).open())
                .extracting(BrokenRun::said)
                .containsExactly(SAID);
    }

    @Test
    void after_a_power_cut_before_the_first_group_nothing_is_in_doubt() {
        ledger.effects().intend(BrokenRuns.key(LabelShop.MOST), Effect.Kind.LABEL, LabelShop.DAY, shop.now);
        ledger.effects().sending(BrokenRuns.key(LabelShop.MOST), shop.now);

        new BrokenRuns(shop.office).interrupted();

        assertThat(new BrokenRuns(shop.office).open()).isEmpty();
        assertThat(state()).isEqualTo(Effect.State.FAILED);
    }

    @Test
    void a_run_that_an_older_ledger_knows_no_group_of_is_in_doubt_as_a_whole() {
        ledger.effects().intend(BrokenRuns.key(LabelShop.MOST), Effect.Kind.LABEL, LabelShop.DAY, shop.now);
        ledger.effects().sending(BrokenRuns.key(LabelShop.MOST), shop.now);
        LabelGroup all = new LabelGroup(LabelShop.MOST.lot(), LabelShop.MOST.product(), 1, COUNT - 1);
        ledger.labels().confirmed(all, shop.now);
        ledger.labels().inFlight(new LabelGroup(LabelShop.MOST.lot(), LabelShop.MOST.product(), 1, 99_999), shop.now);

        new BrokenRuns(shop.office).interrupted();

        assertThat(new BrokenRuns(shop.office).open())
                .extracting(BrokenRun::said)
                .containsExactly(LOT + ": labels 1 to " + (COUNT - 1) + " are certain, look at " + COUNT
                        + ", print what is not there with " + COMMAND + " --from " + COUNT + " --to " + COUNT
                        + " --why …`");
        assertThat(state()).isEqualTo(Effect.State.AMBIGUOUS);
    }

    @Test
    void a_lot_that_is_written_off_gets_no_label_and_a_slip_to_destroy_those_it_has() {
        shop.printer.stopAt = 6;
        night();
        shop.printer.stopAt = 0;
        ledger.records()
                .add(new Recorded(new Fact.LostBatch(LabelShop.MOST.lot(), "scorched"), shop.now, shop.now, "test"));
        for (int i = 0; i < 3; i++) {
            shop.now = shop.now.plus(Duration.ofHours(2));
            night();
        }

        assertThat(shop.printer.runsOfMost()).hasSize(2);
        assertThat(shop.printer.runsOfMost().get(1).last()).isZero();
        assertThat(shop.story).contains("8 labels of " + LOT + " are void: destroy them");
        assertThat(new PrintLabels(shop.office).open(LabelShop.PLAN))
                .noneMatch(due -> due.label().lot().equals(LabelShop.MOST.lot()));
        assertThatThrownBy(() -> new LabelsAgain(shop.office)
                        .print(new LabelsAgain.Asked(
                                LabelShop.MOST.lot().text(), Optional.of(LabelShop.MOST.product()), 1, 1, "torn")))
                .hasMessage("--lot: no label of \"" + LabelShop.MOST.lot() + "\" is printed; lot "
                        + LabelShop.MOST.lot() + " is written off (scorched); destroy what labels it has");
    }
}

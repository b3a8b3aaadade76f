package dawnkettle.night;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dawnkettle.label.LabelRun;
import dawnkettle.sheet.Sheet;
import dawnkettle.store.Effect;
import dawnkettle.store.Ledger;
import dawnkettle.trouble.BadFile;
import dawnkettle.trouble.DeviceAway;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Labels and sheets that a person asks for, on a real ledger. */
class PrintAgainTest {
    private static final String LOT = LabelShop.MOST.lot().text();
    private static final String PRODUCT = LabelShop.MOST.product();
    private static final int COUNT = LabelShop.MOST.count();

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

    private void night(int stopAt) {
        shop.printer.stopAt = stopAt;
        new PrintLabels(shop.office).run(LabelShop.PLAN);
        shop.printer.stopAt = 0;
    }

    private static LabelsAgain.Asked asked(int from, int to) {
        return new LabelsAgain.Asked(LOT, Optional.of(PRODUCT), from, to, "the ribbon tore");
    }

    private String print(int from, int to) {
        return new LabelsAgain(shop.office).print(asked(from, to));
    }

    private List<Effect> byHand() {
        return ledger.effects().of(LabelShop.DAY).stream()
                .filter(effect -> ByHand.is(effect.key()))
                .toList();
    }

    private List<String> broken() {
        return new BrokenRuns(shop.office).open().stream().map(BrokenRun::said).toList();
    }

    private Effect.State run() {
        return ledger.effects()
                .find(BrokenRuns.key(LabelShop.MOST))
                .orElseThrow()
                .state();
    }

    @Test
    void what_was_in_doubt_and_what_was_missing_is_printed_marked_and_then_nothing_is_in_doubt() {
        night(6);
        assertThat(print(7, COUNT))
                .isEqualTo(
                        "labels 7 to " + COUNT + " of lot " + LOT + " " + PRODUCT + " are printed, marked as a copy");

        assertThat(broken().get(0)).contains("look at 5 to 6, print what is not there");
        assertThat(new LabelsAgain(shop.office).found(asked(5, 6))).contains("labels 5 to 6 of lot");

        assertThat(broken()).isEmpty();
        assertThat(run()).isEqualTo(Effect.State.DONE);
        LabelRun last = shop.printer.runs.get(shop.printer.runs.size() - 1);
        assertThat(last.again()).isTrue();
        assertThat(shop.printer.printed.stream().filter(one -> one.endsWith(" copy")))
                .hasSize(COUNT - 6);
        assertThat(ledger.broken(LabelShop.DAY)).noneMatch(law -> law.contains("came out"));
    }

    @Test
    void each_printing_is_an_effect_of_its_own_and_keeps_why() {
        night(0);
        print(1, 2);
        print(1, 2);

        assertThat(byHand()).hasSize(2).allSatisfy(effect -> {
            assertThat(effect.state()).isEqualTo(Effect.State.DONE);
            assertThat(effect.note()).isEqualTo("labels 1 to 2: the ribbon tore");
        });
        assertThat(ledger.labels().confirmedCount(LabelShop.MOST.lot(), PRODUCT))
                .isEqualTo(COUNT);
        assertThat(new GatherReport(shop.office).of(LabelShop.DAY).labels().printed())
                .isEqualTo(LabelShop.PLAN.labels().stream()
                        .mapToInt(label -> label.count())
                        .sum());
    }

    @Test
    void copies_that_break_off_put_only_labels_in_doubt_that_were_not_certain() {
        night(6);
        shop.printer.stopAt = 3;
        assertThatThrownBy(() -> print(1, 4)).isInstanceOf(DeviceAway.class);
        assertThat(broken().get(0)).contains("labels 1 to 4 are certain, look at 5 to 8,");

        shop.printer.stopAt = 10;
        assertThatThrownBy(() -> print(9, 12)).isInstanceOf(DeviceAway.class);
        assertThat(broken().get(0)).contains("look at 5 to 12, 13 to ");
        assertThat(byHand()).extracting(Effect::state).containsOnly(Effect.State.AMBIGUOUS);
    }

    @Test
    void copies_in_doubt_before_the_nights_own_run_keep_it_from_printing_them() {
        shop.printer.stopAt = 3;
        assertThatThrownBy(() -> print(1, 4)).isInstanceOf(DeviceAway.class);
        night(0);

        assertThat(run()).isEqualTo(Effect.State.AMBIGUOUS);
        assertThat(shop.printer.runsOfMost())
                .extracting(LabelRun::first)
                .contains(5)
                .doesNotContain(2, 3, 4);
        assertThat(shop.printer.printed.stream().filter(one -> one.startsWith(LOT + " " + PRODUCT + " ")))
                .hasSize(COUNT - 4)
                .doesNotHaveDuplicates();
        assertThat(broken().get(0)).contains("labels 5 to " + COUNT + " are certain, look at 1 to 4,");
    }

    @Test
    void a_printer_that_surely_printed_nothing_leaves_nothing_in_doubt() {
        night(0);
        shop.printer.stopAt = 2;
        shop.printer.isClean = true;

        assertThatThrownBy(() -> print(2, 2)).isInstanceOf(DeviceAway.class).hasMessage("out of labels");
        assertThat(byHand()).extracting(Effect::state).containsExactly(Effect.State.FAILED);
        assertThat(broken()).isEmpty();
    }

    @Test
    void what_cannot_be_is_refused_with_its_remedy_and_nothing_is_noted() {
        LabelsAgain labels = new LabelsAgain(shop.office);
        Optional<String> product = Optional.of(PRODUCT);

        assertThatThrownBy(() -> labels.print(new LabelsAgain.Asked("261204-ZZ09", product, 1, 1, "torn")))
                .isInstanceOf(BadFile.class)
                .hasMessage("--lot: no plan has a labelled lot \"261204-ZZ09\"; write it as on the pick sheet or the"
                        + " slip, like 261204-FI01");
        assertThatThrownBy(() -> labels.print(new LabelsAgain.Asked("991399-FI01", product, 1, 1, "torn")))
                .hasMessageContaining("no plan has a labelled lot \"991399-FI01\"");
        assertThatThrownBy(() -> labels.print(new LabelsAgain.Asked("it", product, 1, 1, "torn")))
                .hasMessageContaining("no plan has a labelled lot \"it\"");
        assertThatThrownBy(() -> labels.print(new LabelsAgain.Asked(LOT, Optional.of("NONE"), 1, 1, "torn")))
                .hasMessageContaining("has no labels of \"NONE\"; write ")
                .hasMessageContaining(PRODUCT);
        String shared = LabelShop.PLAN.labels().stream()
                .map(label -> label.lot().text())
                .filter(lot -> LabelShop.PLAN.labels().stream()
                                .filter(label -> label.lot().text().equals(lot))
                                .count()
                        > 1)
                .findFirst()
                .orElseThrow();
        assertThatThrownBy(() -> labels.print(new LabelsAgain.Asked(shared, Optional.empty(), 1, 1, "torn")))
                .hasMessageContaining("--product: lot " + shared + " fills several products; write ");
        assertThatThrownBy(() -> labels.print(asked(1, COUNT + 1)))
                .hasMessage("--from 1 --to " + (COUNT + 1) + ": lot " + LOT + " has no such labels of \"" + PRODUCT
                        + "\"; write numbers from 1 to " + COUNT + ", the lower first");
        assertThatThrownBy(() -> labels.print(asked(3, 2))).hasMessageContaining("the lower first");
        assertThatThrownBy(() -> labels.print(asked(0, 2))).hasMessageContaining("numbers from 1 to");
        assertThatThrownBy(() -> labels.print(new LabelsAgain.Asked(LOT, product, 1, 1, " ")))
                .hasMessage("--why: \" \" says nothing; write what happened to the labels");
        assertThatThrownBy(() -> labels.found(asked(1, 2)))
                .hasMessage("--found: none of labels 1 to 2 is in doubt; no label of this lot is");
        assertThat(byHand()).isEmpty();
        assertThat(shop.printer.runs).isEmpty();
    }

    @Test
    void no_date_is_printed_by_hand_either_while_the_clock_is_in_doubt() {
        shop.clockDoubt = Optional.of("the clock was not set since the machine started");

        assertThatThrownBy(() -> print(1, 1))
                .isInstanceOf(DeviceAway.class)
                .hasMessage("no dated label is printed: the clock was not set since the machine started");
        assertThat(shop.printer.runs).isEmpty();
    }

    @Test
    void all_sheets_of_a_plan_are_printed_once_more_each_marked_at_its_foot() {
        List<Sheet> first = new PrintSheets(shop.office, new SheetEffects(shop.office)).sheets(LabelShop.PLAN);

        assertThat(new SheetsAgain(shop.office).print(Optional.empty()))
                .isEqualTo(first.size() + " sheets of 2026-12-04, revision 1, are printed once more, marked at the"
                        + " foot");
        new SheetsAgain(shop.office).print(Optional.of(LabelShop.DAY));

        assertThat(shop.sheets).hasSize(2 * first.size());
        assertThat(shop.sheets)
                .allSatisfy(sheet -> assertThat(sheet.asText())
                        .contains("Second copy, printed by hand Fri 4 Dec, 20:00: keep one, bin the other."));
        assertThat(byHand()).hasSize(2 * first.size()).extracting(Effect::state).containsOnly(Effect.State.DONE);
        assertThat(new GatherReport(shop.office).of(LabelShop.DAY).sheets().printed())
                .isEmpty();
    }

    @Test
    void sheets_of_a_day_without_a_plan_are_refused() {
        assertThatThrownBy(() -> new SheetsAgain(shop.office).print(Optional.of(LocalDate.of(2026, 12, 5))))
                .isInstanceOf(BadFile.class)
                .hasMessage("--day: \"2026-12-05\" has no plan; the last day that has one is 2026-12-04");
    }
}

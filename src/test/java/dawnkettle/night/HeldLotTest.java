package dawnkettle.night;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dawnkettle.measure.Celsius;
import dawnkettle.plan.PlannedBatch;
import dawnkettle.stock.Fact;
import dawnkettle.stock.LotCode;
import dawnkettle.stock.Recorded;
import dawnkettle.store.Effect;
import dawnkettle.store.Ledger;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A held lot leaves nothing: no label, neither of the night nor by hand, until a named person lets it go. */
class HeldLotTest {
    private static final LotCode LOT = LabelShop.MOST.lot();
    private static final String PRODUCT = LabelShop.MOST.product();

    @TempDir
    Path folder;

    private Ledger ledger;
    private LabelShop shop;
    private int line;

    @BeforeEach
    void open() {
        ledger = Ledger.open(folder.resolve("ledger.db"));
        shop = new LabelShop(ledger);
    }

    @AfterEach
    void close() {
        ledger.close();
    }

    private Recorded write(Fact fact) {
        Instant now = shop.office.now();
        Recorded recorded = new Recorded(fact, now, now, "test " + ++line);
        ledger.records().add(recorded);
        return recorded;
    }

    private void night() {
        new PrintLabels(shop.office).run(LabelShop.PLAN);
    }

    private Optional<Effect> run() {
        return ledger.effects().find(BrokenRuns.key(LabelShop.MOST));
    }

    @Test
    void no_label_of_a_held_lot_is_printed_and_the_summary_says_who_waits() {
        write(new Fact.Held(LOT, "looked odd"));
        night();

        assertThat(shop.printer.runsOfMost()).isEmpty();
        assertThat(shop.printer.runs).as("all others are printed").isNotEmpty();
        assertThat(run().orElseThrow().state()).isEqualTo(Effect.State.FAILED);
        assertThat(shop.story).contains("no label of lot " + LOT + " is held: looked odd");
        assertThat(new Gate(shop.office).said(LabelShop.PLAN).get(0))
                .startsWith("lot " + LOT + " is held: looked odd. ")
                .endsWith("customers may not leave; after your decision: record release " + LOT + " by NAME WHY");
        assertThatThrownBy(() -> new LabelsAgain(shop.office)
                        .print(new LabelsAgain.Asked(LOT.text(), Optional.of(PRODUCT), 1, 2, "torn")))
                .hasMessage("--lot: lot \"" + LOT + "\" is held: looked odd; a named person lets it go: record release "
                        + LOT + " by NAME WHY");
    }

    @Test
    void a_released_lot_is_labelled_at_once_and_once() {
        write(new Fact.Held(LOT, "looked odd"));
        night();
        write(new Fact.Released(LOT, "Q. Millrace", "tasted, is well"));
        night();
        night();

        assertThat(run().orElseThrow().state()).isEqualTo(Effect.State.DONE);
        assertThat(shop.printer.printed.stream().filter(one -> one.startsWith(LOT + " " + PRODUCT + " ")))
                .hasSize(LabelShop.MOST.count())
                .doesNotHaveDuplicates();
    }

    @Test
    void a_cook_out_of_limits_holds_the_lot_at_once_and_what_is_made_of_it() {
        PlannedBatch parent = LabelShop.PLAN.batches().stream()
                .filter(batch -> !batch.feeds().isEmpty())
                .findFirst()
                .orElseThrow();
        Recorded cooked = write(new Fact.Cooked(parent.lot(), Celsius.degrees(92), 8));
        Gate gate = new Gate(shop.office);

        assertThat(gate.holdIfOut(cooked).orElseThrow().fact())
                .isEqualTo(new Fact.Held(
                        parent.lot(), "cooked at 92.0 °C for 8 minutes; the limit is 98.0 °C for 5 minutes"));
        LotCode child = LabelShop.PLAN.batch(parent.feeds().get(0).batch()).lot();
        assertThat(gate.held(LabelShop.PLAN)).containsEntry(child, "made from held lot " + parent.lot());
        assertThat(ledger.stock().finished(shop.office.shop(), LabelShop.DAY.plusDays(1)))
                .noneMatch(lot -> lot.lot().equals(parent.lot()));
    }

    @Test
    void what_is_in_limits_or_not_yet_due_holds_nothing() {
        Recorded cooked = write(new Fact.Cooked(LOT, Celsius.degrees(99), 8));
        assertThat(new Gate(shop.office).holdIfOut(cooked)).isEmpty();
        assertThat(new Gate(shop.office).held(LabelShop.PLAN)).isEmpty();
    }
}

package dawnkettle.floor;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Random;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;

/** What holds for the run of any floor. */
class RunEngineProperties {
    private static final Budget SMALL = new Budget(60, 7, 60_000);

    @Provide
    Arbitrary<FloorDay> days() {
        return AnyFloor.day();
    }

    @Property
    void a_run_breaks_no_rule(@ForAll("days") FloorDay day) {
        assertThat(RunCheck.broken(day, RunEngine.run(day, SMALL))).isEmpty();
    }

    @Property(tries = 300)
    void the_same_seed_and_budget_give_the_same_run(@ForAll("days") FloorDay day) {
        assertThat(RunEngine.run(day, SMALL)).isEqualTo(RunEngine.run(day, SMALL));
    }

    @Property(tries = 300)
    void the_search_never_ends_worse_than_it_began(@ForAll("days") FloorDay day) {
        Run run = RunEngine.run(day, SMALL);
        Run rules = RunEngine.run(day, new Budget(0, 7, 60_000));
        assertThat(run.score()).isLessThanOrEqualTo(run.first());
        assertThat(rules.score()).isEqualTo(run.first());
        assertThat(run.decodes()).isLessThanOrEqualTo(SMALL.decodes());
    }

    @Property
    void a_later_revision_keeps_what_has_started(
            @ForAll("days") FloorDay day, @ForAll @IntRange(max = 200) int minute) {
        FloorDay later = AnyFloor.later(day, RunEngine.run(day, SMALL), minute);
        Run revision = RunEngine.run(later, SMALL);
        assertThat(RunCheck.broken(later, revision)).isEmpty();
    }

    @Property(tries = 1000)
    void no_run_beats_the_bound(@ForAll("days") FloorDay day, @ForAll @IntRange(max = 200) int minute) {
        assertNotBeaten(RunEngine.run(day, SMALL));
        assertNotBeaten(RunEngine.run(AnyFloor.later(day, RunEngine.run(day, SMALL), minute), SMALL));
    }

    private static void assertNotBeaten(Run run) {
        if (!run.unplaced().isEmpty()) return;
        assertThat(run.bound().finish()).isLessThanOrEqualTo(run.score().finish());
        assertThat(run.bound().weightedLateness())
                .isLessThanOrEqualTo(run.score().weightedLateness());
    }

    @Property(tries = 300)
    void an_order_laid_piece_by_piece_stands_as_one_laid_at_once(@ForAll("days") FloorDay day, @ForAll Random random) {
        var pieces = new Pieces(day);
        var floor = new Floor(pieces.asDay());
        int[] order = pieces.inOrderOf(new Rules(new Floor(day)).orders().get(0));
        var atOnce = new Sequence(floor, pieces);
        atOnce.lay(order, order.length);
        var bits = new Sequence(floor, pieces);
        for (int piece = 0; piece < 20; piece++) {
            int depth = random.nextInt(order.length + 1);
            bits.clear();
            bits.lay(order, depth);
            int pushes = bits.pushes();
            bits.lay(order, order.length);
            bits.backTo(depth, pushes, order);
        }
        bits.lay(order, order.length);
        assertThat(Tally.score(bits.grave, bits.mild)).isEqualTo(Tally.score(atOnce.grave, atOnce.mild));
        assertThat(Arrays.toString(bits.chain.start)).isEqualTo(Arrays.toString(atOnce.chain.start));
    }
}

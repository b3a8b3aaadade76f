package dawnkettle.night;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.label.Dots;
import dawnkettle.label.Framing;
import dawnkettle.label.LabelCopies;
import dawnkettle.label.LabelRun;
import dawnkettle.label.LotLabels;
import dawnkettle.label.PrinterProfile;
import dawnkettle.label.SampleProfiles;
import dawnkettle.store.Ledger;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the demonstration night's labels cost on the line, against every label sent as plain dots. */
class DemoNightOnTheLineTest {
    /** By arithmetic: ten bits a byte at 115200 baud. */
    private static final int BYTES_A_SECOND = 11_520;

    private static final int GROUP = 10;

    @TempDir
    Path folder;

    private static long raw(LabelRun run) {
        long raw = 0;
        for (LabelCopies copies : run.labels()) {
            Dots fed = copies.fed();
            raw += (long) copies.copies() * fed.rowBytes() * fed.height();
        }
        return raw;
    }

    @Test
    void families_that_repeat_need_a_quarter_of_the_plain_dots_at_most_and_any_is_done_within_half_an_hour() {
        List<LabelRun> runs;
        try (Ledger ledger = Ledger.open(folder.resolve("ledger.db"))) {
            LabelShop shop = new LabelShop(ledger);
            LotLabels lots = shop.office.edges().labels().lots();
            runs = LabelShop.PLAN.labels().stream()
                    .map(label -> lots.run(label, shop.office.shop().product(label.product())))
                    .toList();
        }
        long raw = runs.stream().mapToLong(DemoNightOnTheLineTest::raw).sum();
        Map<String, Long> bytes = new TreeMap<>();
        for (PrinterProfile profile : SampleProfiles.all())
            bytes.put(
                    profile.name(),
                    runs.stream()
                            .mapToLong(run -> new Framing(profile).run(run, GROUP).length)
                            .sum());
        // The line carries each picture once a lot, and this night has 194 pictures for some 450 labels and slips: its
        // lots
        // are small. FramingTest has the eighth that a lot of 48 comes to; here it is a quarter, and at 9600 baud more
        // than
        // the quarter of an hour that a shop would like. A known gap: the dots would have to be packed tighter.
        assertThat(bytes.get("text-with-hex-runs")).isLessThanOrEqualTo(raw / 4);
        assertThat(bytes.get("line-words")).isLessThanOrEqualTo(raw / 4);
        assertThat(bytes.get("rows-behind-escape")).isLessThan(raw);
        for (PrinterProfile profile : SampleProfiles.all())
            assertThat(bytes.get(profile.name()) / BYTES_A_SECOND)
                    .as(profile.name())
                    .isLessThan(30 * 60);
    }
}

package dawnkettle.night;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.label.Dots;
import dawnkettle.label.LabelBytes;
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
    /** By arithmetic: ten bits a byte. */
    private static final long QUARTER_HOUR_AT_9600 = 960L * 15 * 60;

    private static final long HALF_HOUR_AT_115200 = 11_520L * 30 * 60;

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

    private List<LabelRun> night() {
        try (Ledger ledger = Ledger.open(folder.resolve("ledger.db"))) {
            LabelShop shop = new LabelShop(ledger);
            LotLabels lots = shop.office.edges().labels().lots();
            return LabelShop.PLAN.labels().stream()
                    .map(label -> lots.run(label, shop.office.shop().product(label.product())))
                    .toList();
        }
    }

    /**
     * An eighth of the plain dots for families that keep pictures by name, and a quarter of an hour at 9600 baud where they
     * are deflated too (the shop's own targets). For one that only repeats, this night of small lots comes to about a quarter
     * of the plain dots, and FramingTest has the eighth that a lot of 48 comes to.
     */
    @Test
    void the_night_takes_a_quarter_of_an_hour_at_9600_baud_and_an_eighth_of_the_plain_dots_where_pictures_are_kept() {
        List<LabelRun> runs = night();
        long raw = runs.stream().mapToLong(DemoNightOnTheLineTest::raw).sum();
        Map<String, Long> bytes = new TreeMap<>();
        for (PrinterProfile profile : SampleProfiles.all()) {
            LabelBytes labels = new LabelBytes(profile, GROUP);
            bytes.put(
                    profile.name(),
                    runs.stream().mapToLong(run -> labels.of(run).length).sum());
        }
        System.out.println(bytes + " of " + raw);
        assertThat(bytes.get("text-with-deflated-dots"))
                .isLessThanOrEqualTo(raw / 8)
                .isLessThanOrEqualTo(QUARTER_HOUR_AT_9600);
        assertThat(bytes.get("text-with-hex-runs")).isLessThanOrEqualTo(raw / 8);
        assertThat(bytes.get("line-words")).isLessThanOrEqualTo(raw / 4);
        assertThat(bytes.get("rows-behind-escape")).isLessThan(raw).isLessThan(HALF_HOUR_AT_115200);
    }
}

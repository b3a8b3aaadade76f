package dawnkettle.draw;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.conf.ReadConfiguration;
import dawnkettle.label.CaseLabels;
import dawnkettle.label.Designs;
import dawnkettle.label.LabelBytes;
import dawnkettle.label.LabelRun;
import dawnkettle.label.LotLabels;
import dawnkettle.label.MarketWording;
import dawnkettle.label.Pitch;
import dawnkettle.label.PrinterProfile;
import dawnkettle.label.SampleProfiles;
import dawnkettle.plan.PlannedLabel;
import dawnkettle.shop.House;
import dawnkettle.shop.Product;
import dawnkettle.shop.Shop;
import dawnkettle.shop.Wording;
import dawnkettle.stock.LotCode;
import dawnkettle.trouble.Problem;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The labels of every product of the demonstration shop. */
class EveryProductTest {
    private static final Designs DESIGNS = SampleLabels.designs();
    private static final Shop SHOP = ReadConfiguration.from(Path.of("conf")).shop();
    private static final LabelTypefaces TYPEFACES = LabelTypefaces.ours();

    private static LotLabels lotLabels(String market, Pitch pitch) {
        House house = SHOP.house();
        CaseLabels labels = new CaseLabels(new House(
                house.name(),
                house.address(),
                house.zone(),
                house.language(),
                house.currency(),
                house.units(),
                house.paper(),
                market));
        return new LotLabels(
                DESIGNS,
                labels,
                new DotDrawing(TYPEFACES, pitch, labels.wording().type().leastXHeight()));
    }

    private static Product on(Product product, String design) {
        Wording wording = product.wording();
        return new Product(
                product.code(),
                product.name(),
                product.recipe(),
                product.packing(),
                product.keeping(),
                new Wording(wording.ingredients(), wording.contains(), wording.storage(), design, wording.gtin()),
                product.price(),
                product.leadDays(),
                product.par());
    }

    @ParameterizedTest
    @ValueSource(strings = {"us", "us-california", "eu", "uk", "codex"})
    void fits_its_design_in_every_market_at_every_pitch(String market) {
        assertThat(MarketWording.find(market)).isPresent();
        for (Pitch pitch : Pitch.COMMON)
            for (Product product : SHOP.products()) {
                String design = product.wording().design().isEmpty()
                        ? "case-100x70"
                        : product.wording().design();
                assertThat(lotLabels(market, pitch).check(on(product, design)))
                        .extracting(Problem::toString)
                        .as("%s at %s", product.code(), pitch)
                        .isEmpty();
            }
    }

    @Test
    void fits_the_long_case_with_linear_symbols_too() {
        for (Pitch pitch : Pitch.COMMON)
            for (Product product : SHOP.products())
                assertThat(lotLabels("us", pitch).check(on(product, "case-100x150")))
                        .extracting(Problem::toString)
                        .as("%s at %s", product.code(), pitch)
                        .isEmpty();
    }

    /** 960 bytes a second at 9600 baud (by arithmetic: ten bits a byte). */
    @Test
    void a_night_of_one_lot_a_product_takes_less_than_a_quarter_of_an_hour_at_9600_baud_where_runs_are_counted() {
        List<LabelRun> runs = new ArrayList<>();
        LocalDate packed = LocalDate.of(2026, 12, 4);
        LotLabels labels = lotLabels("us", new Pitch(8_000));
        for (Product product : SHOP.products()) {
            LocalDate best = CaseLabels.latest(packed, product.keeping());
            LotCode lot = LotCode.of(packed, "FI", runs.size() + 1);
            String elements = "(01)" + product.wording().gtin().orElseThrow() + "(15)"
                    + dawnkettle.label.Gs1Date.write(best) + "(10)" + lot;
            PlannedLabel planned = new PlannedLabel(
                    lot,
                    product.code(),
                    18,
                    List.of(),
                    product.packsInCase(),
                    packed,
                    best,
                    product.wording().gtin(),
                    elements);
            String design = product.wording().design().isEmpty()
                    ? "case-100x70"
                    : product.wording().design();
            runs.add(labels.run(planned, on(product, design)));
        }
        Map<String, Long> seconds = new TreeMap<>();
        for (PrinterProfile profile : SampleProfiles.all())
            seconds.put(profile.name(), bytes(new LabelBytes(profile, 10), runs) / 960);
        assertThat(seconds.get("text-with-hex-runs")).isLessThan(15 * 60);
        assertThat(seconds.get("line-words")).isLessThan(15 * 60);
        // Told, not promised: a family that cannot repeat wants a faster line.
        assertThat(seconds.get("rows-behind-escape")).isGreaterThan(60L * 60);
    }

    private static long bytes(LabelBytes labels, List<LabelRun> runs) {
        return runs.stream().mapToLong(run -> labels.of(run).length).sum();
    }
}

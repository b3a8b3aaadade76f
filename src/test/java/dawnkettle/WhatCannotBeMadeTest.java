package dawnkettle;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.MultiFormatReader;
import com.google.zxing.NotFoundException;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import dawnkettle.export.PlanCheck;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.PlannedLabel;
import dawnkettle.plan.PlannedOrder;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A product that may not be made is declined by name; a shop that lacks a thing goes on without it. */
class WhatCannotBeMadeTest {
    private static final LocalDate DAY = LocalDate.of(2026, 12, 4);

    /** Edge of the piece of a label that is looked at, and how far the next one is, in dots. */
    private static final int PIECE = 240;

    private static final int STEP = 40;

    @TempDir
    Path folder;

    private CopiedShop shop;

    @BeforeEach
    void copy() throws IOException {
        shop = CopiedShop.quick(folder).withoutHistory().with("shop.toml", "decodes = 1500", "decodes = 100");
    }

    private PlayedNight night() throws IOException {
        PlayedNight night = new PlayedNight(shop, DAY, "2026-12-03T05:00");
        night.drop("orders.csv", Files.readString(shop.conf().resolve("rehearsal/orders.csv"), UTF_8));
        return night;
    }

    @Test
    void a_block_that_would_cool_too_slowly_is_declined_with_the_height_that_passes_and_the_rest_is_planned()
            throws IOException {
        shop.with(
                "products.csv",
                "XFIRM-KIT,Extra firm tofu kitchen pack 2 kg,extrafirm,block,2000,,50x160x200",
                "XFIRM-KIT,Extra firm tofu kitchen pack 2 kg,extrafirm,block,2000,,160x200x90");
        try (PlayedNight night = night()) {
            night.until("2026-12-03T16:00");
            DayPlan plan = night.plan();
            // By hand: (4/π)³ · 73/19 falls to 1 in 2 h where π² · 486 mm²/h · (1/160² + 1/200² + 1/h²) is 1.035 an
            // hour: h is 81.2 mm.
            Map<Boolean, List<PlannedOrder>> orders = plan.orders().stream()
                    .collect(Collectors.partitioningBy(
                            order -> order.line().product().equals("XFIRM-KIT")));
            String why =
                    "a block of 160x200x90 mm is not cold in time (57 to 21 °C in 2 h, to 5 °C in 6 h); cut it to 81 mm high or less";
            assertThat(orders.get(true)).isNotEmpty().allSatisfy(order -> {
                assertThat(order.plannedPacks()).isZero();
                assertThat(order.reason()).isEqualTo(why);
            });
            assertThat(orders.get(false))
                    .isNotEmpty()
                    .allSatisfy(order -> assertThat(order.plannedPacks())
                            .isEqualTo(order.line().packs()));
            assertThat(plan.shortages()).singleElement().satisfies(shortage -> {
                assertThat(shortage.product()).isEqualTo("XFIRM-KIT");
                assertThat(shortage.reason()).isEqualTo(why);
            });
            assertThat(plan.labels())
                    .extracting(PlannedLabel::product)
                    .contains("XFIRM-350")
                    .doesNotContain("XFIRM-KIT");
            assertThat(PlanCheck.broken(night.planText())).isEmpty();
            assertThat(String.join(" ", new Left(night.folder).sheetLines("pick")))
                    .contains("cut it to 81 mm high or less");
        }
    }

    @Test
    void a_shop_without_numbers_for_its_cases_prints_labels_without_a_symbol() throws IOException {
        try (PlayedNight night = night()) {
            night.until("2026-12-04T15:30");
            Left left = new Left(night.folder);
            assertThat(symbol(left, "FIRM-400"))
                    .get()
                    .asString()
                    .contains("0119520001000048")
                    .contains("FI0");
            assertThat(symbol(left, "FIRM-BKT"))
                    .get()
                    .asString()
                    .contains("0119520001000079")
                    .contains("FI0");
        }
        withoutNumbers();
        try (PlayedNight night = night()) {
            night.until("2026-12-04T15:30");
            assertThat(night.plan().labels()).isNotEmpty().allSatisfy(label -> {
                assertThat(label.gtin()).isEmpty();
                assertThat(label.elementString()).startsWith("(15)").doesNotContain("(01)");
            });
            assertThat(PlanCheck.broken(night.planText())).isEmpty();
            assertThat(night.told).noneMatch(line -> line.contains("failed") || line.contains("no label"));
            Left left = new Left(night.folder);
            assertThat(left.names("labels", ".png")).hasSameSizeAs(night.plan().labels());
            assertThat(symbol(left, "FIRM-400")).isEmpty();
            assertThat(symbol(left, "FIRM-BKT")).isEmpty();
        }
    }

    private void withoutNumbers() throws IOException {
        folder = Files.createDirectories(folder.resolve("without"));
        copy();
        String products = Files.readString(shop.conf().resolve("products.csv"), UTF_8);
        String without = products.replaceAll(",195200010[0-9]{5},", ",,");
        assertThat(without.length()).isEqualTo(products.length() - 16 * 14);
        shop.holding("products.csv", without);
    }

    /** What a reader that did not draw it finds on the preview of a product's first lot, looking at it piece by piece. */
    private static Optional<String> symbol(Left left, String product) throws IOException {
        String label = left.names("labels", "-" + product + ".png").get(0);
        BufferedImage image =
                ImageIO.read(left.folder().resolve("labels").resolve(label).toFile());
        for (int y = 0; y + PIECE <= image.getHeight(); y += STEP)
            for (int x = 0; x + PIECE <= image.getWidth(); x += STEP) {
                Optional<String> read = read(image.getSubimage(x, y, PIECE, PIECE));
                if (read.isPresent()) return read;
            }
        return Optional.empty();
    }

    private static Optional<String> read(BufferedImage piece) {
        int[] pixels = piece.getRGB(0, 0, PIECE, PIECE, null, 0, PIECE);
        BinaryBitmap seen = new BinaryBitmap(new HybridBinarizer(new RGBLuminanceSource(PIECE, PIECE, pixels)));
        try {
            return Optional.of(new MultiFormatReader()
                    .decode(seen, Map.of(DecodeHintType.POSSIBLE_FORMATS, List.of(BarcodeFormat.DATA_MATRIX)))
                    .getText());
        } catch (NotFoundException nothing) {
            return Optional.empty();
        }
    }
}

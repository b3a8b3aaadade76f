package dawnkettle.draw;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.cost.Chart;
import dawnkettle.cost.ChartScale;
import dawnkettle.mail.Mail;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.TimeZone;
import java.util.stream.IntStream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;

class ChartPicturesTest {
    private static final LocalDate MONDAY = LocalDate.of(2026, 6, 1);

    private static Chart chart(BigDecimal left, BigDecimal right) {
        List<LocalDate> weeks =
                IntStream.range(0, 26).mapToObj(MONDAY::plusWeeks).toList();
        return new Chart(
                "cost",
                "Cost",
                "USD per kg",
                weeks,
                List.of(
                        new Chart.Line("rising", line(left, right)),
                        new Chart.Line("price of beans, Größe", line(BigDecimal.ONE, BigDecimal.ONE))),
                "a rising line");
    }

    private static List<BigDecimal> line(BigDecimal left, BigDecimal right) {
        return IntStream.range(0, 26).mapToObj(i -> i < 13 ? left : right).toList();
    }

    private static BufferedImage read(Mail.Picture picture) throws IOException {
        return ImageIO.read(new ByteArrayInputStream(picture.png().toArray()));
    }

    @Test
    void a_chart_is_a_grey_picture_twice_as_wide_as_a_phone_with_its_words_beside_it() throws IOException {
        Mail.Picture picture = new ChartPictures().draw(chart(new BigDecimal("2.10"), new BigDecimal("2.60")));
        BufferedImage image = read(picture);
        assertThat(image.getColorModel().getNumComponents()).isEqualTo(1);
        assertThat(image.getWidth()).isEqualTo(720);
        assertThat(picture.alternative()).isEqualTo("a rising line");
        assertThat(picture.png().size()).isLessThan(30_000);
        Files.createDirectories(Path.of("target/golden/draw"));
        Files.write(Path.of("target/golden/draw/chart.png"), picture.png().toArray());
    }

    @Test
    void a_higher_figure_stands_higher() throws IOException {
        BufferedImage image = read(new ChartPictures().draw(chart(new BigDecimal("2.00"), new BigDecimal("3.00"))));
        // The thick line is the first dark spot below the legend, in a column of the left and of the right half.
        assertThat(firstInk(image, 560)).isLessThan(firstInk(image, 220) - 40);
    }

    private static int firstInk(BufferedImage image, int x) {
        return IntStream.range(112, image.getHeight())
                .filter(y -> image.getRaster().getSample(x, y, 0) < 64)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void the_scale_begins_at_zero_and_steps_by_handy_figures() {
        assertThat(ChartScale.upTo(new BigDecimal("2.34")).labels())
                .containsExactly("0.0", "0.5", "1.0", "1.5", "2.0", "2.5");
        assertThat(ChartScale.upTo(new BigDecimal("54.1")).labels())
                .containsExactly("0", "10", "20", "30", "40", "50", "60");
        assertThat(ChartScale.upTo(new BigDecimal("0.053")).labels())
                .containsExactly("0.00", "0.01", "0.02", "0.03", "0.04", "0.05", "0.06");
        assertThat(ChartScale.upTo(BigDecimal.ZERO).labels()).containsExactly("0", "1");
    }

    @Test
    void the_same_chart_gives_the_same_bytes_on_every_machine() {
        Chart chart = chart(new BigDecimal("2.10"), new BigDecimal("2.60"));
        Locale locale = Locale.getDefault();
        TimeZone zone = TimeZone.getDefault();
        Mail.Picture here = new ChartPictures().draw(chart);
        try {
            Locale.setDefault(Locale.GERMANY);
            TimeZone.setDefault(TimeZone.getTimeZone("Asia/Tokyo"));
            assertThat(new ChartPictures().draw(chart)).isEqualTo(here);
        } finally {
            Locale.setDefault(locale);
            TimeZone.setDefault(zone);
        }
    }

    @Test
    void a_week_alone_can_be_drawn() throws IOException {
        Chart chart = new Chart(
                "cost",
                "Cost",
                "USD per kg",
                List.of(MONDAY),
                List.of(new Chart.Line("a", List.of(BigDecimal.ONE))),
                "a");
        assertThat(read(new ChartPictures().draw(chart)).getWidth()).isEqualTo(720);
    }
}

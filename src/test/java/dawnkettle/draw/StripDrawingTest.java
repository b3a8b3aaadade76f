package dawnkettle.draw;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.mail.DayStrip;
import dawnkettle.mail.Mail;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.stream.IntStream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;

class StripDrawingTest {
    private static final Instant FOUR = Instant.parse("2026-12-04T09:00:00Z");

    private static Mail.Picture picture(Instant to) {
        DayStrip strip = new DayStrip(
                "day",
                "The day",
                ZoneId.of("America/New_York"),
                List.of(
                        new DayStrip.Lane("grind", List.of(new DayStrip.Bar(FOUR, to))),
                        new DayStrip.Lane("a very long name of a kind of work", List.of())),
                List.of(
                        new DayStrip.Moment("HARBOR", FOUR.plusSeconds(3600), false),
                        new DayStrip.Moment("MARKET", FOUR.plusSeconds(3700), true)),
                "Grind from 4:00.");
        return new ChartPictures().draw(strip);
    }

    private static BufferedImage read(Mail.Picture picture) throws IOException {
        return ImageIO.read(new ByteArrayInputStream(picture.png().toArray()));
    }

    /** Dark dots in the middle of the first lane, right of its name. */
    private static long dark(BufferedImage image) {
        return IntStream.range(150, image.getWidth())
                .filter(x -> image.getRaster().getSample(x, 80, 0) < 0x90)
                .count();
    }

    @Test
    void twice_as_long_is_twice_as_wide() throws IOException {
        BufferedImage one = read(picture(FOUR.plusSeconds(3600)));
        BufferedImage half = read(picture(FOUR.plusSeconds(1800)));
        assertThat(one.getWidth()).isEqualTo(720);
        assertThat((double) dark(one) / dark(half)).isBetween(1.9, 2.1);
    }

    @Test
    void the_same_day_gives_the_same_picture_and_carries_its_words() {
        assertThat(picture(FOUR.plusSeconds(60))).isEqualTo(picture(FOUR.plusSeconds(60)));
        assertThat(picture(FOUR.plusSeconds(60)).alternative()).isEqualTo("Grind from 4:00.");
    }
}

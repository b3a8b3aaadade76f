package dawnkettle.draw;

import dawnkettle.cost.Bars;
import dawnkettle.cost.Chart;
import dawnkettle.mail.Bytes;
import dawnkettle.mail.Charts;
import dawnkettle.mail.DayStrip;
import dawnkettle.mail.Mail;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import javax.imageio.ImageIO;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/** Draws charts as grey pictures that a phone shows sharply across its width. */
public final class ChartPictures implements Charts {
    private final ChartLetters letters = new ChartLetters();

    @Override
    public Mail.Picture draw(Chart chart) {
        return new Mail.Picture(chart.name(), png(new ChartDrawing(chart, letters).drawn()), chart.alternative());
    }

    @Override
    public Mail.Picture draw(DayStrip strip) {
        return new Mail.Picture(strip.name(), png(new StripDrawing(strip, letters).drawn()), strip.alternative());
    }

    @Override
    public Mail.Picture draw(Bars bars) {
        return new Mail.Picture(bars.name(), png(new BarsDrawing(bars, letters).drawn()), bars.alternative());
    }

    private static Bytes png(BufferedImage picture) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
            if (!ImageIO.write(picture, "png", out)) throw new IllegalStateException("the JDK writes PNG");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return Bytes.of(bytes.toByteArray());
    }
}

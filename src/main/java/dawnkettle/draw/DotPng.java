package dawnkettle.draw;

import dawnkettle.label.Dots;
import dawnkettle.label.Preview;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import javax.imageio.ImageIO;

/** Dots as a PNG picture of one bit a dot. */
public final class DotPng implements Preview {
    @Override
    public byte[] png(Dots dots) {
        BufferedImage image = new BufferedImage(dots.width(), dots.height(), BufferedImage.TYPE_BYTE_BINARY);
        for (int y = 0; y < dots.height(); y++)
            for (int x = 0; x < dots.width(); x++) image.setRGB(x, y, dots.isBlack(x, y) ? 0xFF000000 : 0xFFFFFFFF);
        ByteArrayOutputStream file = new ByteArrayOutputStream();
        try {
            ImageIO.setUseCache(false);
            ImageIO.write(image, "png", file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return file.toByteArray();
    }
}

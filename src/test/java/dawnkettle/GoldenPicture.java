package dawnkettle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;

import java.awt.image.BufferedImage;
import java.awt.image.IndexColorModel;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;

/**
 * Compares a picture with the one that we once looked at and accepted, in 16 greys; {@code -Dgolden=accept} accepts anew.
 * Where they differ, a third picture shows in black what is gone and in grey what is new.
 */
public final class GoldenPicture {
    private static final Path ACCEPTED = Path.of("src/test/golden");
    private static final Path MADE = Path.of("target/golden");
    private static final int GREYS = 16;

    /** Edges of letters may be two greys off on another machine, and one dot in two thousand anything. */
    private static final int TOLERATED_GREYS = 2;

    private static final double TOLERATED_DOTS = 1 / 2_000.0;

    private GoldenPicture() {}

    public static void check(String name, BufferedImage drawn) throws IOException {
        BufferedImage made = inGreys(drawn);
        Path accepted = ACCEPTED.resolve(name);
        write(MADE.resolve(name), made);
        if ("accept".equals(System.getProperty("golden"))) write(accepted, made);
        if (Files.notExists(accepted))
            fail("no golden picture " + accepted + "; look at " + MADE.resolve(name)
                    + " and, if it is right, run mvn test -Dgolden=accept");
        compare(name, made, ImageIO.read(accepted.toFile()));
    }

    private static void compare(String name, BufferedImage made, BufferedImage accepted) throws IOException {
        assertThat(made.getWidth() + " by " + made.getHeight())
                .as(name)
                .isEqualTo(accepted.getWidth() + " by " + accepted.getHeight());
        BufferedImage difference = blank(made.getWidth(), made.getHeight());
        int wrong = 0;
        for (int y = 0; y < made.getHeight(); y++)
            for (int x = 0; x < made.getWidth(); x++) {
                int darker = grey(accepted, x, y) - grey(made, x, y);
                boolean off = Math.abs(darker) > TOLERATED_GREYS;
                if (off) wrong++;
                difference.setRGB(x, y, !off ? 0xFFFFFF : darker < 0 ? 0x000000 : 0x888888);
            }
        if (wrong <= TOLERATED_DOTS * made.getWidth() * made.getHeight()) return;
        Path shown = MADE.resolve(name.replaceFirst("[.]png$", ".diff.png"));
        write(shown, difference);
        fail(wrong + " dots of " + ACCEPTED.resolve(name) + " differ from what was made in " + MADE.resolve(name)
                + "; look at " + shown);
    }

    private static int grey(BufferedImage picture, int x, int y) {
        return Math.round((picture.getRGB(x, y) & 0xFF) * (GREYS - 1) / 255f);
    }

    private static BufferedImage inGreys(BufferedImage drawn) {
        BufferedImage greys = blank(drawn.getWidth(), drawn.getHeight());
        for (int y = 0; y < drawn.getHeight(); y++)
            for (int x = 0; x < drawn.getWidth(); x++) greys.getRaster().setSample(x, y, 0, grey(drawn, x, y));
        return greys;
    }

    private static BufferedImage blank(int width, int height) {
        byte[] levels = new byte[GREYS];
        for (int i = 0; i < GREYS; i++) levels[i] = (byte) (i * 255 / (GREYS - 1));
        IndexColorModel greys = new IndexColorModel(4, GREYS, levels, levels, levels);
        return new BufferedImage(width, height, BufferedImage.TYPE_BYTE_BINARY, greys);
    }

    private static void write(Path file, BufferedImage picture) throws IOException {
        Files.createDirectories(file.getParent());
        ImageIO.write(picture, "png", file.toFile());
    }
}

package dawnkettle.draw;

import dawnkettle.mail.DayStrip;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** A day by kind of work on its way to a picture: bars over the hours, in greys that need no colour. */
final class StripDrawing {
    private static final int WIDTH = 720;
    private static final int LEFT = 150;
    private static final int RIGHT = 16;
    private static final int LANE = 36;
    private static final int TOP = 62;
    private static final int BOTTOM = 40;
    private static final double LETTER = 24;
    private static final int HOURS_APART = 90;
    private static final Color INK = Color.BLACK;
    private static final Color BAR = new Color(0x55, 0x55, 0x55);
    private static final Color RULE = new Color(0xcc, 0xcc, 0xcc);

    private final DayStrip strip;
    private final ChartLetters letters;
    private final Instant from;
    private final Instant to;
    private final BufferedImage picture;
    private final Graphics2D pen;

    StripDrawing(DayStrip strip, ChartLetters letters) {
        this.strip = strip;
        this.letters = letters;
        List<Instant> all = Stream.concat(
                        strip.lanes().stream()
                                .flatMap(lane -> lane.bars().stream())
                                .flatMap(bar -> Stream.of(bar.from(), bar.to())),
                        strip.marks().stream().map(DayStrip.Moment::at))
                .sorted()
                .toList();
        this.from = all.get(0).truncatedTo(ChronoUnit.HOURS);
        this.to = all.get(all.size() - 1);
        this.picture =
                new BufferedImage(WIDTH, TOP + LANE * strip.lanes().size() + BOTTOM, BufferedImage.TYPE_BYTE_GRAY);
        this.pen = picture.createGraphics();
    }

    BufferedImage drawn() {
        pen.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        pen.setColor(Color.WHITE);
        pen.fillRect(0, 0, picture.getWidth(), picture.getHeight());
        hours();
        for (int i = 0; i < strip.lanes().size(); i++) lane(i);
        vans();
        pen.dispose();
        return picture;
    }

    /** Every hour a rule; its name where there is room. */
    private void hours() {
        double free = 0;
        for (Instant hour = from; !hour.isAfter(to); hour = hour.plus(1, ChronoUnit.HOURS)) {
            double x = x(hour);
            pen.setColor(RULE);
            pen.setStroke(new BasicStroke(1));
            pen.draw(new Line2D.Double(x, TOP, x, bottom()));
            String name = String.format(
                    Locale.ROOT, "%d:00", hour.atZone(strip.zone()).getHour());
            if (x < free || x + letters.width(name, LETTER) > WIDTH) continue;
            write(name, x, bottom() + LETTER + 6);
            free = x + HOURS_APART;
        }
    }

    private void lane(int number) {
        DayStrip.Lane lane = strip.lanes().get(number);
        double y = TOP + LANE * number;
        write(fitted(lane.name()), 4, y + LANE * 0.72);
        pen.setColor(BAR);
        for (DayStrip.Bar bar : lane.bars())
            pen.fill(new Rectangle2D.Double(
                    x(bar.from()), y + 7, Math.max(1, x(bar.to()) - x(bar.from()) - 1), LANE - 14));
    }

    private String fitted(String name) {
        String shown = name;
        while (letters.width(shown, LETTER) > LEFT - 12) shown = shown.substring(0, shown.length() - 2) + ".";
        return shown;
    }

    /** A dashed line a departure, its route above it on whichever of two rows has room; late ones are heavy. */
    private void vans() {
        double[] free = new double[2];
        for (DayStrip.Moment van : strip.marks()) {
            double x = x(van.at());
            pen.setColor(INK);
            pen.setStroke(new BasicStroke(
                    van.late() ? 5 : 2, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10, new float[] {8, 6}, 0));
            pen.draw(new Line2D.Double(x, TOP - 4, x, bottom()));
            String name = van.late() ? van.name() + "!" : van.name();
            double width = letters.width(name, LETTER * 0.8);
            double at = Math.max(0, Math.min(x - width / 2, WIDTH - width));
            int row = at >= free[0] ? 0 : 1;
            if (at < free[row]) continue;
            pen.fill(letters.shape(name, LETTER * 0.8, at, row == 0 ? TOP - 10 : TOP - 34));
            free[row] = at + width + 8;
        }
    }

    private double bottom() {
        return TOP + LANE * strip.lanes().size();
    }

    private double x(Instant at) {
        double share = (double) Duration.between(from, at).toMillis()
                / Math.max(1, Duration.between(from, to).toMillis());
        return LEFT + (WIDTH - RIGHT - LEFT) * share;
    }

    private void write(String text, double x, double y) {
        pen.setColor(INK);
        pen.fill(letters.shape(text, LETTER, x, y));
    }
}

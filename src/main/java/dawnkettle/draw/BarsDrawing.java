package dawnkettle.draw;

import dawnkettle.cost.Bars;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;

/** Bars on their way to a picture: names to the left, figures at their ends; what is below zero is hollow. */
final class BarsDrawing {
    private static final int WIDTH = 720;
    private static final int ROW = 40;
    private static final int TOP = 44;
    private static final int EDGE = 8;
    private static final int GAP = 10;
    private static final double LETTER = 24;
    private static final double MOST_NAME = 330;

    private final Bars bars;
    private final ChartLetters letters;
    private final BufferedImage picture;
    private final Graphics2D pen;
    private final double left;
    private final double width;
    private final double zero;

    BarsDrawing(Bars bars, ChartLetters letters) {
        this.bars = bars;
        this.letters = letters;
        this.picture = new BufferedImage(WIDTH, TOP + ROW * bars.bars().size() + EDGE, BufferedImage.TYPE_BYTE_GRAY);
        this.pen = picture.createGraphics();
        double names = bars.bars().stream()
                .mapToDouble(bar -> letters.width(shortened(bar.name()), LETTER))
                .max()
                .orElse(0);
        double figures = bars.bars().stream()
                .mapToDouble(bar -> letters.width(bar.value().toPlainString(), LETTER))
                .max()
                .orElse(0);
        this.left = EDGE + names + GAP + (bars.least() < 0 ? figures + GAP : 0);
        this.width = WIDTH - EDGE - left - figures - GAP;
        this.zero = left - width * bars.least() / span();
    }

    private double span() {
        double span = bars.most() - bars.least();
        return span == 0 ? 1 : span;
    }

    BufferedImage drawn() {
        pen.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        pen.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        pen.setColor(Color.WHITE);
        pen.fillRect(0, 0, picture.getWidth(), picture.getHeight());
        write(bars.unit(), EDGE, LETTER + EDGE);
        for (int i = 0; i < bars.bars().size(); i++) bar(bars.bars().get(i), TOP + ROW * i);
        pen.setStroke(new BasicStroke(2));
        pen.draw(new Line2D.Double(zero, TOP, zero, TOP + ROW * bars.bars().size()));
        pen.dispose();
        return picture;
    }

    private void bar(Bars.Bar bar, double y) {
        write(shortened(bar.name()), EDGE, y + ROW / 2.0 + LETTER / 3);
        double length = width * bar.value().doubleValue() / span();
        Rectangle2D shape = new Rectangle2D.Double(Math.min(zero, zero + length), y + 8, Math.abs(length), ROW - 16.0);
        pen.setStroke(new BasicStroke(2));
        if (length >= 0) pen.fill(shape);
        else pen.draw(shape);
        String figure = bar.value().toPlainString();
        double x = length >= 0 ? zero + length + GAP : zero + length - GAP - letters.width(figure, LETTER);
        write(figure, x, y + ROW / 2.0 + LETTER / 3);
    }

    private String shortened(String name) {
        if (letters.width(name, LETTER) <= MOST_NAME) return name;
        String cut = name;
        while (letters.width(cut + "…", LETTER) > MOST_NAME) cut = cut.substring(0, cut.length() - 1);
        return cut.strip() + "…";
    }

    private void write(String text, double x, double y) {
        pen.setColor(Color.BLACK);
        pen.fill(letters.shape(text, LETTER, x, y));
    }
}

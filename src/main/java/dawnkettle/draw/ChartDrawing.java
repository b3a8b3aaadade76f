package dawnkettle.draw;

import dawnkettle.cost.Chart;
import dawnkettle.cost.ChartScale;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.image.BufferedImage;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;

/** One chart on its way to a picture. Lines differ by weight and dash, never by colour alone. */
final class ChartDrawing {
    private static final int WIDTH = 720;
    private static final int HEIGHT = 460;
    private static final int LEFT = 74;
    private static final int RIGHT = 24;
    private static final int BOTTOM = 44;
    private static final int ROW = 34;
    private static final double LETTER = 24;
    private static final Color INK = Color.BLACK;
    private static final Color RULE = new Color(0xcc, 0xcc, 0xcc);
    private static final List<float[]> DASHES =
            List.of(new float[] {1, 0}, new float[] {12, 8}, new float[] {3, 7}, new float[] {18, 6, 3, 6});

    private final Chart chart;
    private final ChartLetters letters;
    private final ChartScale scale;
    private final int top;
    private final BufferedImage picture = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_BYTE_GRAY);
    private final Graphics2D pen = picture.createGraphics();

    ChartDrawing(Chart chart, ChartLetters letters) {
        this.chart = chart;
        this.letters = letters;
        this.top = 20 + ROW * (chart.lines().size() + 1);
        this.scale = ChartScale.of(chart.least(), chart.most());
    }

    BufferedImage drawn() {
        pen.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        pen.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        pen.setColor(Color.WHITE);
        pen.fillRect(0, 0, WIDTH, HEIGHT);
        legend();
        rules();
        months();
        for (int i = 0; i < chart.lines().size(); i++) line(i);
        pen.dispose();
        return picture;
    }

    private void legend() {
        write(chart.unit(), LEFT, 8 + LETTER);
        for (int i = 0; i < chart.lines().size(); i++) {
            double y = 8 + LETTER + ROW * (i + 1);
            pen.setStroke(stroke(i));
            pen.setColor(INK);
            pen.draw(new Line2D.Double(LEFT, y - 8, LEFT + 70, y - 8));
            write(chart.lines().get(i).name(), LEFT + 84, y);
        }
    }

    private void rules() {
        List<String> labels = scale.labels();
        for (int i = 0; i < labels.size(); i++) {
            double y = HEIGHT - BOTTOM - height() * i / scale.marks();
            pen.setStroke(new BasicStroke(i == 0 ? 2 : 1));
            pen.setColor(i == 0 ? INK : RULE);
            pen.draw(new Line2D.Double(LEFT, y, WIDTH - RIGHT, y));
            double width = letters.width(labels.get(i), LETTER);
            write(labels.get(i), LEFT - 12 - width, y + LETTER / 3);
        }
    }

    /** A month's name under its first Monday, where there is room for it. */
    private void months() {
        double free = 0;
        for (int i = 0; i < chart.weeks().size(); i++) {
            LocalDate week = chart.weeks().get(i);
            boolean first = i == 0 || chart.weeks().get(i - 1).getMonthValue() != week.getMonthValue();
            String name = month(week);
            double end = x(i) + letters.width(name, LETTER);
            if (!first || x(i) < free || end > WIDTH) continue;
            pen.setColor(INK);
            pen.setStroke(new BasicStroke(2));
            pen.draw(new Line2D.Double(x(i), HEIGHT - BOTTOM, x(i), HEIGHT - BOTTOM + 8));
            write(name, x(i), HEIGHT - 10);
            free = end + 10;
        }
    }

    private static String month(LocalDate day) {
        String name = day.getMonth().name();
        return name.charAt(0) + name.substring(1, 3).toLowerCase(Locale.ROOT);
    }

    private void line(int number) {
        List<BigDecimal> values = chart.lines().get(number).values();
        Path2D path = new Path2D.Double();
        for (int i = 0; i < values.size(); i++)
            if (i == 0) path.moveTo(x(i), y(values.get(i)));
            else path.lineTo(x(i), y(values.get(i)));
        pen.setColor(INK);
        pen.setStroke(stroke(number));
        pen.draw(path);
        int last = values.size() - 1;
        pen.fill(new Ellipse2D.Double(x(last) - 6, y(values.get(last)) - 6, 12, 12));
    }

    private static BasicStroke stroke(int number) {
        float weight = number == 0 ? 5 : 3.5f;
        if (number == 0) return new BasicStroke(weight, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND);
        return new BasicStroke(weight, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 10, DASHES.get(number), 0);
    }

    private double height() {
        return HEIGHT - BOTTOM - top;
    }

    private double x(int week) {
        int steps = Math.max(1, chart.weeks().size() - 1);
        return LEFT + 10 + (WIDTH - RIGHT - LEFT - 20.0) * week / steps;
    }

    private double y(BigDecimal value) {
        return HEIGHT - BOTTOM - height() * scale.share(value);
    }

    private void write(String text, double x, double y) {
        pen.setColor(INK);
        pen.fill(letters.shape(text, LETTER, x, y));
    }
}

package dawnkettle.draw;

import dawnkettle.label.Area;
import dawnkettle.label.DesignPart;
import dawnkettle.label.Mark;
import java.util.ArrayList;
import java.util.List;

/** Text in its box: as large as fits, never smaller than it may be, broken between words. */
final class LabelParagraph {
    /** A line one dot higher than its box by rounding alone is no fault of the design. */
    private static final int SLACK = 1;

    private final LabelGauge gauge;
    private final DesignPart.Words words;
    private final String text;
    private final int least;
    private final int size;
    private final List<String> lines;

    LabelParagraph(LabelGauge gauge, DesignPart.Words words, String text, boolean isRequired) {
        this.gauge = gauge;
        this.words = words;
        this.text = text;
        int floor = isRequired ? gauge.leastEm() : 1;
        int wanted = gauge.dots(words.type().size());
        this.least = Math.max(floor, gauge.dots(words.type().least()));
        int fitting = Math.max(wanted, least);
        List<String> broken = broken(fitting);
        while (fitting > least && !fits(broken, fitting)) {
            fitting--;
            broken = broken(fitting);
        }
        this.size = fitting;
        this.lines = broken;
    }

    boolean fits() {
        return fits(lines, size);
    }

    /** What is wrong, with the room that would do. */
    String objection() {
        int widest = lines.stream().mapToInt(line -> width(line, size)).max().orElse(0);
        String shown = text.length() > 60 ? text.substring(0, 57) + "…" : text;
        return "\"" + shown + "\" needs " + gauge.millimetres(widest) + " by "
                + gauge.millimetres(height(lines.size(), size)) + " mm at its least size and has "
                + gauge.millimetres(across()) + " by " + gauge.millimetres(down()) + " mm";
    }

    List<Mark> marks() {
        List<Mark> marks = new ArrayList<>();
        int baseline = firstBaseline();
        for (String line : lines) {
            marks.add(new Mark.Text(
                    line, left(line), baseline, size, Mark.Ink.of(words.type().look())));
            baseline += leading(size);
        }
        return marks;
    }

    /** One line stays on the baseline that was drawn for it; several hang from the top of their box. */
    private int firstBaseline() {
        int top = gauge.dots(words.area().y());
        int drawnFor = words.type().lines() == 1 ? gauge.dots(words.type().size()) : size;
        return top + (int) Math.ceil(LabelGauge.ABOVE * drawnFor);
    }

    private int left(String line) {
        Area area = words.area();
        int spare = across() - width(line, size);
        return gauge.dots(area.x())
                + switch (words.type().look().side()) {
                    case LEFT -> 0;
                    case MIDDLE -> spare / 2;
                    case RIGHT -> spare;
                };
    }

    private boolean fits(List<String> broken, int em) {
        return broken.size() <= words.type().lines()
                && height(broken.size(), em) <= down() + SLACK
                && broken.stream().allMatch(line -> width(line, em) <= across());
    }

    private List<String> broken(int em) {
        List<String> broken = new ArrayList<>();
        String line = "";
        for (String word : text.split("\\s+")) {
            String longer = line.isEmpty() ? word : line + " " + word;
            if (!line.isEmpty() && words.type().lines() > 1 && width(longer, em) > across()) {
                broken.add(line);
                line = word;
            } else line = longer;
        }
        broken.add(line);
        return broken;
    }

    private int width(String line, int em) {
        return gauge.typefaces().width(line, em, words.type().look().bold());
    }

    private static int leading(int em) {
        return (int) Math.round(LabelGauge.LEADING * em);
    }

    private static int height(int lines, int em) {
        return (lines - 1) * leading(em) + (int) Math.ceil((LabelGauge.ABOVE + LabelGauge.BELOW) * em);
    }

    private int across() {
        return gauge.dots(words.area().right()) - gauge.dots(words.area().x());
    }

    private int down() {
        return gauge.dots(words.area().bottom()) - gauge.dots(words.area().y());
    }
}

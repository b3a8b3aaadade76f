package dawnkettle.mail;

import dawnkettle.mail.Letter.Block;
import dawnkettle.mail.Letter.Bullets;
import dawnkettle.mail.Letter.Grid;
import dawnkettle.mail.Letter.Lines;
import dawnkettle.mail.Letter.Section;
import dawnkettle.mail.Letter.Shown;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/** A letter as plain text of at most 72 columns. */
final class LetterText {
    static final int WIDTH = 72;
    private static final int NARROWEST = 8;
    private static final String GAP = "  ";

    private final StringBuilder text = new StringBuilder();

    private LetterText() {}

    static String of(Letter letter) {
        LetterText made = new LetterText();
        made.write(letter);
        return made.text.toString();
    }

    /** One line of words, broken where it is too long, each line ended. */
    static String wrapped(String line) {
        return String.join("\n", TextColumn.wrap(Plain.line(line), WIDTH)) + "\n";
    }

    private void write(Letter letter) {
        letter.lead().forEach(line -> text.append(wrapped(line)));
        letter.spoken().forEach(this::section);
        if (letter.foot().isEmpty()) return;
        text.append("\n").append("-".repeat(WIDTH)).append("\n");
        letter.foot().forEach(line -> text.append(wrapped(line)));
    }

    private void section(Section section) {
        String heading = Plain.line(section.heading());
        text.append("\n").append(wrapped(heading));
        text.append("=".repeat(Math.min(WIDTH, TextColumn.width(heading)))).append("\n");
        boolean first = true;
        for (Block block : section.blocks()) {
            if (!first) text.append("\n");
            block(block);
            first = false;
        }
    }

    private void block(Block block) {
        if (block instanceof Lines lines) lines.lines().forEach(line -> text.append(wrapped(line)));
        else if (block instanceof Bullets bullets) bullets.items().forEach(item -> hanging("- ", item));
        else if (block instanceof Shown shown) hanging("[Picture] ", shown.alternative());
        else if (block instanceof Grid grid) grid(grid);
    }

    private void hanging(String mark, String item) {
        String lead = mark;
        for (String line : TextColumn.wrap(Plain.line(item), WIDTH - mark.length())) {
            text.append(lead).append(line).append("\n");
            lead = " ".repeat(mark.length());
        }
    }

    private void grid(Grid grid) {
        text.append(wrapped(grid.caption()));
        int[] widths = widths(grid);
        row(grid, widths, grid.columns().stream().map(Letter.Column::heading).toList());
        row(grid, widths, IntStream.of(widths).mapToObj("-"::repeat).toList());
        grid.rows().forEach(cells -> row(grid, widths, cells));
    }

    private static int[] widths(Grid grid) {
        int[] widths = new int[grid.columns().size()];
        for (int i = 0; i < widths.length; i++) {
            int column = i;
            widths[i] = Math.max(
                    TextColumn.width(grid.columns().get(i).heading()),
                    grid.rows().stream()
                            .mapToInt(row -> TextColumn.width(Plain.line(row.get(column))))
                            .max()
                            .orElse(0));
        }
        while (IntStream.of(widths).sum() + GAP.length() * (widths.length - 1) > WIDTH) narrow(widths);
        return widths;
    }

    private static void narrow(int[] widths) {
        int widest = 0;
        for (int i = 1; i < widths.length; i++) if (widths[i] > widths[widest]) widest = i;
        if (widths[widest] <= NARROWEST) throw new IllegalArgumentException("too many columns for one line");
        widths[widest]--;
    }

    private void row(Grid grid, int[] widths, List<String> cells) {
        List<List<String>> columns = new ArrayList<>();
        for (int i = 0; i < widths.length; i++) columns.add(TextColumn.wrap(Plain.line(cells.get(i)), widths[i]));
        int height = columns.stream().mapToInt(List::size).max().orElse(0);
        for (int line = 0; line < height; line++)
            text.append(line(grid, widths, columns, line)).append("\n");
    }

    private static String line(Grid grid, int[] widths, List<List<String>> columns, int line) {
        StringBuilder all = new StringBuilder();
        for (int i = 0; i < widths.length; i++) {
            List<String> column = columns.get(i);
            String cell = line < column.size() ? column.get(line) : "";
            if (i > 0) all.append(GAP);
            all.append(TextColumn.pad(cell, widths[i], grid.columns().get(i).figures()));
        }
        return all.toString().stripTrailing();
    }
}

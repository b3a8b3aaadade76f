package dawnkettle.label;

import java.util.List;
import java.util.stream.Collectors;

/** A label as marks at dot positions; no printer's bytes yet. */
public record Label(int widthDots, int heightDots, List<Mark> marks) {
    public Label {
        marks = List.copyOf(marks);
    }

    /** One mark a line, for people who compare. */
    @Override
    public String toString() {
        return widthDots + " x " + heightDots + "\n"
                + marks.stream().map(Mark::toString).collect(Collectors.joining("\n"));
    }
}

package dawnkettle.draw;

import dawnkettle.label.Area;
import dawnkettle.label.Design;
import dawnkettle.label.DesignPart;
import dawnkettle.label.LabelFields;
import dawnkettle.trouble.Place;
import dawnkettle.trouble.Problem;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/** What a design as a whole must keep to: its fields, its margin, and nothing on top of something else. */
final class LabelDesignRules {
    private LabelDesignRules() {}

    static List<Problem> problems(String file, Design design) {
        List<Problem> problems = new ArrayList<>();
        fields(file, design, problems);
        for (DesignPart part : design.parts())
            if (!design.stock().holds(part.area()))
                problems.add(new Problem(
                        new Place(file, part.line(), 0),
                        "\"" + named(part) + "\" is less than 1.5 mm from the edge",
                        "move it in; stock shifts a little under the head"));
        overlaps(file, design.parts(), problems);
        return problems;
    }

    private static void fields(String file, Design design, List<Problem> problems) {
        for (DesignPart part : design.parts()) {
            if (!(part instanceof DesignPart.Words words)) continue;
            for (String field : words.fields())
                if (!LabelFields.known(design.role()).contains(field))
                    problems.add(new Problem(
                            new Place(file, part.line(), 0),
                            "field \"{" + field + "}\" is not known",
                            "known are " + String.join(", ", new TreeSet<>(LabelFields.known(design.role())))));
        }
        for (String field : LabelFields.required(design.role()))
            if (!design.fields().contains(field))
                problems.add(new Problem(
                        Place.of(file), "field \"{" + field + "}\" is missing", "add a text that shows it"));
    }

    private static void overlaps(String file, List<DesignPart> parts, List<Problem> problems) {
        for (int i = 0; i < parts.size(); i++)
            for (int j = 0; j < i; j++)
                if (clash(parts.get(i), parts.get(j)))
                    problems.add(new Problem(
                            new Place(file, parts.get(i).line(), 0),
                            "\"" + named(parts.get(i)) + "\" overlaps \"" + named(parts.get(j)) + "\"",
                            "move one of them"));
    }

    /** White words may stand on a block; nothing else may touch. */
    private static boolean clash(DesignPart one, DesignPart other) {
        boolean isOnBlock = one instanceof DesignPart.Words && other instanceof DesignPart.Block;
        return !isOnBlock && touch(one.area(), other.area());
    }

    private static boolean touch(Area one, Area other) {
        return one.x() < other.right()
                && other.x() < one.right()
                && one.y() < other.bottom()
                && other.y() < one.bottom();
    }

    private static String named(DesignPart part) {
        if (part instanceof DesignPart.Words words) return words.pattern();
        if (part instanceof DesignPart.Bars bars) return bars.name();
        return "rect";
    }
}

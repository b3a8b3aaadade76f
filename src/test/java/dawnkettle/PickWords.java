package dawnkettle;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A printed pick sheet, read back as the packer reads it: which customer gets how many packs of what. */
final class PickWords {
    private static final Pattern STOP = Pattern.compile("^(?:[A-Z]+ +)?[0-9]+ {2,}(.+?)(?: \\(continued\\))?$");
    private static final Pattern ROW = Pattern.compile("^([0-9]+) [0-9]+ \\+ [0-9]+ (.+)$");
    private static final Pattern LOT = Pattern.compile("^(.*?) ?[0-9]{6}-[A-Z]{2}[0-9]{2}$");

    private PickWords() {}

    /** Packs by customer and product, both by their names, as {@code Pennyfold Cafe: Firm tofu 400 g}. */
    static Map<String, Integer> packs(Left left) throws IOException {
        List<String> lines = left.sheetLinesAsDrawn("pick");
        Map<String, Integer> packs = new TreeMap<>();
        String stop = "";
        String row = "";
        for (String line : lines.subList(lines.indexOf("By route, in loading order"), lines.size())) {
            Matcher here = STOP.matcher(line);
            if (here.matches()) stop = here.group(1);
            row = ROW.matcher(line).matches() ? line : (row + " " + line).strip();
            Matcher begun = ROW.matcher(row);
            Matcher ended = LOT.matcher(row);
            if (!begun.matches() || !ended.matches()) continue;
            String product = LOT.matcher(begun.group(2)).replaceFirst("$1");
            packs.merge(stop + ": " + product, Integer.parseInt(begun.group(1)), Integer::sum);
            row = "";
        }
        return packs;
    }
}

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
    private static final Pattern LINE =
            Pattern.compile("^(.+) [0-9]{6}-[A-Z]{2}[0-9]{2} ([0-9]+) .*(?:case|cases|loose)$");

    private PickWords() {}

    /** Packs by customer and product, both by their names, as {@code Pennyfold Cafe: Firm tofu 400 g}. */
    static Map<String, Integer> packs(Left left) throws IOException {
        List<String> lines = left.sheetLines("pick");
        Map<String, Integer> packs = new TreeMap<>();
        String stop = "";
        for (String line : lines.subList(lines.indexOf("By route, in loading order"), lines.size())) {
            Matcher here = STOP.matcher(line);
            Matcher row = LINE.matcher(line);
            if (here.matches()) stop = here.group(1);
            else if (row.matches())
                packs.merge(stop + ": " + row.group(1), Integer.parseInt(row.group(2)), Integer::sum);
        }
        return packs;
    }
}

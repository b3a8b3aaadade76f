package dawnkettle.conf;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The mistakes of {@code problems.txt}: what is written instead of what, and all that is read then. */
final class ProblemCatalogue {
    private static final Path FILE = Path.of("src/test/resources/problems.txt");

    private ProblemCatalogue() {}

    /** One text for another in a file. */
    record Change(String file, String before, String now) {}

    /** One mistake, or several at once, and everything that is said of it. */
    record Mistake(String title, List<Change> changes, List<String> said) {
        @Override
        public String toString() {
            return title;
        }
    }

    /** Blocks of lines: a title, then "file" lines, "- before", "+ now" and "> said"; \n stands for a line break. */
    static List<Mistake> read() throws IOException {
        List<Mistake> mistakes = new ArrayList<>();
        for (String block : Files.readString(FILE, UTF_8).split("\n\n+"))
            if (!block.startsWith("#")) mistakes.add(mistake(block.strip().split("\n")));
        return mistakes;
    }

    private static Mistake mistake(String[] lines) {
        List<Change> changes = new ArrayList<>();
        List<String> said = new ArrayList<>();
        String file = "";
        String before = "";
        for (int i = 1; i < lines.length; i++) {
            String rest = lines[i].length() > 2 ? lines[i].substring(2).replace("\\n", "\n") : "";
            if (lines[i].startsWith("-")) before = rest;
            else if (lines[i].startsWith("+")) changes.add(new Change(file, before, rest));
            else if (lines[i].startsWith(">")) said.add(rest);
            else file = lines[i];
        }
        return new Mistake(lines[0], changes, said);
    }
}

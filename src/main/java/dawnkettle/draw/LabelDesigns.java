package dawnkettle.draw;

import dawnkettle.label.Design;
import dawnkettle.label.Designs;
import dawnkettle.trouble.BadFile;
import dawnkettle.trouble.Place;
import dawnkettle.trouble.Problem;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** Reads every design of a folder. */
public final class LabelDesigns {
    private LabelDesigns() {}

    /** @throws BadFile with all that is wrong in any of them */
    public static Designs read(Path folder) {
        List<Problem> problems = new ArrayList<>();
        Designs designs = read(folder, problems);
        if (!problems.isEmpty()) throw new BadFile(problems);
        return designs;
    }

    /** The designs that are whole; what is wrong with the others goes to {@code problems}. */
    public static Designs read(Path folder, List<Problem> problems) {
        List<Design> designs = new ArrayList<>();
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : files.filter(LabelDesigns::isDesign).sorted().toList())
                LabelDesignFile.read(name(file), Files.readString(file, StandardCharsets.UTF_8), problems)
                        .ifPresent(designs::add);
        } catch (IOException e) {
            problems.add(new Problem(
                    Place.of(folder.toString()), "cannot be read: \"" + e.getMessage() + "\"", "see that it is there"));
        }
        return new Designs(designs);
    }

    /** One design of text; what is wrong with it goes to {@code problems}. */
    public static java.util.Optional<Design> read(String name, String svg, List<Problem> problems) {
        return LabelDesignFile.read(name, svg, problems);
    }

    private static boolean isDesign(Path file) {
        return file.getFileName().toString().endsWith(".svg");
    }

    private static String name(Path file) {
        String name = file.getFileName().toString();
        return name.substring(0, name.length() - ".svg".length());
    }
}

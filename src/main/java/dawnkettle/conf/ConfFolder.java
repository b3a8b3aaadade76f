package dawnkettle.conf;

import dawnkettle.trouble.Place;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.tomlj.Toml;
import org.tomlj.TomlParseError;
import org.tomlj.TomlParseResult;

/** The folder of the configuration: opens its files one by one. */
record ConfFolder(Path dir, Problems problems) {

    /** A TOML file; empty where it could not be read as one, which is then noted. */
    Optional<Section> toml(String file) {
        Optional<String> text = new SourceText(problems).read(dir, file);
        if (text.isEmpty()) return Optional.empty();
        TomlParseResult parsed = Toml.parse(text.get());
        for (TomlParseError error : parsed.errors())
            problems.add(
                    new Place(file, error.position().line(), error.position().column()),
                    "this is not TOML: " + error.getMessage(),
                    "put it right; until then nothing else in the file is looked at");
        return parsed.hasErrors() ? Optional.empty() : Optional.of(new Section(parsed, Place.of(file), problems));
    }

    /** A CSV file of those columns; it may have no rows. */
    Rows csv(String file, List<String> columns) {
        return new SourceText(problems)
                .read(dir, file)
                .map(text -> Rows.read(file, text, columns, problems))
                .orElse(Rows.unread());
    }

    /** A CSV file that may be left out. */
    Rows csvWhereThere(String file, List<String> columns) {
        return java.nio.file.Files.exists(dir.resolve(file)) ? csv(file, columns) : new Rows(List.of(), true);
    }

    /** A CSV file that must have rows. */
    Rows csvWithRows(String file, List<String> columns) {
        Rows rows = csv(file, columns);
        if (!rows.whole() || !rows.cells().isEmpty()) return rows;
        problems.add(Place.of(file), "the file has a header and nothing below it", "write at least one row");
        return Rows.unread();
    }
}

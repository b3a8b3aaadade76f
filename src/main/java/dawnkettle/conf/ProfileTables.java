package dawnkettle.conf;

import dawnkettle.label.ByteTemplate;
import dawnkettle.trouble.Place;
import dawnkettle.trouble.Problem;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.tomlj.Toml;
import org.tomlj.TomlArray;
import org.tomlj.TomlPosition;
import org.tomlj.TomlTable;

/**
 * Values of a printer profile's tables. What is not as it should be is noted with its place, and a stand-in is given that its
 * reader must not use.
 */
final class ProfileTables {
    private final String file;
    private final List<Problem> problems;

    ProfileTables(String file, List<Problem> problems) {
        this.file = file;
        this.problems = problems;
    }

    ByteTemplate perhaps(TomlTable table, String key) {
        return table.contains(key) ? template(table, key) : ByteTemplate.NOTHING;
    }

    boolean truth(TomlTable table, String key) {
        if (table.get(key) instanceof Boolean truth) return truth;
        wrong(
                table.inputPositionOf(key),
                shown(table, key) + " is neither true nor false",
                "write true or leave it out");
        return false;
    }

    ByteTemplate template(TomlTable table, String key) {
        String text = text(table, key);
        try {
            return new ByteTemplate(text);
        } catch (IllegalArgumentException e) {
            wrong(table.inputPositionOf(key), e.getMessage(), "see the example profiles");
            return ByteTemplate.NOTHING;
        }
    }

    String text(TomlTable table, String key) {
        if (table.get(key) instanceof String text) return text;
        wrong(table.inputPositionOf(key), shown(table, key) + " is not text", "write " + key + " = \"…\"");
        return "";
    }

    int number(TomlTable table, String key, int least, int most) {
        if (table.get(key) instanceof Long number && number >= least && number <= most) return number.intValue();
        wrong(
                table.inputPositionOf(key),
                shown(table, key) + " is not a whole number that goes here",
                "write " + least + " to " + most);
        return least;
    }

    private static String shown(TomlTable table, String key) {
        return table.contains(key) ? key + " \"" + table.get(key) + "\"" : key + " is missing and so";
    }

    TomlTable table(TomlTable table, String key) {
        if (table.get(key) instanceof TomlTable found) return found;
        wrong(table.inputPositionOf(key), "there is no table \"" + key + "\"", "add it");
        return Toml.parse("");
    }

    List<TomlTable> tables(TomlTable table, String key) {
        List<TomlTable> tables = new ArrayList<>();
        if (table.get(key) instanceof TomlArray array && array.toList().stream().allMatch(TomlTable.class::isInstance))
            for (int i = 0; i < array.size(); i++) tables.add(array.getTable(i));
        else wrong(table.inputPositionOf(key), key + " is not a list of tables", "write " + key + " = [ { … } ]");
        return tables;
    }

    void known(TomlTable table, String path, String... keys) {
        Set<String> known = Set.of(keys);
        for (String key : table.keySet())
            if (!known.contains(key))
                wrong(
                        table.inputPositionOf(List.of(key)),
                        "key \"" + path + key + "\" is not known",
                        "known are " + String.join(", ", keys));
    }

    void wrong(TomlPosition at, String what, String remedy) {
        Place place = at == null ? Place.of(file) : new Place(file, at.line(), at.column());
        problems.add(new Problem(place, what, remedy));
    }
}

package dawnkettle.conf;

import dawnkettle.book.Nearest;
import dawnkettle.trouble.Place;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.tomlj.Toml;
import org.tomlj.TomlArray;
import org.tomlj.TomlPosition;
import org.tomlj.TomlTable;

/** One table of a TOML file: gives its values with their places, and knows at the end which keys nobody asked for. */
final class Section {
    private final TomlTable table;
    private final Place place;
    private final Problems problems;
    private final Set<String> asked = new LinkedHashSet<>();

    Section(TomlTable table, Place place, Problems problems) {
        this.table = table;
        this.place = place;
        this.problems = problems;
    }

    /** What stands for a file that could not be read: it holds nothing, and nobody hears what is missing in it. */
    static Section unread(String file) {
        return new Section(Toml.parse(""), Place.of(file), new Problems());
    }

    Place place() {
        return place;
    }

    Problems problems() {
        return problems;
    }

    /** The value of {@code key}; noted as missing, with the {@code example}, where it is not there. */
    Written need(String key, String example) {
        return find(key).orElseGet(() -> {
            noteMissing(key, key + " = " + example);
            return missing(key);
        });
    }

    Optional<Written> find(String key) {
        asked.add(key);
        Object value = table.get(List.of(key));
        return value == null ? Optional.empty() : Optional.of(written(key, value, placeOf(key)));
    }

    /** The values of a list; noted where it is missing or empty. */
    List<Written> needList(String key, String example) {
        if (table.get(List.of(key)) == null) noteMissing(key, key + " = " + example);
        List<Written> values = findList(key);
        if (table.get(List.of(key)) instanceof TomlArray array && array.isEmpty()) noteEmpty(key);
        return values;
    }

    private void noteEmpty(String key) {
        problems.add(placeOf(key), "\"" + key + "\" is an empty list", "write at least one");
    }

    List<Written> findList(String key) {
        List<Written> values = new ArrayList<>();
        asked.add(key);
        Object value = table.get(List.of(key));
        if (value instanceof TomlArray array)
            for (int i = 0; i < array.size(); i++) values.add(written(key, array.get(i), at(array.inputPositionOf(i))));
        else if (value != null)
            problems.add(placeOf(key), "\"" + key + "\" is not a list", "write it in square brackets");
        return values;
    }

    /** The table of that name; an empty one, noted as missing, where it is not there. */
    Section needSection(String key) {
        return findSection(key).orElseGet(() -> {
            if (table.get(List.of(key)) == null) noteNoTable(key, "[" + key + "]");
            return unread(place.file());
        });
    }

    Optional<Section> findSection(String key) {
        asked.add(key);
        Object value = table.get(List.of(key));
        if (value == null) return Optional.empty();
        if (value instanceof TomlTable inner) return Optional.of(new Section(inner, placeOf(key), problems));
        problems.add(placeOf(key), "\"" + key + "\" is not a table", "write it as [" + key + "] or in curly brackets");
        return Optional.empty();
    }

    /** The tables of a list of tables; noted where it is missing or empty. */
    List<Section> sections(String key) {
        asked.add(key);
        List<Section> sections = new ArrayList<>();
        Object value = table.get(List.of(key));
        if (value == null) noteNoTable(key, "[[" + key + "]]");
        else if (value instanceof TomlArray array && array.isEmpty()) noteEmpty(key);
        else if (!(value instanceof TomlArray array)) noteNoTables(placeOf(key), key);
        else
            for (int i = 0; i < array.size(); i++)
                if (array.get(i) instanceof TomlTable inner)
                    sections.add(new Section(inner, at(array.inputPositionOf(i)), problems));
                else noteNoTables(at(array.inputPositionOf(i)), key);
        return sections;
    }

    /** Notes every key that nobody asked for. */
    void noMore() {
        for (String key : table.keySet())
            if (!asked.contains(key)) {
                String remedy = Nearest.to(key, asked)
                        .map(near -> "write \"" + near + "\" or leave it out")
                        .orElse("leave it out");
                problems.add(placeOf(key), "key \"" + Written.shown(key) + "\" is not known here", remedy);
            }
    }

    private void noteMissing(String key, String example) {
        problems.add(place, "key \"" + key + "\" is missing", "add it, as " + example);
    }

    private void noteNoTable(String key, String written) {
        problems.add(place, "table \"" + key + "\" is missing", "add it, as " + written);
    }

    private void noteNoTables(Place where, String key) {
        problems.add(
                where, "\"" + key + "\" is not a list of tables", "write each as [[" + key + "]] or in curly brackets");
    }

    private Written missing(String key) {
        return new Written(key, "", Written.Kind.MISSING, place, problems);
    }

    private Written written(String key, Object value, Place where) {
        return new Written(key, String.valueOf(value), kindOf(value), where, problems);
    }

    private static Written.Kind kindOf(Object value) {
        if (value instanceof String || value instanceof LocalTime || value instanceof LocalDate)
            return Written.Kind.TEXT;
        if (value instanceof Long || value instanceof Double) return Written.Kind.NUMBER;
        return value instanceof Boolean ? Written.Kind.TRUTH : Written.Kind.OTHER;
    }

    private Place placeOf(String key) {
        return at(table.inputPositionOf(List.of(key)));
    }

    private Place at(TomlPosition position) {
        return position == null ? place : new Place(place.file(), position.line(), position.column());
    }
}

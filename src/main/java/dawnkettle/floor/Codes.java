package dawnkettle.floor;

import java.util.LinkedHashMap;
import java.util.Map;

/** Numbers for the codes of one kind, so that the search need not compare words. */
final class Codes {
    private final String kind;
    private final Map<String, Integer> numbers = new LinkedHashMap<>();

    Codes(String kind) {
        this.kind = kind;
    }

    /** The number of a code, a new one if it is new. */
    int add(String code) {
        Integer known = numbers.putIfAbsent(code, numbers.size());
        return known == null ? numbers.size() - 1 : known;
    }

    void addNew(String code) {
        if (numbers.putIfAbsent(code, numbers.size()) != null)
            throw new IllegalArgumentException(kind + " \"" + code + "\" is there twice; give each its own code");
    }

    int number(String code, String wantedBy) {
        Integer number = numbers.get(code);
        if (number == null)
            throw new IllegalArgumentException(wantedBy + " names the " + kind + " \"" + code
                    + "\", which the day lacks; add it or drop the name");
        return number;
    }

    int find(String code) {
        return numbers.getOrDefault(code, -1);
    }

    int size() {
        return numbers.size();
    }
}

package dawnkettle.export;

import java.util.ArrayList;
import java.util.List;

/** Broken rules by name, each with where and how. */
final class Faults {
    private final List<String> found = new ArrayList<>();

    /** Notes a fault where {@code holds} does not. */
    void unless(boolean holds, String rule, String where) {
        if (!holds) found.add(rule + ": " + where);
    }

    List<String> found() {
        return List.copyOf(found);
    }
}

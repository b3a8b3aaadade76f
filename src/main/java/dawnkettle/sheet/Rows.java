package dawnkettle.sheet;

import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What each sheet says, row by row, beside what the sheet says that it replaces: so that the crew sees what is new and
 * hears what is gone.
 */
final class Rows {
    private final Map<String, Said> before;
    private final Map<String, Said> now = new HashMap<>();

    private Rows(Map<String, Said> before) {
        this.before = before;
    }

    /** Of sheets that replace none. */
    static Rows first() {
        return new Rows(Map.of());
    }

    /** Of the sheets that replace these. */
    Rows next() {
        return new Rows(now);
    }

    /** One sheet's rows. */
    Said of(String sheet) {
        return now.computeIfAbsent(sheet, name -> new Said(before.get(name)));
    }

    /** What one sheet says. */
    static final class Said {
        private final Said replaced;
        private final Set<String> rows = new HashSet<>();
        private final Set<String> names = new LinkedHashSet<>();

        private Said(Said replaced) {
            this.replaced = replaced;
        }

        boolean replaces() {
            return replaced != null;
        }

        /** Notes a row; whether the sheet before did not have it. */
        boolean isNew(String row) {
            rows.add(row);
            return replaces() && !replaced.rows.contains(row);
        }

        /** Notes by what name people know a row or a section. */
        void named(String name) {
            names.add(name);
        }

        /** Names that stood on the sheet before and stand on this one no more. */
        List<String> gone() {
            if (!replaces()) return List.of();
            return replaced.names.stream().filter(name -> !names.contains(name)).toList();
        }
    }
}

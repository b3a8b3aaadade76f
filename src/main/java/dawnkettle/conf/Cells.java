package dawnkettle.conf;

import dawnkettle.trouble.Place;
import java.util.Map;
import java.util.Optional;

/** One row of a CSV file: gives its cells by the names of their columns. */
record Cells(Map<String, Written> byColumn, Place place, Problems problems) {

    /** The cell of a column, whatever stands in it. */
    Written in(String column) {
        return byColumn.get(column);
    }

    /** The cell of a column; empty where nothing is written. */
    Optional<Written> find(String column) {
        return Optional.of(in(column)).filter(cell -> !cell.isBlank());
    }
}

package dawnkettle.book;

import dawnkettle.book.Piece.Days;
import dawnkettle.book.Piece.Doubt;
import dawnkettle.book.Piece.Want;
import dawnkettle.book.Sense.Kind;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** A table with a product a line and a day a column; an empty cell, a dash or a nought is nothing. */
final class DayTable {
    private static final String WHICH = "Which figure is for which day?";

    private final List<Days> columns;

    private DayTable(List<Days> columns) {
        this.columns = columns;
    }

    /** The head of one: two days or more with nothing but blanks or bars between. */
    static Optional<DayTable> headedBy(String line, List<Sense> dated) {
        List<Sense> days =
                dated.stream().filter(sense -> sense.is(Kind.ON, Kind.ON_ASKED)).toList();
        if (days.size() < 2 || !dated.stream().allMatch(sense -> isOfHead(line, sense))) return Optional.empty();
        int first = days.get(0).from();
        String between = line.substring(first, days.get(days.size() - 1).until());
        if (between.matches(".*[,/&+–-].*") && !between.contains("|")) return Optional.empty();
        return Optional.of(
                new DayTable(days.stream().map(day -> column(line, day)).toList()));
    }

    private static boolean isOfHead(String line, Sense sense) {
        boolean bar = sense.is(Kind.NOISE) && line.charAt(sense.from()) == '|';
        int cell = line.matches(".*[\t|].*") ? Math.max(line.indexOf('\t'), line.indexOf('|', 1)) : 0;
        if (sense.is(Kind.NOISE, Kind.UNKNOWN) && sense.until() <= cell) return true;
        return bar || sense.is(Kind.ON, Kind.ON_ASKED, Kind.STOP) || sense.is(Kind.NOISE) && sense.from() == 0;
    }

    private static Days column(String line, Sense day) {
        List<LocalDate> days = day.is(Kind.ON) ? List.of(LocalDate.parse(day.value())) : List.of();
        return new Days(days, day.is(Kind.ON) ? "" : day.value(), false, line.substring(day.from(), day.until()));
    }

    /** Whether a line can be one of it: it names a product and no day. */
    boolean goesOnIn(List<Sense> dated) {
        return dated.stream().anyMatch(sense -> sense.is(Kind.KIND, Kind.FORM, Kind.CODE))
                && dated.stream().noneMatch(sense -> sense.is(Kind.ON, Kind.ON_ASKED));
    }

    /** A line of it as a sentence a day. @param read how a product with its packs is read */
    List<Unit> row(String line, List<Sense> senses, Function<String, List<Unit>> read) {
        Optional<List<String>> cells = cells(line, senses);
        if (cells.isEmpty()) return List.of(new Unit(List.of(new Doubt(WHICH, line)), line));
        String product = cells.get().get(0);
        List<Unit> units = new ArrayList<>();
        for (int i = 0; i < columns.size(); i++) {
            String packs = cells.get().get(i + 1);
            if (packs.matches("\\d+") && !packs.matches("0+"))
                units.add(one(columns.get(i), read.apply(product + ": " + packs), line));
        }
        return units;
    }

    private static Unit one(Days day, List<Unit> read, String line) {
        List<Piece> pieces =
                read.stream().flatMap(unit -> unit.pieces().stream()).toList();
        Piece only = pieces.size() == 1 && pieces.get(0) instanceof Want want
                ? new Want(want.wish(), line)
                : new Doubt(pieces.size() == 1 && pieces.get(0) instanceof Doubt doubt ? doubt.why() : WHICH, line);
        return new Unit(List.of(day, only), line);
    }

    /** The product, and a cell a day; empty where the line has other figures than there are days. */
    private Optional<List<String>> cells(String line, List<Sense> senses) {
        int many = columns.size();
        List<String> cells = new ArrayList<>();
        if (line.contains("\t") || line.contains("|")) {
            for (String cell : line.split("[\t|]", -1)) cells.add(cell.strip());
            boolean framed = cells.size() == many + 3
                    && cells.get(0).isEmpty()
                    && cells.get(many + 2).isEmpty();
            if (framed) cells.subList(0, many + 2).remove(0);
            if (framed) cells.remove(many + 1);
            while (cells.size() > 1 && cells.size() < many + 1) cells.add("");
        } else if (senses.size() > many) {
            int from = senses.size() - many;
            cells.add(line.substring(0, senses.get(from - 1).until()));
            senses.subList(from, senses.size())
                    .forEach(sense -> cells.add(line.substring(sense.from(), sense.until())));
        }
        boolean whole = cells.size() == many + 1
                && cells.get(0).matches(".*\\p{L}.*")
                && cells.subList(1, many + 1).stream().allMatch(cell -> cell.matches("\\d*|[-–—]+"));
        boolean moreBefore = cells.size() == many + 1
                && !line.matches(".*[\t|].*")
                && cells.get(0).matches(".*\\s(?:\\d+|[-–—])");
        return whole && !moreBefore ? Optional.of(cells) : Optional.empty();
    }
}

package dawnkettle.intake;

import static java.nio.charset.StandardCharsets.UTF_8;

import dawnkettle.trouble.Place;
import dawnkettle.trouble.Problem;
import dawnkettle.trouble.Table;
import dawnkettle.trouble.Table.Cell;
import dawnkettle.trouble.Table.Row;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;

/** One file of history: its rows one by one, and every problem of it noted. */
final class HistoryTable {
    /** Half a year of one shop stays below a tenth of it. */
    private static final long MOST_BYTES = 20_000_000;

    private final String file;
    private final String header;
    private final List<Problem> problems;

    HistoryTable(String file, String header, List<Problem> problems) {
        this.file = file;
        this.header = header;
        this.problems = problems;
    }

    /** Hands each whole row on, in the order of the file. */
    void read(Path folder, Consumer<HistoryRow> use) {
        Table table = Table.read(file, text(folder.resolve(file)));
        problems.addAll(table.problems());
        if (table.rows().isEmpty()) return;
        Row first = table.rows().get(0);
        List<String> columns = first.cells().stream().map(Cell::text).toList();
        if (!String.join(",", columns).equals(header)) {
            note(first.place(), "the columns \"" + String.join(",", columns) + "\" are others", "write " + header);
            return;
        }
        for (Row row : table.rows().subList(1, table.rows().size()))
            if (row.cells().size() == columns.size()) use.accept(new HistoryRow(columns, row, problems));
            else
                note(
                        row.place(),
                        "the row has \"" + row.cells().size() + "\" cells",
                        "write " + columns.size() + ", one for each column");
    }

    private String text(Path path) {
        try {
            if (!Files.isRegularFile(path)) return none("the file is not there", "copy it from the demonstration shop");
            if (Files.size(path) > MOST_BYTES)
                return none("the file has \"" + Files.size(path) + "\" bytes", "write at most " + MOST_BYTES);
            String text = UTF_8.newDecoder()
                    .decode(ByteBuffer.wrap(Files.readAllBytes(path)))
                    .toString();
            return text.isBlank() ? none("the file is empty", "begin it with " + header) : text;
        } catch (CharacterCodingException notUtf8) {
            return none("the file is not UTF-8 text", "save it as CSV with UTF-8 encoding");
        } catch (IOException unreadable) {
            return none("the file cannot be read", "look at its permissions and the disk");
        }
    }

    private String none(String what, String remedy) {
        note(Place.of(file), what, remedy);
        return "";
    }

    private void note(Place place, String what, String remedy) {
        problems.add(new Problem(place, what, remedy));
    }
}

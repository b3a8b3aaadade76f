package dawnkettle.trouble;

/**
 * Where in a file something stands.
 *
 * @param file the file's name as the operator knows it
 * @param line line counted from 1; 0 where the whole file is meant
 * @param column character counted from 1; 0 where the whole line is meant
 */
public record Place(String file, int line, int column) implements Comparable<Place> {
    public Place {
        if (line < 0 || column < 0) throw new IllegalArgumentException("line and column count from 1");
    }

    /** The file as a whole. */
    public static Place of(String file) {
        return new Place(file, 0, 0);
    }

    @Override
    public int compareTo(Place other) {
        int byFile = file.compareTo(other.file);
        if (byFile != 0) return byFile;
        return line != other.line ? Integer.compare(line, other.line) : Integer.compare(column, other.column);
    }

    @Override
    public String toString() {
        if (line == 0) return file;
        return column == 0 ? file + ":" + line : file + ":" + line + ":" + column;
    }
}

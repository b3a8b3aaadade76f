package dawnkettle.sheet;

import java.util.List;

/** One side of paper: its marks in reading order, later ones on top, and the places a reader may jump to. */
public record Page(List<Mark> marks, List<Bookmark> bookmarks) {
    public Page {
        marks = List.copyOf(marks);
        bookmarks = List.copyOf(bookmarks);
    }

    /**
     * A place a reader may jump to.
     *
     * @param y from the top of the page, in millimetres
     */
    public record Bookmark(String title, double y) {
        @Override
        public String toString() {
            return String.format(java.util.Locale.ROOT, "bookmark %.2f %s", y, title);
        }
    }
}

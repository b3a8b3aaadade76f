package dawnkettle.sheet;

import java.util.List;
import java.util.stream.Stream;

/**
 * One side of paper: its marks in reading order, later ones on top, and the places a reader may jump to.
 *
 * @param head what stands above the content: title, day, revision, page number
 */
public record Page(List<Mark> head, List<Mark> body, List<Bookmark> bookmarks) {
    public Page {
        head = List.copyOf(head);
        body = List.copyOf(body);
        bookmarks = List.copyOf(bookmarks);
    }

    public List<Mark> marks() {
        return Stream.concat(head.stream(), body.stream()).toList();
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

package dawnkettle.sheet;

import java.time.ZonedDateTime;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/**
 * A sheet as plain marks at millimetres: what is computed here is drawn, printed and filed elsewhere.
 *
 * @param name stem of the file it becomes, as "soak" or "route-R3"; one of its own within a day
 */
public record Sheet(Kind kind, String name, Imprint imprint, List<Page> pages) {
    /** The line of a marked sheet stands below everything else. */
    private static final double FOOT_MM = 6;

    public Sheet {
        if (!name.matches("[a-z][A-Za-z0-9_-]{0,79}"))
            throw new IllegalArgumentException(
                    "sheet name \"" + name + "\" is not 1 to 80 of letters, digits, - and _");
        if (pages.isEmpty()) throw new IllegalArgumentException("sheet " + name + " has no page");
        pages = List.copyOf(pages);
    }

    /** The same, saying at its foot that it may have come out before. */
    public Sheet markedMaybePrinted() {
        return marked(words().first(Word.AGAIN_MAYBE));
    }

    /** The same, saying at its foot that it was printed once more by hand, and when. */
    public Sheet markedSecondCopy(ZonedDateTime at) {
        Dates dates = new Dates(words(), at.getZone());
        return marked(words().first(Word.AGAIN_BY_HAND, dates.dayAndTime(at.toInstant())));
    }

    private Words words() {
        return Words.of(List.of(imprint.language()));
    }

    /** The same under another name. */
    public Sheet named(String other) {
        return new Sheet(kind, other, imprint, pages);
    }

    /** Several sheets as one, a page after the other; it says of itself what the first says. */
    public static Sheet together(String name, List<Sheet> sheets) {
        Sheet first = sheets.get(0);
        return new Sheet(
                first.kind(),
                name,
                first.imprint(),
                sheets.stream().flatMap(sheet -> sheet.pages().stream()).toList());
    }

    /** The same with a line at the foot of every page. */
    Sheet marked(String line) {
        Mark mark = new Mark.Text(
                imprint.paper().widthMm() / 2,
                imprint.paper().heightMm() - FOOT_MM,
                Lettering.bold(9).aligned(Lettering.Align.CENTRE),
                line);
        return new Sheet(
                kind,
                name,
                imprint,
                pages.stream()
                        .map(page -> new Page(
                                Stream.concat(page.head().stream(), Stream.of(mark))
                                        .toList(),
                                page.body(),
                                page.bookmarks()))
                        .toList());
    }

    /** Every mark of every page, one a line: what a golden file holds. */
    public String asText() {
        StringBuilder text = new StringBuilder(String.format(
                Locale.ROOT,
                "%s %s \"%s\" %s %s%n",
                kind.word(),
                name,
                imprint.title(),
                imprint.language(),
                imprint.paper()));
        for (int i = 0; i < pages.size(); i++) {
            text.append("page ").append(i + 1).append('\n');
            pages.get(i).bookmarks().forEach(bookmark -> text.append(bookmark).append('\n'));
            pages.get(i).marks().forEach(mark -> text.append(mark).append('\n'));
        }
        return text.toString().replace("\r\n", "\n");
    }

    /** What a sheet is for; settings name the copies of each by its word. */
    public enum Kind {
        SOAK,
        RUN,
        PICK,
        ROUTE,
        DELIVERY,
        FREE,
        RECORD,
        FALLBACK,
        COUNT,
        COST,
        TRACE;

        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }
}

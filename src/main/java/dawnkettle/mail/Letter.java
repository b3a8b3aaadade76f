package dawnkettle.mail;

import java.util.List;
import java.util.stream.Stream;

/**
 * What a mail says, before it is plain text or HTML, so that both say the same.
 *
 * @param well whether its verdict is a good one
 * @param lead the lines above everything else
 * @param foot small print below everything else
 */
record Letter(String title, boolean well, List<String> lead, List<Section> sections, List<String> foot) {
    Letter {
        lead = List.copyOf(lead);
        sections = List.copyOf(sections);
        foot = List.copyOf(foot);
    }

    /** A heading and what stands under it. */
    record Section(String heading, List<Block> blocks) {
        Section {
            blocks = List.copyOf(blocks);
        }

        Section(String heading, Block... blocks) {
            this(heading, List.of(blocks));
        }

        /** The same without blocks that say nothing. */
        Section trimmed() {
            return new Section(
                    heading, blocks.stream().filter(block -> !block.isEmpty()).toList());
        }
    }

    /** What stands under a heading. */
    sealed interface Block permits Lines, Bullets, Grid, Shown {
        boolean isEmpty();
    }

    /** Sentences, each a line of its own. */
    record Lines(List<String> lines) implements Block {
        Lines {
            lines = List.copyOf(lines);
        }

        static Lines of(String... lines) {
            return new Lines(Stream.of(lines).filter(line -> !line.isBlank()).toList());
        }

        @Override
        public boolean isEmpty() {
            return lines.isEmpty();
        }
    }

    /** A list. */
    record Bullets(List<String> items) implements Block {
        Bullets {
            items = List.copyOf(items);
        }

        @Override
        public boolean isEmpty() {
            return items.isEmpty();
        }
    }

    /** A table; the first cell of a row names the row. */
    record Grid(String caption, List<Column> columns, List<List<String>> rows) implements Block {
        Grid {
            columns = List.copyOf(columns);
            rows = rows.stream().map(List::copyOf).toList();
            for (List<String> row : rows)
                if (row.size() != columns.size()) throw new IllegalArgumentException("a row needs a cell a column");
        }

        @Override
        public boolean isEmpty() {
            return rows.isEmpty();
        }
    }

    /** A column; figures stand to the right. */
    record Column(String heading, boolean figures) {
        static Column words(String heading) {
            return new Column(heading, false);
        }

        static Column figures(String heading) {
            return new Column(heading, true);
        }
    }

    /** A picture; {@code cid} is how the HTML refers to it. */
    record Shown(String cid, String alternative) implements Block {
        @Override
        public boolean isEmpty() {
            return false;
        }
    }

    /** Sections that say something. */
    List<Section> spoken() {
        return sections.stream()
                .map(Section::trimmed)
                .filter(section -> !section.blocks().isEmpty())
                .toList();
    }
}

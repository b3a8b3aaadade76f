package dawnkettle.mail;

import static java.nio.charset.StandardCharsets.UTF_8;

import dawnkettle.mail.Letter.Bullets;
import dawnkettle.mail.Letter.Section;
import dawnkettle.mail.Mail.Attachment;
import dawnkettle.stock.RecallPage;
import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** The monthly mail that says whether a lot, drawn by chance, could be called back: who has it, and whether all is found. */
public final class RecallMail {
    /** Of one table in the words of the mail; the attached table has all (common practice, no source). */
    private static final int MOST_ROWS = 60;

    private RecallMail() {}

    /**
     * The mail of a drill, not addressed yet.
     *
     * @param took from the question to the answer
     */
    public static Mail of(RecallPage page, LocalDate day, Duration took) {
        boolean whole = page.reconciliation().isWhole();
        Letter letter = new Letter(
                page.shop().house().name() + ", recall drill of " + Figures.day(day),
                whole,
                lead(page, took),
                sections(page),
                List.of(
                        "A drill: nothing is wrong with this lot. In earnest: trace LOT gives the same of any lot, and"
                                + " record hold LOT WHY keeps what has not left.",
                        "The table holds names and addresses: keep it as you keep your customers' papers."));
        String id = Mail.idOf(day, "recall-drill", 1);
        Mail.Body body = new Mail.Body(LetterText.of(letter), LetterHtml.of(letter), List.of());
        String subject = "Recall drill, " + page.recall().subject() + ": "
                + (whole ? "all accounted for" : page.reconciliation().percentOfMass() + " % accounted for");
        return new Mail(id, List.of(), subject, body, List.of(csv(page, day)));
    }

    private static List<Section> sections(RecallPage page) {
        Stream<Section> missing = Stream.of(new Section(
                "Not accounted for", new Bullets(page.reconciliation().missing())));
        return Stream.concat(missing, page.tables().stream().map(RecallMail::section))
                .toList();
    }

    /** A row a point, for a phone is too narrow for such tables. */
    private static Section section(RecallPage.Table table) {
        List<String> rows = new ArrayList<>(table.rows().stream()
                .limit(MOST_ROWS)
                .map(row -> said(table.columns(), row))
                .toList());
        if (table.rows().size() > MOST_ROWS)
            rows.add("and " + (table.rows().size() - MOST_ROWS) + " more, in the table that comes with this mail");
        if (rows.isEmpty()) rows.add("nothing");
        return new Section(table.title(), new Bullets(rows));
    }

    /** As "261204-FI01; in stock 4; held": a figure says what it counts, a word speaks for itself. */
    private static String said(List<String> columns, List<String> row) {
        List<String> said = new ArrayList<>();
        for (int i = 0; i < row.size(); i++) {
            String cell = row.get(i);
            boolean figure = cell.matches("[0-9.]+( kg| %)?") || cell.matches("[0-9]{4}-[0-9]{2}-[0-9]{2}");
            if (!cell.isBlank()) said.add(figure ? columns.get(i).toLowerCase(Locale.ROOT) + " " + cell : cell);
        }
        return String.join("; ", said);
    }

    private static List<String> lead(RecallPage page, Duration took) {
        List<String> lead = new ArrayList<>();
        lead.add(Plain.sentence(page.verdict()) + ".");
        lead.add(String.format(
                Locale.ROOT,
                "Found in %.1f s, both ways; %s %% of the mass is reconciled.",
                took.toMillis() / 1000.0,
                page.reconciliation().percentOfMass()));
        return lead;
    }

    private static Attachment csv(RecallPage page, LocalDate day) {
        Bytes content = Bytes.of(TraceCsv.of(page).getBytes(UTF_8));
        return new Attachment("recall-drill-" + day + ".csv", "text/csv; charset=utf-8; header=present", content);
    }
}

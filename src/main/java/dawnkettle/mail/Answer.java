package dawnkettle.mail;

import dawnkettle.mail.Letter.Bullets;
import dawnkettle.mail.Letter.Section;
import dawnkettle.shop.House;
import java.util.List;

/** What the clerk answers to a mail: under headings, line by line. */
public final class Answer {
    private static final int SUBJECT = 78;

    private final House house;
    private final String id;

    /** @param id of the mail */
    public Answer(House house, String id) {
        this.house = house;
        this.id = id;
    }

    /** Lines under a heading; without lines it is left out. */
    public record Part(String heading, List<String> lines) {
        public Part {
            lines = List.copyOf(lines);
        }
    }

    /** @param well whether nothing is open */
    public Mail of(String to, String verdict, boolean well, List<Part> parts) {
        List<Section> sections = parts.stream()
                .map(part -> new Section(part.heading(), new Bullets(part.lines())))
                .toList();
        Letter letter = new Letter(
                house.name(),
                well,
                List.of(verdict),
                sections,
                List.of("Written by the shop's clerk, a program. Answer this mail to change or add something."));
        String subject = Plain.line(verdict);
        return new Mail(
                id,
                List.of(to),
                subject.length() <= SUBJECT ? subject : subject.substring(0, SUBJECT - 1) + "…",
                new Mail.Body(LetterText.of(letter), LetterHtml.of(letter), List.of()),
                List.of());
    }
}

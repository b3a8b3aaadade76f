package dawnkettle.mail;

import dawnkettle.mail.Letter.Bullets;
import dawnkettle.mail.Letter.Section;
import dawnkettle.shop.House;
import java.util.List;

/** What the clerk answers to a mail: under headings, line by line. */
public final class Answer {
    /** Letters of a line that a mail should not exceed (RFC 5322, 2.1.1). */
    private static final int SUBJECT = 78;

    /** Letters of the sender's own subject (common practice, no source). */
    private static final int OWN_WORDS = 36;

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

    /**
     * The mail that is answered.
     *
     * @param subject as it came; nothing in it counts but its letters
     */
    public record Asked(String from, String subject) {}

    /** @param well whether nothing is open */
    public Mail of(Asked asked, String verdict, boolean well, List<Part> parts) {
        List<Section> sections = parts.stream()
                .map(part -> new Section(part.heading(), new Bullets(part.lines())))
                .toList();
        Letter letter = new Letter(
                house.name(),
                well,
                List.of(verdict),
                sections,
                List.of("Written by the shop's clerk, a program. Answer this mail to change or add something."));
        return new Mail(
                id,
                List.of(asked.from()),
                subject(asked.subject(), verdict),
                new Mail.Body(LetterText.of(letter), LetterHtml.of(letter), List.of()),
                List.of());
    }

    /** Their own words first, that they find it again, then how it stands. */
    private static String subject(String written, String verdict) {
        String plain =
                Plain.line(written).replaceFirst("(?i)^(?:re\\s*:\\s*)+", "").strip();
        String own = plain.isEmpty() ? "Re: your order" : "Re: " + cut(plain, OWN_WORDS);
        return cut(own + " – " + Plain.line(verdict), SUBJECT);
    }

    private static String cut(String line, int most) {
        if (line.codePointCount(0, line.length()) <= most) return line;
        return line.substring(0, line.offsetByCodePoints(0, most - 1)) + "…";
    }
}

package dawnkettle.book;

import dawnkettle.book.ReadMail.Question;
import java.time.LocalDate;
import java.util.List;

/** Reads a customer's mail as a careful clerk would: what is not certain is asked, never guessed. */
public final class ReadOrderMail {
    private ReadOrderMail() {}

    /**
     * A mail as it came.
     *
     * @param body plain text or HTML
     * @param date the mail's own day in the shop's zone; "tomorrow" is counted from it
     */
    public record Written(String subject, String body, LocalDate date) {}

    /** Never throws, whatever is written. */
    public static ReadMail read(Written written, OrderReading context) {
        List<Question> asked = written.body()
                .lines()
                .filter(line -> !line.isBlank())
                .map(line -> new Question(line.strip(), "This could not be read."))
                .toList();
        return new ReadMail(List.of(), asked, List.of());
    }
}

package dawnkettle.book;

import java.util.List;

/**
 * What a customer's mail asks for: what was understood, what must be asked, and what was passed over as no order.
 *
 * @param passedOver lines in which no order was seen (a greeting, a name); shown in the reply all the same
 */
public record ReadMail(List<OrderWish> understood, List<Question> questions, List<String> passedOver) {
    public ReadMail {
        understood = List.copyOf(understood);
        questions = List.copyOf(questions);
        passedOver = List.copyOf(passedOver);
    }

    /** Words of the mail that were not booked, and a sentence for the reply that says why. */
    public record Question(String words, String why) {}

    /** Whether there is anything in it that a reply must be about. */
    public boolean isOrder() {
        return !understood.isEmpty() || !questions.isEmpty();
    }
}

package dawnkettle.book;

import dawnkettle.book.Sense.Kind;
import java.time.LocalDate;
import java.util.List;
import java.util.regex.Pattern;

/**
 * A mail of somebody else that the writer sends on.
 *
 * @param head its lines down to the first blank one: from whom, when
 * @param lines its own text
 */
record Forwarded(List<String> head, List<String> lines) {
    private static final Pattern FROM = Pattern.compile("(?i)\\W*(?:from|de)\\W*:.*");
    private static final Pattern DATE = Pattern.compile("(?i)\\W*(?:date|sent|fecha|enviado)\\W*:.*");

    static final Forwarded NONE = new Forwarded(List.of(), List.of());

    Forwarded {
        head = List.copyOf(head);
        lines = List.copyOf(lines);
    }

    /** Whether it is meant as an order: the writer says so ("please do this"), it is of the same day, and not our own mail. */
    boolean isOrdered(List<String> own, Lexicon lexicon, OrderReading context, LocalDate mail) {
        boolean said = own.stream()
                .flatMap(line -> lexicon.senses(line).stream())
                .anyMatch(sense -> Asking.says(sense, "forward"));
        boolean foreign = head.stream()
                .filter(line -> FROM.matcher(line).matches())
                .flatMap(line -> lexicon.senses(line).stream())
                .noneMatch(sense -> sense.value().equals("house"));
        return said && foreign && head.stream().anyMatch(line -> isOf(mail, line, lexicon, context));
    }

    private static boolean isOf(LocalDate mail, String line, Lexicon lexicon, OrderReading context) {
        if (!DATE.matcher(line).matches()) return false;
        DaysSaid days = new DaysSaid(mail.minusDays(1), context, lexicon.dayFirst());
        days.takeAnyDay(true);
        return SayDays.in(lexicon.senses(line), days).stream()
                .anyMatch(sense -> sense.is(Kind.ON) && sense.value().equals(mail.toString()));
    }
}

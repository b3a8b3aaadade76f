package dawnkettle.book;

import dawnkettle.book.Piece.Days;
import dawnkettle.book.Piece.Doubt;
import dawnkettle.book.ReadMail.Question;
import dawnkettle.shop.Product;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Reads a customer's mail as a careful clerk would: what is not certain is asked, never guessed. */
public final class ReadOrderMail {
    private static final String TOO_LONG = "This is longer than we read; please send it in several mails.";
    private static final Pattern ANSWER = Pattern.compile("(?i)\\s*(?:re|aw|fwd?|rv|wg|tr)\\s*:.*");

    private final Written written;
    private final OrderReading context;
    private final OwnLines own;
    private final Lexicon lexicon;
    private final List<Unit> units = new ArrayList<>();
    private final List<Question> questions = new ArrayList<>();
    private final List<String> talk = new ArrayList<>();
    private boolean clouded;

    private ReadOrderMail(Written written, OrderReading context) {
        this.written = written;
        this.context = context;
        this.own = OwnLines.of(written.body());
        List<String> all = new ArrayList<>(own.lines());
        all.addAll(own.forwarded().lines());
        this.lexicon = Lexicon.of(context, words(written.subject(), all));
    }

    /**
     * A mail as it came.
     *
     * @param body plain text or HTML
     * @param date the mail's own day in the shop's zone; "tomorrow" is counted from it
     */
    public record Written(String subject, String body, LocalDate date) {}

    /** Never throws, whatever is written. */
    public static ReadMail read(Written written, OrderReading context) {
        return new ReadOrderMail(written, context).read();
    }

    private static List<Word> words(String subject, List<String> lines) {
        List<Word> words = new ArrayList<>(Word.in(subject));
        lines.stream().limit(OwnLines.MOST_LINES).forEach(line -> words.addAll(Word.in(cut(line))));
        return words;
    }

    private static String cut(String line) {
        return line.length() > OwnLines.LONGEST_LINE ? line.substring(0, OwnLines.LONGEST_LINE) : line;
    }

    private ReadMail read() {
        String subject = cut(written.subject().replaceAll("\\s+", " ").strip());
        MailLines lines = new MailLines(lexicon, context, written.date());
        boolean answer = ANSWER.matcher(subject).matches();
        Optional<Days> days = answer ? Optional.empty() : lines.subjectDays(subject);
        lines.moveBy(answer ? "" : subject);
        List<String> read = own.lines().stream().limit(OwnLines.MOST_LINES).toList();
        if (isSentOn(lines, read)) {
            talk.addAll(read);
            days = lines.subjectDays(subject.replaceFirst("^[^:]*:", ""));
            read = own.forwarded().lines().stream().limit(OwnLines.MOST_LINES).toList();
        }
        read = lines.withProduct(subject, Unwrap.of(FormRows.of(read, codes(), lines::isOfOrder), lexicon));
        int end = signature(lines, read);
        for (String line : read.subList(0, end)) body(lines, line);
        talk.addAll(read.subList(end, read.size()));
        own.lines().stream().skip(OwnLines.MOST_LINES).limit(1).forEach(line -> question(cut(line), TOO_LONG));
        if (units.stream().noneMatch(ReadOrderMail::isOrder) && !answer) subjectAlone(lines, subject);
        return finished(days);
    }

    /** "Please do this", above what somebody else wrote. */
    private boolean isSentOn(MailLines lines, List<String> read) {
        return read.stream().noneMatch(lines::isOfOrder)
                && own.forwarded().isOrdered(read, lexicon, context, written.date());
    }

    private Set<String> codes() {
        return context.products().stream().map(Product::code).collect(Collectors.toSet());
    }

    private void question(String words, String why) {
        questions.add(new Question(words, why));
    }

    /** Where a name and an address begin: below a greeting, with no word of an order from there on. */
    private static int signature(MailLines lines, List<String> read) {
        int from = read.size();
        while (from > 0 && !lines.isOfOrder(read.get(from - 1))) from--;
        for (int i = from; i < read.size(); i++) if (lines.signsOff(read.get(i))) return i;
        return read.size();
    }

    private void body(MailLines lines, String line) {
        if (line.length() > OwnLines.LONGEST_LINE) question(cut(line), TOO_LONG);
        else units.addAll(lines.units(line));
        clouded |= lines.clouds();
    }

    private static boolean isOrder(Unit unit) {
        return unit.hasWants() || unit.pieces().stream().anyMatch(Doubt.class::isInstance);
    }

    /** An order in the subject counts where the body has none. */
    private void subjectAlone(MailLines lines, String subject) {
        List<Unit> read = new MailLines(lexicon, context, written.date()).units(subject);
        if (read.stream().anyMatch(Unit::hasWants)) units.addAll(0, read);
    }

    private ReadMail finished(Optional<Days> subject) {
        Weigh weighed = new Weigh(units, lexicon, new FindProduct(context));
        weighed.all(Decide.of(PlaceDays.of(units, subject), written.date()), clouded);
        questions.addAll(0, weighed.questions());
        units.stream().map(weighed::passedOver).flatMap(List::stream).forEach(talk::add);
        if (weighed.understood().isEmpty()
                && questions.isEmpty()
                && own.quoted()
                && own.lines().isEmpty())
            question(written.subject(), "What you forward or quote is not read; please write the order yourself.");
        return new ReadMail(weighed.understood(), questions.stream().distinct().toList(), talk);
    }
}

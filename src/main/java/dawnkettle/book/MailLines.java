package dawnkettle.book;

import dawnkettle.book.Piece.Days;
import dawnkettle.book.Sense.Kind;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reads a mail line by line, from its first to its last. */
final class MailLines {
    private static final Kind[] HARMLESS = {
        Kind.NOISE, Kind.NEXT_WEEK, Kind.HELLO, Kind.COMMA, Kind.COLON, Kind.DASH, Kind.MORE
    };

    private static final Kind[] OF_ORDER = {
        Kind.KIND, Kind.CODE, Kind.DROP, Kind.SKIP, Kind.FORGET, Kind.SET, Kind.SET_TO
    };

    private static final Kind[] BARE = {Kind.NUMBER, Kind.NOISE, Kind.COMMA, Kind.MORE, Kind.OLD, Kind.NO, Kind.BYE};

    private final Lexicon lexicon;
    private final OrderReading context;
    private final LocalDate date;
    private final DaysSaid days;
    private boolean clouded;
    private boolean unclearHead;
    private Optional<DayTable> table = Optional.empty();

    MailLines(Lexicon lexicon, OrderReading context, LocalDate date) {
        this.lexicon = lexicon;
        this.context = context;
        this.date = date;
        this.days = new DaysSaid(date, context, lexicon.dayFirst());
    }

    /** Whether words were met that can turn everything else round. */
    boolean clouds() {
        return clouded;
    }

    /** A subject "next week" moves the weekdays of the body. */
    void moveBy(String subject) {
        List<Sense> senses = lexicon.senses(subject);
        for (int i = 0; i < senses.size(); i++) if (alone(senses, i)) days.moveToNextWeek();
        DaysSaid said = new DaysSaid(date, context, lexicon.dayFirst());
        SayDays.in(senses, said);
        days.moveAs(said);
    }

    Optional<Days> subjectDays(String subject) {
        MailLines fresh = new MailLines(lexicon, context, date);
        fresh.moveBy(subject);
        List<Sense> found = SayDays.in(lexicon.senses(subject), fresh.days);
        List<LocalDate> said = found.stream()
                .filter(sense -> sense.is(Kind.ON))
                .map(sense -> LocalDate.parse(sense.value()))
                .distinct()
                .toList();
        String asked = found.stream()
                .filter(sense -> sense.is(Kind.ON_ASKED))
                .map(Sense::value)
                .findFirst()
                .orElse("");
        return said.isEmpty() && asked.isEmpty()
                ? Optional.empty()
                : Optional.of(new Days(said, asked, false, subject));
    }

    /** "Kind regards, Barnaby": what comes after is a name and an address. */
    boolean signsOff(String line) {
        if (line.length() > OwnLines.LONGEST_LINE) return false;
        return line.matches("-- ?|_{2,}") || Signature.begins(lexicon.senses(line), line);
    }

    /** Below the name only what looks like an order counts. */
    boolean isOfOrder(String line) {
        if (line.length() > OwnLines.LONGEST_LINE) return true;
        List<Sense> senses = lexicon.senses(line);
        if (Signature.isAddress(senses, line)) return false;
        int first = !senses.isEmpty() && line.strip().matches("(?iU)(?:for|on|para)\\b.*") ? 1 : 0;
        boolean day = senses.size() > first && senses.get(first).is(Kind.WEEKDAY, Kind.DAY, Kind.DATE);
        return day || senses.stream().anyMatch(sense -> sense.is(OF_ORDER));
    }

    /** "18 on Wednesday, 12 on Friday" below the subject "firm": the one product of a mail that names none below it. */
    List<String> withProduct(String subject, List<String> read) {
        List<Sense> product = lexicon.senses(subject).stream()
                .filter(sense -> sense.is(Kind.KIND, Kind.CODE, Kind.FORM, Kind.SIZE, Kind.GRADE))
                .toList();
        boolean one = product.stream().filter(s -> s.is(Kind.KIND, Kind.CODE)).count() == 1
                && lexicon.senses(subject).stream().noneMatch(s -> s.is(Kind.NUMBER, Kind.NO, Kind.DROP, Kind.UNSURE));
        boolean named = one
                && read.stream()
                        .flatMap(line -> lexicon.senses(line).stream())
                        .anyMatch(s -> s.is(Kind.KIND, Kind.CODE, Kind.FORM));
        if (!one || named || read.stream().anyMatch(line -> line.length() > OwnLines.LONGEST_LINE)) return read;
        String words = subject.substring(
                product.get(0).from(), product.get(product.size() - 1).until());
        return read.stream()
                .map(line -> lexicon.senses(line).stream().anyMatch(s -> s.is(Kind.NUMBER, Kind.DOZEN))
                                && !Signature.isAddress(lexicon.senses(line), line)
                        ? words + ": " + line
                        : line)
                .toList();
    }

    List<Unit> units(String line) {
        if (Signature.isAddress(lexicon.senses(line), line))
            return List.of(new Unit(List.of(new Piece.Talk(line)), line));
        List<Sense> senses = nextWeek(TakeBack.in(lexicon.senses(line)));
        clouded |= senses.stream().anyMatch(sense -> sense.is(Kind.FORGET));
        if (table.isPresent()
                && table.get().goesOnIn(SayDays.in(senses, new DaysSaid(date, context, lexicon.dayFirst()))))
            return below(table.get().row(line, senses, this::entry));
        List<Sentence> sentences = sentences(line, senses);
        table = sentences.size() == 1 ? DayTable.headedBy(line, sentences.get(0).senses()) : Optional.empty();
        if (table.isPresent()) return List.of();
        List<Unit> units = new ArrayList<>();
        for (Sentence sentence : sentences) {
            clouded |= isTurn(sentence);
            units.add(read(sentence));
        }
        return UnclearHead.isOne(line, sentences, units) ? head(units) : below(units);
    }

    private Unit read(Sentence sentence) {
        return new Unit(
                Mentions.settled(ReadSentence.of(sentence, context), sentence),
                sentence.words(),
                Traps.asksFor(sentence));
    }

    private List<Unit> entry(String entry) {
        return sentencesOf(entry, lexicon.senses(entry)).stream()
                .map(this::read)
                .toList();
    }

    private List<Unit> head(List<Unit> units) {
        unclearHead = true;
        return units;
    }

    /** What stands below a head that is not understood is not certain, down to the next head. */
    private List<Unit> below(List<Unit> units) {
        unclearHead &= units.stream().allMatch(UnclearHead::goesOnBelow);
        return unclearHead ? units.stream().map(UnclearHead::doubted).toList() : units;
    }

    /** A day in talk ("thanks for Monday") is no day of delivery, nor one that others come after. */
    private List<Sentence> sentences(String line, List<Sense> senses) {
        LocalDate before = days.latest();
        List<Sentence> once = sentencesOf(line, SayDays.in(senses, days));
        boolean talk = once.size() > 1 && once.stream().anyMatch(one -> isTalkOfDays(one) || isStrange(one));
        if (!talk) return once;
        days.backTo(before);
        List<Sentence> again = new ArrayList<>();
        for (Sentence one : once) {
            int from = one.senses().get(0).from();
            int until = one.senses().get(one.senses().size() - 1).until();
            List<Sense> own = senses.stream()
                    .filter(sense -> sense.from() >= from && sense.until() <= until)
                    .toList();
            if (isStrange(one)) again.add(one);
            else if (isTalkOfDays(one))
                again.add(new Sentence(
                        line, own.stream().map(MailLines::withoutDay).toList()));
            else again.addAll(sentencesOf(line, SayDays.in(own, days)));
        }
        return again;
    }

    private List<Sentence> sentencesOf(String line, List<Sense> dated) {
        return Sentence.in(line, Figures.in(dated, context.products()));
    }

    private static Sense withoutDay(Sense sense) {
        boolean day = sense.is(
                Kind.WEEKDAY,
                Kind.DAY,
                Kind.DATE,
                Kind.ORDINAL,
                Kind.MONTH,
                Kind.LAST,
                Kind.NEXT,
                Kind.THIS,
                Kind.LAST_WEEK);
        return day ? sense.to(Kind.UNKNOWN, "day") : sense;
    }

    /** "The canteen is closed 24 Dec to 3 Jan.": asked about, and no day that others come after. */
    private static boolean isStrange(Sentence sentence) {
        return sentence.has(Kind.ON, Kind.ON_ASKED)
                && sentence.has(Kind.UNKNOWN)
                && !sentence.has(Kind.BYE, Kind.PAST, Kind.HELLO)
                && !sentence.has(Kind.NUMBER, Kind.KIND, Kind.FORM, Kind.CASE, Kind.CODE, Kind.COLON);
    }

    private static boolean isTalkOfDays(Sentence sentence) {
        return sentence.has(Kind.ON, Kind.ON_ASKED)
                && sentence.has(Kind.PAST, Kind.BYE)
                && sentence.has(Kind.UNKNOWN, Kind.PAST)
                && !sentence.has(OF_ORDER)
                && !sentence.has(Kind.NUMBER, Kind.FORM, Kind.CASE, Kind.SAME, Kind.SAME_AS, Kind.DOUBLE, Kind.COLON);
    }

    /** "Make it 30." with nothing that says of what turns what was said before. */
    private static boolean isTurn(Sentence sentence) {
        boolean named = sentence.has(Kind.KIND, Kind.FORM, Kind.CODE);
        boolean skips = sentence.has(Kind.DROP) && sentence.has(Kind.ON) && !sentence.has(Kind.NUMBER);
        boolean bare = sentence.senses().stream().allMatch(s -> s.is(BARE))
                && sentence.has(Kind.NUMBER, Kind.OLD, Kind.NO)
                && sentence.senses().stream()
                        .noneMatch(s -> Asking.says(s, "name") || s.value().matches("\\d+\\.\\d\\d"));
        return !named && (bare || sentence.parts().stream().anyMatch(part -> isTurn(part, sentence, skips)));
    }

    private static boolean isTurn(Sentence.Part part, Sentence sentence, boolean skips) {
        boolean turns = part.has(Kind.SET, Kind.SET_TO, Kind.ONLY)
                || part.has(Kind.DROP) && !skips
                || part.has(Kind.OLD) && part.has(Kind.NUMBER)
                || part.has(Kind.NO) && sentence.has(Kind.NUMBER);
        boolean figure = part.has(Kind.NUMBER) || part.has(Kind.NO);
        return turns && !part.has(Kind.UNKNOWN) && (figure || !sentence.has(Kind.UNKNOWN));
    }

    /** "For next week we need:" moves the weekdays that follow; said otherwise, it makes all of it uncertain. */
    private List<Sense> nextWeek(List<Sense> senses) {
        List<Sense> kept = new ArrayList<>(senses);
        for (int i = 0; i < senses.size(); i++) {
            if (!alone(senses, i)) continue;
            if (heads(senses, i)) days.moveToNextWeek();
            else clouded = true;
            kept.set(i, senses.get(i).to(Kind.NOISE, ""));
        }
        return kept;
    }

    private static boolean alone(List<Sense> senses, int at) {
        boolean besideWeekday = at > 0 && senses.get(at - 1).is(Kind.WEEKDAY)
                || at + 1 < senses.size() && senses.get(at + 1).is(Kind.WEEKDAY);
        return senses.get(at).is(Kind.NEXT_WEEK) && !besideWeekday;
    }

    private static boolean heads(List<Sense> senses, int at) {
        int from = at;
        while (from > 0 && senses.get(from - 1).is(HARMLESS)) from--;
        int to = at + 1;
        while (to < senses.size() && senses.get(to).is(HARMLESS)) to++;
        boolean begins = from == 0 || senses.get(from - 1).is(Kind.STOP, Kind.QUESTION_MARK);
        boolean ends = to == senses.size()
                || senses.get(to - 1).is(Kind.COLON)
                || senses.get(to).is(Kind.STOP);
        return begins && ends;
    }
}

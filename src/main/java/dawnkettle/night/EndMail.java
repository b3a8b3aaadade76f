package dawnkettle.night;

import dawnkettle.book.Admission;
import dawnkettle.mail.Answer;
import dawnkettle.mail.Arrived;
import dawnkettle.mail.Mail;
import dawnkettle.night.Correspondents.Crew;
import dawnkettle.night.Correspondents.Known;
import dawnkettle.night.Correspondents.Orderer;
import dawnkettle.night.ObeyLines.Outcome;
import dawnkettle.store.MailEnd;
import dawnkettle.store.MailEnd.State;
import dawnkettle.store.MailRows;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/** Brings one mail to its one end: taken, needs an answer, or set aside. */
final class EndMail {
    /** A mail this old is a replay, or lay somewhere; what it asks for may be long over (common practice, no source). */
    private static final Duration OLD = Duration.ofDays(4);

    /** No address is written down, also where somebody put one into a subject. */
    private static final Pattern ADDRESS = Pattern.compile("\\S+@\\S+");

    /** Back from now: "replies a night" are counted over it. */
    private static final Duration NIGHT = Duration.ofHours(12);

    /** So many times a customer's replies an hour go to who works here: each batch is a mail of its own (common practice, no source). */
    private static final int OF_THE_HOUSE = 5;

    private static final String BEFORE = "came before, and counts once";
    private static final String STRANGER = "nobody known wrote it";
    private static final String PROGRAM = "a program or a list sent it";

    private final Office office;
    private final Letters letters;
    private final Correspondents correspondents;

    EndMail(Office office, Letters letters) {
        this.office = office;
        this.letters = letters;
        this.correspondents = new Correspondents(office.shop(), settings());
    }

    private OrderMailSettings settings() {
        return office.edges().mail().in().settings();
    }

    /** Whether nothing is wanted of a mail that was set aside, so that it spoils no morning. */
    static boolean isStrange(MailEnd end) {
        return List.of(BEFORE, STRANGER, PROGRAM).stream()
                .anyMatch(why -> end.note().endsWith(": " + why));
    }

    /** In one transaction: what the mail holds, its end, and the reply into the outbox. */
    MailEnd end(Arrived mail) {
        Optional<Known> sender = correspondents.find(mail.sender());
        MailEnd end = whyAside(mail, sender)
                .map(why -> aside(mail, sender, why))
                .orElseGet(() -> open(mail, sender.orElseThrow()));
        return note(mail, end);
    }

    /** The end of a mail over which we stumbled. */
    MailEnd stumbled(Arrived mail) {
        Optional<Known> sender = correspondents.find(mail.sender());
        return note(mail, aside(mail, sender, "the clerk could not read it to its end, a mistake of ours"));
    }

    private MailEnd note(Arrived mail, MailEnd end) {
        MailRows.Spot spot =
                new MailRows.Spot(mail.place().validity(), mail.place().uid());
        office.ledger().mails().end(spot, mail.marks().messageId(), mail.marks().sha256(), end);
        return end;
    }

    private Optional<String> whyAside(Arrived mail, Optional<Known> sender) {
        if (office.ledger()
                .mails()
                .isKnown(mail.marks().messageId(), mail.marks().sha256())) return Optional.of(BEFORE);
        if (mail.refused().isPresent()) return mail.refused();
        if (sender.isEmpty()) return Optional.of(STRANGER);
        if (mail.sender().doubt().isPresent()) return mail.sender().doubt();
        if (mail.sender().automatic()) return Optional.of(PROGRAM);
        if (mail.content().written().isBefore(office.now().minus(OLD)))
            return Optional.of("it was written more than " + OLD.toDays() + " days ago");
        return Optional.empty();
    }

    private MailEnd aside(Arrived mail, Optional<Known> sender, String why) {
        String subject = Admission.quotable(
                        ADDRESS.matcher(mail.content().subject()).replaceAll("…"))
                .strip();
        String said = "mail " + (subject.isEmpty() ? "without a subject" : "\"" + subject + "\"")
                + sender.map(known -> " that says it is from " + known.word()).orElseGet(() -> from(mail)) + ": " + why;
        return new MailEnd(State.ASIDE, sender.map(Known::word).orElse(""), false, office.now(), said);
    }

    /** Of a stranger only the domain: enough to know whom to ring, and no address in the ledger. */
    private static String from(Arrived mail) {
        return mail.sender()
                .from()
                .map(address ->
                        " from somebody at " + Admission.quotable(address.substring(address.lastIndexOf('@') + 1)))
                .orElse("");
    }

    private MailEnd open(Arrived mail, Known sender) {
        long number = office.ledger().mails().lastNumber() + 1;
        String origin = "mail " + number;
        Outcome outcome = sender instanceof Orderer orderer
                ? new ServeOrder(office, orderer.customer(), origin).serve(mail.content())
                : new ObeyLines(office, origin, permitted(sender))
                        .obey(mail.content().body());
        boolean answered = mayAnswer(sender);
        if (answered) letters.queue(reply(number, mail, outcome));
        String said = "mail of " + sender.word() + ": " + said(outcome)
                + (answered ? "" : "; not answered, too many replies");
        return new MailEnd(
                outcome.open() == 0 ? State.TAKEN : State.ASKED, sender.word(), answered, office.now(), said);
    }

    private static Optional<Set<String>> permitted(Known sender) {
        return sender instanceof Crew crew ? Optional.of(crew.permitted()) : Optional.empty();
    }

    private boolean mayAnswer(Known sender) {
        Instant now = office.now();
        List<MailEnd> night = office.ledger().mails().since(now.minus(NIGHT)).stream()
                .filter(end -> end.answered() && !end.at().isAfter(now))
                .toList();
        long hour = night.stream()
                .filter(end -> end.sender().equals(sender.word()) && end.at().isAfter(now.minus(Duration.ofHours(1))))
                .count();
        int most = settings().limits().anHour() * (sender instanceof Orderer ? 1 : OF_THE_HOUSE);
        return hour < most && night.size() < settings().limits().aNight();
    }

    private Mail reply(long number, Arrived mail, Outcome outcome) {
        LocalDate today =
                LocalDate.ofInstant(office.now(), office.shop().house().zone());
        Answer.Asked asked = new Answer.Asked(
                mail.sender().from().orElseThrow(), mail.content().subject());
        return new Answer(office.shop().house(), Mail.idOf(today, "reply", Math.toIntExact(number)))
                .of(asked, verdict(outcome), outcome.open() == 0, outcome.parts())
                .answering(mail.marks().messageId());
    }

    private static String verdict(Outcome outcome) {
        if (outcome.done() == 0) return "Nothing is taken yet: please look.";
        return outcome.open() == 0
                ? "All of it is taken: " + said(outcome) + "."
                : "Please look: " + said(outcome) + ".";
    }

    private static String said(Outcome outcome) {
        String done = outcome.done() + (outcome.done() == 1 ? " line is" : " lines are") + " taken";
        return outcome.open() == 0 ? done : done + ", " + outcome.open() + " not";
    }
}

package dawnkettle.night;

import dawnkettle.store.MailEnd;
import dawnkettle.store.MailEnd.State;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/** What the owner should know of the mails that came since the last summary. */
final class GatherMails {
    /** So many mails are named in the summary, the rest counted (common practice, no source). */
    private static final int MOST = 12;

    private final Office office;
    private final LocalDate productionDate;

    GatherMails(Office office, LocalDate productionDate) {
        this.office = office;
        this.productionDate = productionDate;
    }

    /** Those set aside that may be an order all the same: they claim to be somebody's, or could not be read. */
    List<String> doubtful() {
        return those(end -> end.state() == State.ASIDE && !EndMail.isStrange(end));
    }

    /** Those set aside of which nothing is wanted: by strangers and programs, or come twice. */
    List<String> strange() {
        return those(end -> end.state() == State.ASIDE && EndMail.isStrange(end));
    }

    /** Those of which something was asked back, and nobody knows yet whether it was answered. */
    List<String> asked() {
        return those(end -> end.state() == State.ASKED);
    }

    private List<String> those(Predicate<MailEnd> wanted) {
        Timetable timetable = office.timetable();
        Instant from = timetable.at(
                office.shop().calendar().previous(productionDate),
                office.papers().settings().times().summary());
        List<String> notes = office.ledger().mails().since(from).stream()
                .filter(wanted)
                .map(MailEnd::note)
                .toList();
        if (notes.size() <= MOST) return notes;
        List<String> some = new ArrayList<>(notes.subList(0, MOST));
        some.add(notes.size() - MOST + " more mails like these lie in the mailbox, each with a flag");
        return some;
    }
}

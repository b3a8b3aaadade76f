package dawnkettle.night;

import dawnkettle.mail.Arrived;
import dawnkettle.store.MailEnd;
import dawnkettle.store.MailRows.Spot;
import dawnkettle.trouble.DeviceAway;
import java.time.Duration;
import java.time.Instant;
import java.util.Set;

/** Looks for mails now and then and brings each to its end: into the ledger first, then marked in the mailbox. */
final class TakeMails {
    private final Office office;
    private final EndMail ends;
    private Instant next = Instant.MIN;
    private int failures;

    TakeMails(Office office, Letters letters) {
        this.office = office;
        this.ends = new EndMail(office, letters);
    }

    void run() {
        Instant now = office.now();
        if (now.isBefore(next)) return;
        MailIn in = office.edges().mail().in();
        Set<Spot> known = Set.copyOf(office.ledger().mails().spots());
        try {
            in.mailbox().look(place -> known.contains(new Spot(place.validity(), place.uid())), this::take);
            failures = 0;
        } catch (DeviceAway away) {
            failures++;
            office.tell(away.getMessage());
        }
        Duration rest = failures == 0 ? Duration.ZERO : Night.wait(failures);
        Duration every = in.settings().every();
        next = now.plus(rest.compareTo(every) > 0 ? rest : every);
    }

    /** @return whether no person need look at it */
    private boolean take(Arrived mail) {
        MailEnd end;
        try {
            end = office.ledger().inTransaction(() -> ends.end(mail));
        } catch (DeviceAway away) {
            throw away;
        } catch (RuntimeException mistake) {
            office.tell("a mail could not be taken, a mistake of ours: "
                    + mistake.getClass().getName() + " at " + mistake.getStackTrace()[0]);
            end = office.ledger().inTransaction(() -> ends.stumbled(mail));
        }
        office.tell(end.note());
        return end.state() == MailEnd.State.TAKEN;
    }
}

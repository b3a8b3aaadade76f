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
    private Instant last = Instant.MIN;
    private Instant next = Instant.MIN;
    private int failures;
    private boolean isWaiting;

    TakeMails(Office office, Letters letters) {
        this.office = office;
        this.ends = new EndMail(office, letters);
    }

    void run() {
        Instant now = office.now();
        boolean isClockBack = now.isBefore(last);
        if (now.isBefore(next) && !isClockBack || waitsForClock()) return;
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
        last = now;
        next = now.plus(rest.compareTo(every) > 0 ? rest : every);
    }

    /**
     * By a clock that may be wrong no mail is taken: "for Friday" would be another Friday, and what is fresh would be set aside
     * as old. It waits where it lies, until the clock is known or a person says that it is right.
     */
    private boolean waitsForClock() {
        boolean waits = office.edges().mail().in() != MailIn.NONE && new ClockGate(office).isUnknown();
        if (waits && !isWaiting) office.tell("no mail is taken in while the clock is not known to be right");
        isWaiting = waits;
        return waits;
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

package dawnkettle.night;

import static java.nio.charset.StandardCharsets.UTF_8;

import dawnkettle.mail.KeptMail;
import dawnkettle.mail.Mail;
import dawnkettle.store.OutboxRows;
import dawnkettle.store.QueuedMail;
import dawnkettle.trouble.DeviceAway;
import java.time.Duration;
import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * The outbox: a mail is kept whole first, then on its way, then sent. What the server did not take is tried again for two
 * days, what it may have taken goes again under the same id and says so.
 */
final class Letters {
    /** Waits between two tries: sooner than mail servers among themselves, for this mail wakes a person (common practice, no source). */
    private static final Duration FIRST_WAIT = Duration.ofMinutes(5);

    private static final Duration LONGEST_WAIT = Duration.ofHours(2);
    private static final Duration GIVEN_UP = Duration.ofDays(2);

    /** So often it is tried whatever the clock says: one that was wrong may have dated a mail two days back. */
    private static final int FEWEST_TRIES = 8;

    private static final String AGAIN =
            "This mail may have arrived before: the server did not say. It is the same mail.";

    private final Office office;
    /** Given to the server, and the ledger has not taken what became of them. */
    private final Set<String> unnoted = new HashSet<>();

    Letters(Office office) {
        this.office = office;
    }

    /**
     * Keeps the mail and tries it once; an id that was kept before is not kept a second time.
     *
     * @return how it stands, in words for the ledger
     */
    String send(Mail mail) {
        for (Mail one : mail.apart()) {
            boolean isNew = outbox().find(one.id()).isEmpty();
            keep(one);
            if (isNew && new AfterRestore(office).mayHaveMail())
                outbox().again(one.id(), office.now(), true, "the ledger was put back, and may have sent it before");
        }
        for (Mail one : mail.apart())
            outbox().find(one.id())
                    .filter(queued -> isDue(queued, office.now()))
                    .ifPresent(this::deliver);
        return mail.apart().stream()
                .map(one -> outbox().find(one.id()).orElseThrow())
                .filter(queued -> queued.state() != QueuedMail.State.SENT)
                .findFirst()
                .map(queued -> mail.subject() + " (not sent yet: " + queued.note() + ")")
                .orElse(mail.subject());
    }

    /** Keeps the mail for {@link #deliver()}, each address for itself: one that nobody has keeps it from no other. */
    void queue(Mail mail) {
        mail.apart().forEach(this::keep);
    }

    private void keep(Mail one) {
        outbox().queue(one.id(), one.subject(), KeptMail.write(one), office.now());
    }

    /** Tries every mail whose time has come; of which the ledger did not take what became of it, goes again and says so. */
    void deliver() {
        for (String id : List.copyOf(unnoted)) {
            outbox().again(id, office.now(), true, "what became of it could not be noted");
            unnoted.remove(id);
        }
        outbox().due(office.now(), LONGEST_WAIT).forEach(this::deliver);
    }

    Optional<Instant> nextTry() {
        return outbox().nextTry();
    }

    /** Mails that nobody got, and that are not tried any more, since {@code from}. */
    List<QueuedMail> givenUp(Instant from) {
        return outbox().refusedSince(from);
    }

    private static boolean isDue(QueuedMail queued, Instant now) {
        return queued.state() == QueuedMail.State.WAITING && !queued.nextTry().isAfter(now);
    }

    private void deliver(QueuedMail queued) {
        String id = queued.messageId();
        Optional<Mail> kept = kept(id);
        if (kept.isEmpty()) {
            outbox().refused(id, office.now(), "it was kept by an older version and can't be sent any more");
            return;
        }
        if (!outbox().sending(id, office.now())) return;
        Mail mail = kept.get();
        unnoted.add(id);
        if (isSent(queued, queued.maybeSent() ? mail.withFirstLine(AGAIN) : mail)) outbox().sent(id, office.now());
        unnoted.remove(id);
    }

    private boolean isSent(QueuedMail queued, Mail mail) {
        try {
            office.edges().mail().post().send(mail, office.now());
            return true;
        } catch (DeviceAway away) {
            later(queued, away);
            return false;
        }
    }

    private void later(QueuedMail queued, DeviceAway away) {
        String id = queued.messageId();
        Instant now = office.now();
        boolean isOld = queued.attempts() >= FEWEST_TRIES
                && now.isAfter(queued.queuedAt().plus(GIVEN_UP));
        if (isOld && !new ClockGate(office).isUnknown()) {
            outbox().refused(id, now, "given up after two days: " + away.getMessage());
            office.tell("mail " + id + " is given up after two days: " + away.getMessage());
            return;
        }
        outbox().again(id, now.plus(wait(queued.attempts())), away.isAmbiguous(), away.getMessage());
        office.tell(away.getMessage());
    }

    /** 5, 10, 20 … minutes, at most two hours. */
    static Duration wait(int attemptsBefore) {
        Duration wait = FIRST_WAIT.multipliedBy(1L << Math.min(attemptsBefore, 5));
        return wait.compareTo(LONGEST_WAIT) < 0 ? wait : LONGEST_WAIT;
    }

    private Optional<Mail> kept(String id) {
        byte[] bytes = outbox().message(id);
        boolean isKept = new String(bytes, UTF_8).startsWith(KeptMail.FIRST_LINE);
        return isKept ? Optional.of(KeptMail.read(bytes)) : Optional.empty();
    }

    private OutboxRows outbox() {
        return office.ledger().outbox();
    }
}

package dawnkettle.night;

import dawnkettle.mail.Mail;
import dawnkettle.store.QueuedMail;
import dawnkettle.trouble.DeviceAway;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Optional;

/** Sends mails, each under its own id: queued first, then on its way, then sent, or tried again later. */
final class Letters {
    private static final Duration FIRST_WAIT = Duration.ofMinutes(5);

    private static final String AGAIN =
            "This mail may have arrived before: the server did not say. It is the same mail.";

    private final Office office;

    Letters(Office office) {
        this.office = office;
    }

    /** @throws DeviceAway where it did not go out, or may have */
    void send(Mail mail) {
        byte[] words = mail.body().text().getBytes(StandardCharsets.UTF_8);
        office.ledger().outbox().queue(mail.id(), mail.subject(), words, office.now());
        Optional<QueuedMail> queued = office.ledger().outbox().find(mail.id());
        if (queued.filter(one -> one.state() == QueuedMail.State.SENT).isPresent()) return;
        boolean maybeSent = queued.filter(QueuedMail::maybeSent).isPresent();
        if (!office.ledger().outbox().sending(mail.id(), office.now())) return;
        try {
            office.edges().mail().post().send(maybeSent ? mail.withFirstLine(AGAIN) : mail, office.now());
            office.ledger().outbox().sent(mail.id(), office.now());
        } catch (DeviceAway away) {
            office.ledger()
                    .outbox()
                    .again(mail.id(), office.now().plus(FIRST_WAIT), away.isAmbiguous(), away.getMessage());
            throw away;
        }
    }
}

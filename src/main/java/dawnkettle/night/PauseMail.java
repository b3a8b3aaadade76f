package dawnkettle.night;

import dawnkettle.mail.Alarm;
import dawnkettle.mail.AlertMail;
import dawnkettle.mail.Mail;
import dawnkettle.trouble.Trouble;
import java.time.Instant;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Optional;

/** Tells a person by mail, while a device waits for them; the alerts of each look at the ledger come only once it has given up. */
final class PauseMail {
    private static final int MINUTES_BETWEEN = 30;

    private final Office office;

    PauseMail(Office office) {
        this.office = office;
    }

    /**
     * One mail about the same thing in half an hour, however often it is said, and counted with the night's other alerts.
     * What keeps it from going out stops nothing.
     *
     * @param about what waits, as a subject says it
     */
    void tell(String about, String todo) {
        List<String> to = office.papers().settings().letters().alertTo();
        if (to.isEmpty()) return;
        Instant now = office.now();
        ZonedDateTime local = now.atZone(office.shop().house().zone());
        int slot = (local.getHour() * 60 + local.getMinute()) / MINUTES_BETWEEN;
        String id = Mail.idOf(local.toLocalDate(), "alert-" + about.replace(' ', '-'), slot);
        try {
            if (office.ledger().outbox().find(id).isEmpty())
                tell(
                        id,
                        new Alarm(id, about, "It goes on by itself once that is done.", todo, Optional.empty(), true),
                        now);
        } catch (Trouble trouble) {
            office.tell("no mail says so: " + trouble.getMessage());
        }
    }

    private void tell(String id, Alarm alarm, Instant now) {
        int before = Alerts.mailsOfTheNight(office);
        if (before >= Alerts.MOST) {
            office.tell("no mail says so: " + Alerts.MOST + " alerts went out tonight; look at status");
            return;
        }
        Letters letters = new Letters(office);
        Mail mail = new AlertMail(office.shop().house(), id, now)
                .of(List.of(alarm), List.of(), before == Alerts.MOST - 1)
                .addressedTo(office.papers().settings().letters().alertTo());
        office.ledger().inTransaction(() -> {
            letters.queue(mail);
            office.ledger().alarms().passed(Alerts.kept(alarm), now);
        });
        letters.deliver();
    }
}

package dawnkettle.night;

import dawnkettle.mail.Mail;
import dawnkettle.trouble.Trouble;
import java.time.ZonedDateTime;
import java.util.List;

/** Tells a person by mail, while a device waits for them; the alerts of each look at the ledger come only once it has given up. */
final class PauseMail {
    private static final int MINUTES_BETWEEN = 30;

    private final Office office;

    PauseMail(Office office) {
        this.office = office;
    }

    /** One mail about the same thing in half an hour, however often it is said. What keeps it from going out stops nothing. */
    void tell(String about, String text) {
        List<String> to = office.papers().settings().letters().alertTo();
        if (to.isEmpty()) return;
        ZonedDateTime now = office.now().atZone(office.shop().house().zone());
        int slot = (now.getHour() * 60 + now.getMinute()) / MINUTES_BETWEEN;
        String id = Mail.idOf(now.toLocalDate(), "alert-" + about.replace(' ', '-'), slot);
        String subject = office.shop().house().name() + ": " + about;
        try {
            Letters letters = new Letters(office);
            letters.queue(new Mail(id, to, subject, body(text), List.of()));
            letters.deliver();
        } catch (Trouble trouble) {
            office.tell("no mail says so: " + trouble.getMessage());
        }
    }

    private static Mail.Body body(String text) {
        String safe = text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
        return new Mail.Body(
                text + "\n",
                "<!DOCTYPE html>\n<html><body><main>\n<p>" + safe.replace("\n", "<br>\n")
                        + "</p></main></body></html>\n",
                List.of());
    }
}

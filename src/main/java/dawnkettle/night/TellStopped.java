package dawnkettle.night;

import dawnkettle.mail.Alarm;
import dawnkettle.mail.AlertMail;
import dawnkettle.mail.Mail;
import java.time.Instant;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The mail that the service itself can't write any more: that it has stopped and does not start again by itself. */
public final class TellStopped {
    private final Office office;

    public TellStopped(Office office) {
        this.office = office;
    }

    /** @return how the mail stands, in a line */
    public String of(String unit) {
        NightSettings.Mailing letters = office.papers().settings().letters();
        List<String> to = letters.alertTo().isEmpty() ? letters.summaryTo() : letters.alertTo();
        if (to.isEmpty()) return "nobody is told that " + unit + " has stopped; name alert_to in shop.toml";
        Instant now = office.now();
        ZonedDateTime local = now.atZone(office.shop().house().zone());
        String id = String.format(
                Locale.ROOT, "%s.stopped.%02d%02d", local.toLocalDate(), local.getHour(), local.getMinute());
        Mail mail = new AlertMail(office.shop().house(), id, now)
                .of(List.of(alarm(unit, id)), List.of(), false)
                .addressedTo(to);
        return new Letters(office).send(mail);
    }

    private static Alarm alarm(String unit, String id) {
        return new Alarm(
                id,
                unit + " has stopped and does not start again by itself",
                "what was printed and mailed holds, and nothing in the ledger is lost.",
                "run \"dawnkettle check\" and mend what it names, then \"systemctl restart dawnkettle\"; until then work"
                        + " from the last sheets or the fallback sheet.",
                Optional.empty(),
                true);
    }
}

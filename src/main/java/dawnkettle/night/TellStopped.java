package dawnkettle.night;

import dawnkettle.mail.Alarm;
import dawnkettle.mail.AlertMail;
import dawnkettle.mail.Mail;
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
        ZonedDateTime local = local();
        String id = String.format(
                Locale.ROOT, "%s.stopped.%02d%02d", local.toLocalDate(), local.getHour(), local.getMinute());
        return tell(unit + " has stopped", id, alarm(unit, id));
    }

    /**
     * It dies, is started and dies again. Whoever sees it first writes, one mail a day.
     *
     * @return how the mail stands, in a line
     */
    public String diesAgain(String unit) {
        String id = local().toLocalDate() + ".dies-again";
        Alarm alarm = new Alarm(
                id,
                unit + " dies and is started again, at least three times within an hour",
                "what was printed and mailed holds, nothing in the ledger is lost, and no label comes twice.",
                "until it stays up, work from the last sheets or the fallback sheet. Say \"dawnkettle status\" and"
                        + " \"dawnkettle selftest\"; then send us what \"dawnkettle bundle\" makes. See the card"
                        + " \"The machine is dead\".",
                Optional.empty(),
                true);
        return tell(unit + " dies again and again", id, alarm);
    }

    private String tell(String what, String id, Alarm alarm) {
        NightSettings.Mailing letters = office.papers().settings().letters();
        List<String> to = letters.alertTo().isEmpty() ? letters.summaryTo() : letters.alertTo();
        if (to.isEmpty()) return "nobody is told that " + what + "; name alert_to in shop.toml";
        Mail mail = new AlertMail(office.shop().house(), id, office.now())
                .of(List.of(alarm), List.of(), false)
                .addressedTo(to);
        return new Letters(office).send(mail);
    }

    private ZonedDateTime local() {
        return office.now().atZone(office.shop().house().zone());
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

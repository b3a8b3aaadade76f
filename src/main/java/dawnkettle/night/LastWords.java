package dawnkettle.night;

import dawnkettle.mail.Alarm;
import dawnkettle.mail.AlertMail;
import dawnkettle.mail.Mail;
import dawnkettle.trouble.DiskAway;
import dawnkettle.trouble.Trouble;
import java.time.Instant;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Optional;

/** The mail that a process sends whose disk is gone: it needs none, and nothing of it is kept. */
public final class LastWords {
    private final Office office;

    public LastWords(Office office) {
        this.office = office;
    }

    /** Tries it once, where somebody is to be told. */
    public void say(DiskAway gone) {
        NightSettings.Mailing mailing = office.papers().settings().letters();
        List<String> to = mailing.alertTo().isEmpty() ? mailing.summaryTo() : mailing.alertTo();
        if (to.isEmpty()) return;
        Instant now = office.now();
        ZonedDateTime local = now.atZone(office.shop().house().zone());
        Alarm alarm = new Alarm(
                "disk",
                "the clerk has stopped: " + gone.getMessage(),
                "Nothing is printed twice; what was written down before is kept, or lies in last night's copy.",
                "Work from the sheets on the wall or the fallback sheet in the tray. See the card \"The box is dead\".",
                Optional.empty(),
                true);
        String id = Mail.idOf(local.toLocalDate(), "disk", local.getHour() * 60 + local.getMinute());
        Mail mail = new AlertMail(office.shop().house(), id, now).of(List.of(alarm), List.of(), true);
        try {
            office.edges().mail().post().send(mail.addressedTo(to), now);
        } catch (Trouble nobodyHears) {
            office.tell("no mail says so: " + nobodyHears.getMessage());
        }
    }
}

package dawnkettle.night;

import dawnkettle.mail.Alarm;
import dawnkettle.mail.AlertMail;
import dawnkettle.mail.Mail;
import dawnkettle.store.AlarmRows;
import dawnkettle.store.KeptAlarm;
import java.time.Duration;
import java.time.Instant;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Writes to a person who may be asleep: the first trouble at once, what follows once an hour, then that all is clear. */
final class Alerts {
    private static final Duration HOUR = Duration.ofHours(1);

    /** How far back mails count towards the night's cap. */
    private static final Duration NIGHT = Duration.ofHours(12);

    /** So many a night wake a person, more make nobody look. Common practice, no source. */
    static final int MOST = 8;

    private final Office office;
    private final Letters letters;
    private final Alarms alarms;

    Alerts(Office office, Letters letters) {
        this.office = office;
        this.letters = letters;
        this.alarms = new Alarms(office, letters);
    }

    /** Looks at what is the matter and writes where something is to be told now. */
    void run() {
        List<String> to = office.papers().settings().letters().alertTo();
        if (to.isEmpty()) return;
        Instant now = office.now();
        rows().now(alarms.open().stream().map(Alerts::kept).toList(), now);
        List<KeptAlarm> open = rows().open();
        if (open.isEmpty()) allClear(to, now);
        else if (open.stream().anyMatch(alarm -> alarm.toldAt().isEmpty()) && isTime(open, now)) tell(open, to, now);
    }

    /** The first at once; what comes while something told is still open waits until an hour after the last mail. */
    private boolean isTime(List<KeptAlarm> open, Instant now) {
        if (mailsOfTheNight(office) >= MOST) return false;
        boolean isFirst = open.stream().allMatch(alarm -> alarm.toldAt().isEmpty());
        Optional<Instant> last = rows().lastTold(now);
        return isFirst && rows().over().isEmpty()
                || last.map(told -> !now.isBefore(told.plus(HOUR))).orElse(true);
    }

    /** Mails that count towards the night's cap. */
    static int mailsOfTheNight(Office office) {
        Instant now = office.now();
        return office.ledger().alarms().mailsBetween(now.minus(NIGHT), now);
    }

    private void tell(List<KeptAlarm> open, List<String> to, Instant now) {
        List<Alarm> fresh = open.stream()
                .filter(alarm -> alarm.toldAt().isEmpty())
                .map(Alerts::alarm)
                .toList();
        List<Alarm> before = open.stream()
                .filter(alarm -> alarm.toldAt().isPresent())
                .map(Alerts::alarm)
                .toList();
        boolean isLast = mailsOfTheNight(office) == MOST - 1;
        Mail mail = new AlertMail(office.shop().house(), id("alert", now), now)
                .of(fresh, before, isLast)
                .addressedTo(to);
        office.ledger().inTransaction(() -> {
            letters.queue(mail);
            rows().told(now);
        });
        letters.deliver();
        office.tell("alert: " + mail.subject());
    }

    private void allClear(List<String> to, Instant now) {
        List<Alarm> over = rows().over().stream().map(Alerts::alarm).toList();
        if (over.isEmpty()) return;
        Mail mail = new AlertMail(office.shop().house(), id("clear", now), now)
                .allClear(over)
                .addressedTo(to);
        office.ledger().inTransaction(() -> {
            letters.queue(mail);
            rows().clearTold();
        });
        letters.deliver();
        office.tell("alert: " + mail.subject());
    }

    /** As "2026-12-04.alert.0314": an alert a minute at most. */
    private String id(String word, Instant now) {
        ZonedDateTime local = now.atZone(office.shop().house().zone());
        return local.toLocalDate() + "." + word + "."
                + String.format(Locale.ROOT, "%02d%02d", local.getHour(), local.getMinute());
    }

    private AlarmRows rows() {
        return office.ledger().alarms();
    }

    /** As the ledger keeps it. */
    static KeptAlarm kept(Alarm alarm) {
        return new KeptAlarm(
                alarm.key(),
                alarm.happened(),
                alarm.safe(),
                alarm.todo(),
                alarm.by(),
                alarm.passes(),
                Optional.empty());
    }

    private static Alarm alarm(KeptAlarm kept) {
        return new Alarm(kept.key(), kept.happened(), kept.safe(), kept.todo(), kept.usefulBy(), kept.passes());
    }
}

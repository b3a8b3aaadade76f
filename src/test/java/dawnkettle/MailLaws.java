package dawnkettle;

import dawnkettle.mail.Arrived;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** What must hold of mails that come in: each has one end, its lines count once, and it is answered at most once. */
record MailLaws(Asked asked, MailedByHand mailed, LocalDate day) {
    private static final String BEFORE = "came before, and counts once";

    /** After each look. */
    List<String> broken() {
        List<String> broken = new ArrayList<>();
        Set<String> ended = new HashSet<>();
        int lines = 0;
        int amendments = 0;
        for (String row : asked.rows("SELECT seq, validity, uid, message_id, state, note FROM mail_in ORDER BY seq")) {
            String[] cells = row.split(" ", 6);
            String id = cells[3];
            Arrived.Place place = new Arrived.Place(Long.parseLong(cells[1]), Long.parseLong(cells[2]));
            if (!id.equals(mailed.places.get(place))) broken.add("I9: nobody mailed " + id + " at " + place);
            boolean isFirst = ended.add(id);
            if (isFirst == cells[5].endsWith(BEFORE)) broken.add("I9: mail " + id + " ended as " + cells[5]);
            if (!isFirst) continue;
            MailedByHand.Sent mail = sent(id);
            if (!cells[4].equals(mail.fate().name().toLowerCase(java.util.Locale.ROOT)))
                broken.add("I9: mail " + id + " ended as " + cells[4] + ", not " + mail.fate() + ": " + cells[5]);
            lines(broken, mail, cells[0]);
            lines += mail.lines().size();
            amendments += mail.amended().size();
        }
        if (count("SELECT count(*) FROM order_line WHERE source = 'mail'") != lines)
            broken.add("I1: of " + lines + " mailed lines the ledger has "
                    + asked.rows("SELECT origin, order_number, line, packs FROM order_line WHERE source = 'mail'"));
        if (count("SELECT count(*) FROM amendment WHERE source = 'mail'") != amendments)
            broken.add("I1: of " + amendments + " mailed amendments the ledger has other than these");
        asked.rows("""
                SELECT seq, sender, answered, (SELECT count(*) FROM outbox WHERE message_id LIKE '%.reply.' || seq) AS replies
                FROM mail_in WHERE answered <> replies""").forEach(row -> broken.add("I5: mail and its replies: " + row));
        asked.rows("SELECT seq, note FROM mail_in WHERE state = 'aside' AND answered = 1")
                .forEach(row -> broken.add("I5: it was set aside and answered: " + row));
        return broken;
    }

    private int count(String query) {
        return Integer.parseInt(asked.rows(query).get(0));
    }

    private MailedByHand.Sent sent(String id) {
        return mailed.sent.stream()
                .filter(one -> one.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    private void lines(List<String> broken, MailedByHand.Sent mail, String number) {
        List<String> kept = asked.rows("SELECT customer, product, packs, delivery_date FROM order_line WHERE "
                + from(number) + " ORDER BY seq");
        List<String> wanted = mail.lines().stream().map(MailedByHand.Line::row).toList();
        if (!kept.equals(wanted)) broken.add("I1: mail " + mail.id() + " asked for " + wanted + ", kept is " + kept);
        List<String> changed = asked.rows(
                "SELECT order_number || '/' || line, packs FROM amendment WHERE " + from(number) + " ORDER BY seq");
        List<String> changes = mail.amended().entrySet().stream()
                .map(one -> one.getKey() + " " + one.getValue())
                .toList();
        if (!changed.equals(changes))
            broken.add("I1: mail " + mail.id() + " changed " + changes + ", kept is " + changed);
    }

    private static String from(String number) {
        return "(origin = 'mail " + number + "' OR origin LIKE 'mail " + number + " line %')";
    }

    /** Once all is over: each mail came to its end where it lies, and what came before the dawn check, or in the look of it, is in the plan. */
    List<String> brokenAtEnd(boolean isLong) {
        List<String> broken = new ArrayList<>();
        for (Arrived mail : mailed.box())
            if (asked.rows("SELECT 1 FROM mail_in WHERE validity = "
                            + mail.place().validity() + " AND uid = "
                            + mail.place().uid())
                    .isEmpty()) broken.add("I9: " + mail.marks().messageId() + " at " + mail.place() + " has no end");
        if (isLong) return broken;
        asked.rows("""
                WITH checked AS (SELECT at FROM step_event WHERE business_date = '%s' AND state = 'started'
                                     AND step IN ('dawn check', 'second dawn check') ORDER BY seq DESC LIMIT 1),
                     wanted AS (SELECT o.order_number, o.line,
                         coalesce((SELECT a.packs FROM amendment AS a WHERE a.order_number = o.order_number AND a.line = o.line
                                   AND a.taken_at <= (SELECT at FROM checked) ORDER BY a.seq DESC LIMIT 1), o.packs) AS packs
                         FROM order_line AS o WHERE o.source = 'mail' AND o.taken_at <= (SELECT at FROM checked))
                SELECT w.order_number, w.line, w.packs, p.packs FROM wanted AS w LEFT JOIN plan_order AS p
                    ON p.order_number = w.order_number AND p.line = w.line AND p.production_date = '%s'
                    AND p.revision = (SELECT max(revision) FROM plan WHERE production_date = '%s')
                WHERE p.packs IS NOT w.packs""".formatted(day, day, day))
                .forEach(row -> broken.add("I2: mailed order, line, packs, and packs in the plan: " + row));
        return broken;
    }
}

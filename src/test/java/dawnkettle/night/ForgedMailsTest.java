package dawnkettle.night;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.post.HeldMails;
import dawnkettle.store.MailEnd;
import dawnkettle.store.MailEnd.State;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * 500 mails that somebody forged or sent again, each with an order that would be booked were it genuine: twenty from the
 * owner's and customers' addresses in each of 25 patterns. The headers attacked are those of RFC 8601 (sections 2.2, 5 and
 * 7.1: forged results, results of other servers, comments and quoted words) and RFC 5322 (several From, groups).
 */
@Timeout(60)
class ForgedMailsTest {
    private static final int EACH = 20;
    private static final String PATH = "Received: from elsewhere\n";

    @TempDir
    Path folder;

    @Test
    void of_500_forged_or_repeated_mails_none_is_planned_or_answered_and_each_is_set_aside() throws Exception {
        HeldMails box = new HeldMails(MailShop.SERVER);
        try (MailShop shop = new MailShop(folder, box)) {
            List<Victim> victims = victims();
            List<String> genuine = new ArrayList<>();
            for (int i = 0; i < 3; i++) {
                Victim victim = victims.get(i);
                genuine.add(MailShop.vouched(victim.address) + PATH + victim.rest("genuine" + i));
                box.arrives(genuine.get(i), shop.now);
            }
            shop.look();
            List<String> booked = shop.booked();
            assertThat(booked)
                    .as("what the forgeries copy is taken where it is genuine")
                    .hasSize(3);
            int answers = shop.sent.size();

            List<String> forged = forgeries(victims, genuine);
            assertThat(forged).hasSize(500);
            for (String mail : forged) box.arrives(mail, shop.now);
            shop.look();

            assertThat(shop.ends()).hasSize(503);
            assertThat(shop.ends().subList(3, 503)).allMatch(end -> end.state() == State.ASIDE && !end.answered());
            assertThat(shop.booked()).isEqualTo(booked);
            assertThat(shop.sent).hasSize(answers);
            assertThat(shop.ledger.orders().amendments(java.time.LocalDate.EPOCH))
                    .isEmpty();
            assertThat(String.join("\n", shop.story)).doesNotContain("@");
            assertThat(shop.ends()).extracting(MailEnd::note).noneMatch(note -> note.contains("@"));
        }
    }

    /** Somebody whose name is misused: the owner types an order, a customer sends a table. */
    private record Victim(String address, String body) {
        String rest(String id) {
            return from(address) + letter(id);
        }

        String letter(String id) {
            return "To: orders@millrace.example\nSubject: order " + id + "\nDate: Wed, 2 Dec 2026 11:58:00 -0500\n"
                    + "Message-ID: <" + id + "@elsewhere.example>\n" + body.replace("NUMBER", id);
        }

        String domain() {
            return address.substring(address.indexOf('@') + 1);
        }
    }

    private static String from(String address) {
        return "From: " + address + "\n";
    }

    private static List<Victim> victims() {
        List<Victim> victims = new ArrayList<>();
        for (int i = 0; i < EACH; i++)
            if (i % 4 == 0) victims.add(new Victim("owner@millrace.example", "\norder C002 FIRM-400 24 2026-12-05\n"));
            else {
                String customer = "C%03d".formatted(10 + i);
                victims.add(new Victim(
                        MailShop.address(customer),
                        "MIME-Version: 1.0\nContent-Type: text/csv; charset=utf-8\n\n"
                                + "order,line,customer,product,packs,delivery_date,action\nW-NUMBER,1," + customer
                                + ",FIRM-400,24,2026-12-05,\n"));
            }
        return victims;
    }

    /** Puts headers before a mail that is otherwise a genuine one. */
    private interface Pattern {
        String forge(Victim victim, String id);
    }

    private static List<String> forgeries(List<Victim> victims, List<String> genuine) {
        List<String> mails = new ArrayList<>();
        List<Pattern> patterns = patterns();
        for (int p = 0; p < patterns.size(); p++)
            for (int i = 0; i < EACH; i++) mails.add(patterns.get(p).forge(victims.get(i), "f" + p + "-" + i));
        for (int i = 0; i < EACH; i++) {
            String mail = genuine.get(i % genuine.size());
            mails.add(mail);
            mails.add(mail.replace("Message-ID: <genuine", "Message-ID: <other" + i));
            mails.add(mail.replace("Subject:", "X-Path: " + i + "\nSubject:"));
            String old = mail.replace("Date: Wed, 2 Dec", "Date: Fri, 20 Nov").replace("genuine", "old" + i + "x");
            mails.add(old);
        }
        return mails;
    }

    private static List<Pattern> patterns() {
        List<Pattern> patterns = new ArrayList<>(results());
        patterns.addAll(senders());
        return patterns;
    }

    private static String ours(String verdicts) {
        return "Authentication-Results: " + MailShop.SERVER + verdicts + "\n";
    }

    private static String pass(Victim v) {
        return "; dmarc=pass header.from=" + v.domain();
    }

    /** What is wrong is the result, or whose it is. */
    private static List<Pattern> results() {
        return List.of(
                (v, id) -> PATH + v.rest(id),
                (v, id) -> ours("; dmarc=fail header.from=" + v.domain()) + v.rest(id),
                (v, id) -> ours("; dmarc=none header.from=" + v.domain()) + v.rest(id),
                (v, id) -> ours("; spf=pass smtp.mailfrom=" + v.domain() + "; dkim=pass header.d=" + v.domain())
                        + v.rest(id),
                (v, id) -> "Authentication-Results: mx.elsewhere.example" + pass(v) + "\n" + v.rest(id),
                (v, id) -> "Authentication-Results: " + MailShop.SERVER + ".elsewhere.example" + pass(v) + "\n"
                        + v.rest(id),
                (v, id) -> ours("; dmarc=fail header.from=" + v.domain()) + PATH + ours(pass(v)) + v.rest(id),
                (v, id) -> ours("; none") + ours(pass(v)) + v.rest(id),
                (v, id) -> ours("; spf=fail (dmarc=pass header.from=" + v.domain() + ")") + v.rest(id),
                (v, id) -> ours("; spf=fail reason=\"x; dmarc=pass header.from=" + v.domain() + "\"") + v.rest(id),
                (v, id) -> ours("; spf=fail (unclosed" + pass(v)) + v.rest(id),
                (v, id) -> ours("; dmarc=pass header.from=elsewhere.example") + v.rest(id),
                (v, id) -> ours("; dmarc=pass header.from=" + v.domain() + ".elsewhere.example") + v.rest(id),
                (v, id) -> ours("; dmarc=pass; dmarc=fail header.from=" + v.domain()) + v.rest(id),
                (v, id) -> ours(" dmarc=pass header.from=" + v.domain()) + v.rest(id),
                (v, id) -> "ARC-Authentication-Results: i=1; " + MailShop.SERVER + pass(v) + "\nX-" + ours(pass(v))
                        + v.rest(id));
    }

    /** What is wrong is the sender. */
    private static List<Pattern> senders() {
        return List.of(
                (v, id) -> ours(pass(v)) + from(v.address()) + from("a@elsewhere.example") + v.letter(id),
                (v, id) -> ours(pass(v)) + "From: " + v.address() + ", a@elsewhere.example\n" + v.letter(id),
                (v, id) -> ours("; dmarc=pass header.from=elsewhere.example") + "From: \"" + v.address()
                        + "\" <a@elsewhere.example>\nReply-To: " + v.address() + "\nSender: " + v.address() + "\n"
                        + v.letter(id),
                (v, id) -> ours("; dmarc=pass header.from=elsewhere.example") + "From: shop: " + v.address() + ";\n"
                        + v.letter(id),
                (v, id) -> ours("; dmarc=pass header.from=elsewhere.example") + "From: =?utf-8?q?" + v.address()
                        + "=0D=0AX:_?= <a@elsewhere.example>\n" + v.letter(id));
    }
}

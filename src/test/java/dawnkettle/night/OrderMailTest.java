package dawnkettle.night;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.mail.Mail;
import dawnkettle.store.MailEnd;
import dawnkettle.store.MailEnd.State;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Mails in a real mailbox, each brought to its one end on a real ledger. */
@Timeout(60)
class OrderMailTest {
    @TempDir
    Path folder;

    private MailShop shop;

    @BeforeEach
    void open() throws Exception {
        shop = new MailShop(folder);
    }

    @AfterEach
    void close() {
        shop.close();
    }

    private static String mail(String from, String id, String body) {
        return MailShop.vouched(from) + "Received: from somewhere\nFrom: " + from + "\nTo: orders@millrace.example\n"
                + "Subject: tomorrow\nDate: Wed, 2 Dec 2026 11:58:00 -0500\nMessage-ID: <" + id + "@kitchen.example>\n"
                + body;
    }

    private static String withTable(String csv) {
        return "MIME-Version: 1.0\nContent-Type: multipart/mixed; boundary=b\n\n--b\nContent-Type: text/plain\n\n"
                + "the list is attached\n--b\nContent-Type: text/csv; name=\"../../etc/list.csv\"\n"
                + "Content-Disposition: attachment; filename=\"../../etc/list.csv\"\n\n" + csv + "\n--b--\n";
    }

    private static String table(String order, String customer) {
        return "order,line,customer,product,packs,delivery_date,action\n" + order + ",1," + customer
                + ",FIRM-400,24,2026-12-05,\n";
    }

    @Test
    void a_customers_table_is_taken_and_answered_with_what_was_understood_and_until_when() throws Exception {
        shop.arrives(mail(MailShop.address("C002"), "1", withTable(table("W-1", "C002"))));
        shop.look();
        assertThat(shop.booked()).containsExactly("C002 FIRM-400 24 2026-12-05");
        Mail reply = shop.sent.get(0);
        assertThat(reply.to()).containsExactly(MailShop.address("C002"));
        assertThat(reply.body().text()).contains("24 FIRM-400 (order W-1 line 1)");
        assertThat(shop.ends()).extracting(MailEnd::sender).containsExactly("C002");
    }

    @Test
    void by_a_clock_in_doubt_no_mail_is_taken_and_none_is_set_aside_as_old() throws Exception {
        shop.arrives(mail(MailShop.address("C002"), "1", withTable(table("W-1", "C002"))));
        shop.clockDoubt = Optional.of("the network's time is not known");
        shop.now = shop.now.plus(Duration.ofDays(400));
        shop.look();
        shop.look();
        assertThat(shop.ends()).isEmpty();
        assertThat(shop.story).containsExactly("no mail is taken in while the clock is not known to be right");

        shop.clockDoubt = Optional.empty();
        shop.now = MailShop.NOON.plus(Duration.ofMinutes(9));
        shop.look();
        assertThat(shop.booked()).containsExactly("C002 FIRM-400 24 2026-12-05");
    }

    @Test
    void after_a_clock_that_was_ahead_mails_are_looked_for_at_once() throws Exception {
        shop.now = MailShop.NOON.plus(Duration.ofHours(5));
        shop.look();
        shop.now = MailShop.NOON;
        shop.arrives(mail(MailShop.address("C002"), "1", withTable(table("W-1", "C002"))));
        shop.look();
        assertThat(shop.booked()).containsExactly("C002 FIRM-400 24 2026-12-05");
    }

    @Test
    void a_table_that_names_another_customers_lines_is_not_taken() throws Exception {
        shop.arrives(mail(MailShop.address("C002"), "1", withTable(table("W-1", "C004"))));
        shop.look();
        assertThat(shop.booked()).isEmpty();
        assertThat(shop.sent.get(0).body().text()).contains("it names lines of somebody else");
    }

    @Test
    void every_line_that_was_not_taken_is_in_the_reply() throws Exception {
        shop.arrives(mail(MailShop.address("C002"), "1", "\nfour flagons of moonlight please\n"));
        shop.look();
        assertThat(shop.ends()).extracting(MailEnd::state).containsExactly(State.ASKED);
        assertThat(shop.sent.get(0).body().text()).contains("four flagons of moonlight please");
        assertThat(shop.booked()).isEmpty();
    }

    @Test
    void the_owner_orders_amends_and_is_answered_line_by_line_as_the_command_answers() throws Exception {
        shop.arrives(mail(
                "owner@millrace.example",
                "1",
                "\norder C002 FIRM-400 24 2026-12-05\norder C002 NOTHING 1 2026-12-05\n"
                        + "> order C002 FIRM-400 99 2026-12-05\n-- \norder C002 FIRM-400 98 2026-12-05\n"));
        shop.look();
        assertThat(shop.booked()).containsExactly("C002 FIRM-400 24 2026-12-05");
        String text = shop.sent.get(0).body().text().replaceAll("\\s+", " ");
        assertThat(text)
                .contains("Order M-20261202-1 is taken: 1 lines for 2026-12-05.")
                .contains("unknown product \"NOTHING\"");
        shop.arrives(mail("owner@millrace.example", "2", "\nAmend M-20261202-1 1 30.\n"));
        shop.look();
        assertThat(shop.booked()).containsExactly("C002 FIRM-400 30 2026-12-05");
    }

    @Test
    void what_the_owner_receives_by_mail_counts_once_and_each_line_by_itself() throws Exception {
        String body = "\nreceive BEAN-YEL YEL-261201 1500kg 1620.00\nreceive BEAN-YEL YEL-261202 100kg 108.00\n";
        shop.arrives(mail("owner@millrace.example", "1", body));
        shop.look();
        shop.arrives(mail("owner@millrace.example", "1", body));
        shop.look();
        assertThat(shop.ledger.records().all(dawnkettle.stock.Fact.Kind.RECEIVED))
                .hasSize(2);
        assertThat(shop.ends()).extracting(MailEnd::state).containsExactly(State.TAKEN, State.ASIDE);
        assertThat(shop.ends().get(1).note()).endsWith("came before, and counts once");
        assertThat(shop.sent).hasSize(1);
    }

    @Test
    void the_crew_may_write_only_its_words() throws Exception {
        shop.arrives(mail("hall@millrace.example", "1", "\nhold 261202-FI01 smells\ncount BEAN-YEL YEL-1 20kg\n"));
        shop.look();
        assertThat(shop.sent.get(0).body().text().replaceAll("\\s+", " "))
                .contains("this address may not write \"hold\"; it may write count, lost, yield.")
                .contains("YEL-1");
        assertThat(shop.ledger.records().lastNumber()).isZero();
    }

    @Test
    void a_change_after_the_close_is_late_as_by_every_other_way() throws Exception {
        shop.arrives(mail("owner@millrace.example", "1", "\norder C002 FIRM-400 24 2026-12-04\n"));
        shop.look();
        LocalCloses.close(shop);
        shop.arrives(mail("owner@millrace.example", "2", "\namend M-20261202-1 1 30\n"));
        shop.look();
        assertThat(shop.booked()).containsExactly("C002 FIRM-400 30 2026-12-04 late");
        assertThat(shop.sent.get(1).body().text().replaceAll("\\s+", " ")).contains("it counts as late");
    }

    @Test
    void a_customers_own_tag_counts_from_any_address_that_is_vouched_for() throws Exception {
        String from = "kay@elsewhere.example";
        shop.arrives(mail(from, "1", withTable(table("W-1", "C003")))
                .replace("To: orders@", "To: orders+" + MailShop.TOKEN + "@"));
        shop.arrives(mail(from, "2", withTable(table("W-2", "C003"))).replace("To: orders@", "To: orders+guessed@"));
        shop.look();
        assertThat(shop.booked()).containsExactly("C003 FIRM-400 24 2026-12-05");
        assertThat(shop.ends().get(1).note())
                .isEqualTo("mail \"tomorrow\" from somebody at elsewhere.example: nobody known wrote it");
    }

    @Test
    void automatic_mail_is_neither_taken_nor_answered() throws Exception {
        int id = 0;
        for (String header : List.of(
                "Auto-Submitted: auto-replied",
                "Precedence: bulk",
                "List-Id: <all.kitchen.example>",
                "List-Unsubscribe: <mailto:x@kitchen.example>",
                "Return-Path: <>",
                "X-Autoreply: yes"))
            shop.arrives(header + "\n" + mail(MailShop.address("C002"), "a" + id++, withTable(table("W-1", "C002"))));
        shop.look();
        assertThat(shop.ends()).hasSize(6).allMatch(end -> end.state() == State.ASIDE && !end.answered());
        assertThat(shop.booked()).isEmpty();
        assertThat(shop.sent).isEmpty();
    }

    @Test
    void a_mail_that_the_server_stumbles_over_does_not_stand_before_the_others() throws Exception {
        String group = "From: shop: a@kitchen.example, b@kitchen.example;\n";
        shop.arrives(group + "Subject: [x] \"(\nMessage-ID: <g@kitchen.example>\n\n4 buckets\n");
        shop.arrives(mail("owner@millrace.example", "1", "\norder C002 FIRM-400 24 2026-12-05\n"));
        shop.look();
        assertThat(shop.ends()).extracting(MailEnd::state).containsExactly(State.ASIDE, State.TAKEN);
    }

    @Test
    void mails_under_new_places_after_the_server_counted_anew_are_known_again() throws Exception {
        String order = mail("owner@millrace.example", "1", "\norder C002 FIRM-400 24 2026-12-05\n");
        shop.arrives(order);
        shop.look();
        shop.newServer();
        shop.arrives(order);
        shop.arrives(mail("owner@millrace.example", "2", "\norder C004 FIRM-400 2 2026-12-05\n"));
        shop.look();
        assertThat(shop.ends()).extracting(MailEnd::state).containsExactly(State.TAKEN, State.ASIDE, State.TAKEN);
        assertThat(shop.booked()).containsExactly("C002 FIRM-400 24 2026-12-05", "C004 FIRM-400 2 2026-12-05");
        assertThat(shop.sent).hasSize(2);
    }

    @Test
    void a_mailbox_that_is_away_is_told_and_asked_again_later_and_nothing_is_lost() throws Exception {
        shop.arrives(mail("owner@millrace.example", "1", "\norder C002 FIRM-400 24 2026-12-05\n"));
        shop.away = true;
        shop.look();
        assertThat(shop.story).containsExactly("order mailbox is away");
        assertThat(shop.ends()).isEmpty();
        shop.away = false;
        shop.look();
        assertThat(shop.booked()).hasSize(1);
    }

    @Test
    void a_mail_that_was_booked_but_not_marked_because_the_power_went_is_not_booked_again() throws Exception {
        shop.arrives(mail("owner@millrace.example", "1", "\norder C002 FIRM-400 24 2026-12-05\n"));
        shop.powerFails = true;
        org.assertj.core.api.Assertions.assertThatThrownBy(() -> shop.look()).hasMessage("power");
        shop.powerFails = false;
        shop.now = shop.now.plusSeconds(600);
        shop.look();
        shop.look();
        assertThat(shop.booked()).hasSize(1);
        assertThat(shop.ends()).hasSize(1);
        assertThat(shop.sent).hasSize(1);
    }

    @Test
    void one_sender_is_answered_six_times_an_hour_and_taken_all_the_same() throws Exception {
        for (int i = 0; i < 8; i++)
            shop.arrives(mail(MailShop.address("C002"), "m" + i, withTable(table("W-" + i, "C002"))));
        shop.look();
        assertThat(shop.booked()).hasSize(8);
        assertThat(shop.sent).hasSize(6);
        assertThat(shop.ends().get(7).note()).endsWith("not answered, too many replies");
    }

    @Test
    void no_address_of_a_customer_is_told_or_kept_beside_the_reply() throws Exception {
        String address = MailShop.address("C002");
        shop.arrives(mail(address, "1", withTable(table("W-1", "C002"))));
        shop.arrives(
                mail(address, "2", "\nx\n").replace("dmarc=pass", "dmarc=fail").replace("tomorrow", address));
        shop.look();
        assertThat(shop.ends()).hasSize(2);
        assertThat(String.join("\n", shop.story)).doesNotContain(address);
        assertThat(shop.ends()).noneMatch(end -> end.note().contains(address));
    }

    @Test
    void html_and_formulas_of_a_sender_stay_words() throws Exception {
        shop.arrives(mail(
                "owner@millrace.example",
                "1",
                "\norder <script>alert(1)</script> =cmd|'/C 2026-12-05\norder =1+1 FIRM-400 1 2026-12-05\n"));
        shop.look();
        Mail reply = shop.sent.get(0);
        assertThat(reply.body().html()).doesNotContain("<script>alert").contains("&lt;script&gt;");
        assertThat(reply.subject()).endsWith("Nothing is taken yet: please look.");
        assertThat(shop.booked()).isEmpty();
    }

    @Test
    void a_table_with_a_formula_for_a_number_or_a_customer_is_refused() throws Exception {
        shop.arrives(
                mail(
                        MailShop.address("C002"),
                        "1",
                        withTable(
                                "order,line,customer,product,packs,delivery_date,action\n"
                                        + "=HYPERLINK(\"x\"),1,C002,FIRM-400,24,2026-12-05,\nW-2,1,@SUM(A1),FIRM-400,24,2026-12-05,\n")));
        shop.look();
        assertThat(shop.booked()).isEmpty();
        assertThat(shop.ends()).extracting(MailEnd::state).containsExactly(State.ASKED);
    }

    @Test
    void a_strangers_mail_spoils_no_morning_and_one_that_claims_to_be_a_customers_does() throws Exception {
        shop.arrives(mail("a@elsewhere.example", "1", "\nbuy now\n"));
        shop.arrives(mail(MailShop.address("C002"), "2", withTable(table("W-1", "C002"))));
        shop.arrives(mail(MailShop.address("C002"), "2", withTable(table("W-1", "C002"))));
        shop.arrives(mail(MailShop.address("C004"), "3", "\nx\n").replace("dmarc=pass", "dmarc=fail"));
        shop.look();
        GatherMails mails = new GatherMails(shop.office, java.time.LocalDate.of(2026, 12, 3));
        assertThat(mails.strange())
                .containsExactly(
                        "mail \"tomorrow\" from somebody at elsewhere.example: nobody known wrote it",
                        "mail \"tomorrow\" that says it is from C002: came before, and counts once");
        assertThat(mails.doubtful())
                .containsExactly("mail \"tomorrow\" that says it is from C004: the receiving server does not vouch"
                        + " for its sender");
    }
}

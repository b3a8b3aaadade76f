package dawnkettle.night;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.DemoDay;
import dawnkettle.mail.Mail;
import dawnkettle.measure.Celsius;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.PlannedBatch;
import dawnkettle.post.HeldMails;
import dawnkettle.stock.Fact.Kind;
import dawnkettle.store.MailEnd;
import dawnkettle.store.MailEnd.State;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** What the owner and the crew write from a phone in the middle of a making morning, on the plan of that day. */
@Timeout(120)
class OwnersWordsTest {
    private static final LocalDate FRIDAY = LocalDate.of(2026, 12, 4);
    private static final DayPlan PLAN = new DemoDay(FRIDAY).plan(Celsius.degrees(18), 0);
    private static final Instant MORNING = Instant.parse("2026-12-04T13:00:00Z");
    private static final String OWNER = "owner@millrace.example";
    private static final String HALL = "hall@millrace.example";

    /** A batch that has run, with packs of its own, and its lot. */
    private static final PlannedBatch RUN = PLAN.batches().stream()
            .filter(batch -> start(batch).isBefore(MORNING.minus(Duration.ofHours(3)))
                    && !batch.packs().isEmpty())
            .findFirst()
            .orElseThrow();

    private static final String LOT = RUN.lot().text();
    private static final String PRODUCT = RUN.packs().get(0).product();

    @TempDir
    Path folder;

    private final HeldMails box = new HeldMails(MailShop.SERVER);
    private MailShop shop;
    private int number;

    private static Instant start(PlannedBatch batch) {
        return PLAN.operationsOf(batch.id()).get(0).start();
    }

    @BeforeEach
    void open() throws Exception {
        shop = new MailShop(folder, box);
        shop.ledger.plans().keep(PLAN, shop.office.edges().plans().write(PLAN));
        shop.now = MORNING;
    }

    @AfterEach
    void close() {
        shop.close();
    }

    private String raw(String results, String from, String body) {
        return results + "Received: from somewhere\nFrom: " + from + "\nTo: orders@millrace.example\n"
                + "Subject: Re: Fri 4 Dec: all well\nDate: Fri, 4 Dec 2026 07:58:00 -0500\n"
                + "Message-ID: <" + ++number + "@millrace.example>\n" + body;
    }

    /** What is answered to a genuine mail. */
    private String answer(String from, String lines) {
        box.arrives(raw(MailShop.vouched(from), from, "\n" + lines + "\n"), shop.now);
        int before = shop.sent.size();
        shop.look();
        assertThat(shop.sent).hasSize(before + 1);
        Mail reply = shop.sent.get(before);
        assertThat(reply.to()).containsExactly(from);
        assertThat(reply.envelope().answers()).contains("<" + number + "@millrace.example>");
        return reply.body().text().replaceAll("\\s+", " ");
    }

    private long records(Kind kind) {
        return shop.ledger.records().all(kind).size();
    }

    private void done(String line, Kind kind, String told) {
        long before = records(kind);
        assertThat(answer(OWNER, line))
                .contains("All of it is taken: 1 line is taken.", told)
                .doesNotContain("Not done");
        assertThat(records(kind)).as(line).isEqualTo(before + 1);
    }

    @Test
    void what_happened_is_written_down_by_each_word_of_the_command_line() {
        String kilograms = String.valueOf(RUN.expected().inKilograms(1, java.math.RoundingMode.HALF_UP));
        done("receive BEAN-YEL YEL-261204 1500kg 1620.00", Kind.RECEIVED, "1500 kg BEAN-YEL came in as lot YEL-261204");
        done(
                "Yield " + LOT.toLowerCase(java.util.Locale.ROOT) + " " + kilograms + ".",
                Kind.YIELDED,
                kilograms + " kg");
        done("cook " + RUN.id() + " 98 8", Kind.COOKED, "98");
        done("cooled " + LOT + " 4.5", Kind.COOLED, "4.5");
        done("count BEAN-YEL YEL-261204 1480kg", Kind.COUNTED, "1480 kg");
        done("soak " + PLAN.soaks().get(0).tub() + " not ready", Kind.SOAK_SEEN, "not ready");
        done("price FIRM-400 3.95 from 2026-12-07", Kind.PRICED, "3.95 USD from 2026-12-07");
        done("hours 2026-12-03 41.5", Kind.WORKED, "41.5");
        done("hold " + LOT + " smells of smoke", Kind.HELD, "held");
        done("release " + LOT + " by Kay tasted it, it is well", Kind.RELEASED, "Kay");
        done("record sold " + LOT + " " + PRODUCT + " 1", Kind.SOLD, PRODUCT);
    }

    @Test
    void orders_of_any_customer_are_taken_amended_and_cancelled_whole_or_a_line() {
        assertThat(answer(OWNER, "order C002 FIRM-400 24 MILK-1L 12 2026-12-10\norder C004 FIRM-400 3 2026-12-10"))
                .contains("All of it is taken: 2 lines are taken.");
        assertThat(booked())
                .contains("C002 FIRM-400 24 2026-12-10", "C002 MILK-1L 12 2026-12-10", "C004 FIRM-400 3 2026-12-10");
        answer(OWNER, "amend M-20261204-1 1 30\ncancel M-20261204-2");
        assertThat(booked()).contains("C002 FIRM-400 30 2026-12-10", "C004 FIRM-400 0 2026-12-10");
        assertThat(answer(OWNER, "Cancel M-20261204-1 2")).contains("line 2 is now 0 packs MILK-1L for 2026-12-10");
        assertThat(booked()).contains("C002 FIRM-400 30 2026-12-10", "C002 MILK-1L 0 2026-12-10");
        assertThat(answer(OWNER, "cancel M-20261204-9\ncancel M-20261204-1 9"))
                .contains("there is no order \"M-20261204-9\" to cancel; write as in: cancel M-20261203-4")
                .contains("has no line 9 to amend")
                .contains("Nothing is taken yet");
    }

    private List<String> booked() {
        return shop.booked();
    }

    @Test
    void a_lost_batch_is_told_by_its_number_and_the_rest_of_the_day_is_planned_again() {
        PlannedBatch lost = PLAN.batches().stream()
                .filter(batch -> start(batch).isBefore(MORNING))
                .reduce((one, other) -> other)
                .orElseThrow();
        assertThat(answer(HALL, "Lost " + lost.id().toLowerCase(java.util.Locale.ROOT)))
                .contains("the whole lot " + lost.lot().text() + " is lost (told by mail)")
                .contains("What has not begun is planned again now; the sheets that change are printed.");
        List<String> due = new ArrayList<>();
        new ReplanLosses(shop.office).run((step, day) -> due.add(step.step() + " " + day));
        assertThat(due).containsExactly(ReplanLosses.STEP + " " + FRIDAY);
    }

    @Test
    void the_crew_writes_what_is_permitted_and_is_told_of_the_rest_in_which_words() {
        String reply = answer(
                HALL,
                "yield " + LOT + " " + RUN.expected().inKilograms(1, java.math.RoundingMode.HALF_UP) + "\n"
                        + String.join("\n", forbidden()));
        assertThat(records(Kind.YIELDED)).isEqualTo(1);
        for (String line : forbidden())
            assertThat(reply)
                    .contains("“" + line + "”: this address may not write")
                    .contains("it may write count, lost, yield.");
        assertThat(shop.ledger.records().lastNumber()).isEqualTo(1);
        assertThat(booked()).isEmpty();
    }

    private static List<String> forbidden() {
        return List.of(
                "order C002 FIRM-400 24 2026-12-10",
                "amend S-C001-20261204 1 0",
                "cancel M-20261204-1",
                "receive BEAN-YEL YEL-261204 1500kg 1620.00",
                "record price FIRM-400 0.01 from 2026-12-07",
                "hold " + LOT + " smells",
                "release " + LOT + " by Kay well",
                "cook " + LOT + " 98 8",
                "soak T01 ready",
                "sold " + LOT + " " + PRODUCT + " 1",
                "hands 1 09:30 12:00",
                "down FRYER 09:30");
    }

    @Test
    void what_somebody_else_writes_in_their_name_does_nothing_and_is_not_answered() {
        List<String> lines = new ArrayList<>(forbidden());
        lines.add("yield " + LOT + " 60");
        lines.add("lost " + RUN.id());
        int mails = 0;
        for (String address : List.of(OWNER, HALL))
            for (String line : lines)
                for (String results : List.of(
                        "",
                        MailShop.vouched(address).replace("pass", "fail"),
                        MailShop.vouched("a@elsewhere.example"),
                        MailShop.vouched(address).replace(MailShop.SERVER, "mx.elsewhere.example"))) {
                    box.arrives(raw(results, address, "\n" + line + "\n"), shop.now);
                    mails++;
                }
        for (int looks = 0; looks < 4; looks++) shop.look();
        assertThat(shop.ends()).hasSize(mails).extracting(MailEnd::state).containsOnly(State.ASIDE);
        assertThat(shop.ledger.records().lastNumber()).isZero();
        assertThat(booked()).isEmpty();
        assertThat(shop.sent).isEmpty();
    }

    @Test
    void what_is_quoted_or_below_a_signature_is_not_done_however_a_phone_quotes() {
        String quoted = "hold " + LOT + " quoted";
        List<String> bodies = List.of(
                "\nsold X Y 1\n\nOn Fri, Dec 4, 2026 at 6:30 AM Millrace Tofu Works <clerk@millrace.example>\nwrote:\n"
                        + quoted + "\n",
                "\nsold X Y 1\n\nSent from my telephone\n" + quoted + "\n",
                "\nsold X Y 1\n\nLe ven. 4 déc. 2026 à 06:30, Millrace <clerk@millrace.example> a écrit :\n" + quoted
                        + "\n",
                "\nsold X Y 1\n\n-----Original Message-----\n" + quoted + "\n",
                "\nsold X Y 1\n\n________________________________\nFrom: clerk\n" + quoted + "\n",
                "Content-Type: text/html\n\n<html><head><title>" + quoted
                        + "</title></head><body><div>sold X Y&nbsp;1</div>"
                        + "<blockquote><p>" + quoted + "</p><blockquote>x</blockquote><p>" + quoted
                        + "</p></blockquote></body></html>\n",
                "Content-Type: text/html\n\n<div>sold X Y 1</div><!-- <div>" + quoted
                        + "</div> --><blockquote type=\"cite\"><div>" + quoted + "</div>\n");
        for (String body : bodies) {
            box.arrives(raw(MailShop.vouched(OWNER), OWNER, body), shop.now);
            shop.now = shop.now.plus(Duration.ofHours(1));
            shop.look();
            assertThat(records(Kind.HELD)).as(body).isZero();
            assertThat(shop.sent.get(shop.sent.size() - 1).body().text())
                    .as(body)
                    .contains("“sold X Y 1”")
                    .doesNotContain("quoted");
        }
    }

    @Test
    void a_body_that_is_made_to_be_slow_is_not() {
        for (String part : List.of("<", "<style", "<blockquote>", "<!--", "\n", "on x ", "sold ", "\u0000", "&nbsp;"))
            for (String head : List.of("", "<p>")) {
                String body = (head + part.repeat(900_000 / part.length()) + "\nhold " + LOT + " late\n");
                long start = System.nanoTime();
                TypedLines.Split split = TypedLines.of(body);
                assertThat(Duration.ofNanos(System.nanoTime() - start))
                        .as(part.strip())
                        .isLessThan(Duration.ofSeconds(2));
                assertThat(split.typed()).hasSizeLessThanOrEqualTo(TypedLines.MOST);
            }
    }

    @Test
    void headers_html_and_formulas_in_any_word_stay_words() {
        Map<String, String> evil = Map.of(
                "html", "hold " + LOT + " <img src=x onerror=alert(1)>",
                "formula", "hold " + LOT + " =HYPERLINK(\"http://elsewhere.example\")",
                "header", "hold " + LOT + " x\\r\\nBcc: thief@elsewhere.example",
                "name", "release " + LOT + " by <b>Kay</b> =1+1");
        evil.forEach((name, line) -> {
            box.arrives(raw(MailShop.vouched(OWNER), OWNER, "\n" + line + "\n"), shop.now);
            shop.look();
            Mail reply = shop.sent.get(shop.sent.size() - 1);
            assertThat(reply.body().html()).as(name).doesNotContain("<img", "<b>", "href");
            assertThat(reply.body().text().lines()).as(name).noneMatch(text -> text.matches("=[^=].*|Bcc:.*"));
            assertThat(reply.subject()).as(name).doesNotContain("\r", "\n");
            assertThat(reply.to()).as(name).containsExactly(OWNER);
        });
    }
}

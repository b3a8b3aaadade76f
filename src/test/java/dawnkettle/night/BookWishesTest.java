package dawnkettle.night;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.book.OrderWish;
import dawnkettle.book.OrderWish.Drop;
import dawnkettle.book.OrderWish.More;
import dawnkettle.book.OrderWish.SameAs;
import dawnkettle.book.OrderWish.SetTo;
import dawnkettle.book.OrderWish.SkipDay;
import dawnkettle.book.OrderWish.Twice;
import dawnkettle.book.ReadMail.Question;
import dawnkettle.post.HeldMails;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a mail asks for, put against a real book; the customer is one of the demonstration's. */
class BookWishesTest {
    private static final LocalDate SATURDAY = LocalDate.of(2026, 12, 5);
    private static final LocalDate NEXT = SATURDAY.plusDays(7);
    private static final String FIRM = "FIRM-400";
    private static final String MILK = "MILK-1L";

    @TempDir
    Path folder;

    private MailShop shop;
    private BookWishes wishes;

    @BeforeEach
    void open() throws Exception {
        shop = new MailShop(folder, new HeldMails(MailShop.SERVER));
        wishes = wishes();
    }

    @AfterEach
    void close() {
        shop.close();
    }

    private BookWishes wishes() {
        return new BookWishes(shop.office, MailShop.CONF.shop().customer("C002"), "mail 1");
    }

    private void take(OrderWish... all) {
        for (OrderWish wish : all) wishes.take(wish);
    }

    @Test
    void lines_of_a_mail_are_one_order_and_several_days_stand_each_for_itself() {
        int standing = wishes.totals(SATURDAY).getOrDefault(FIRM, 0);
        int next = wishes.totals(NEXT).getOrDefault(MILK, 0);
        take(new More(SATURDAY, FIRM, 4, "4 firm"), new More(NEXT, MILK, 6, "6 milk next week"));
        assertThat(wishes.totals(SATURDAY)).containsEntry(FIRM, standing + 4);
        assertThat(wishes.totals(NEXT)).containsEntry(MILK, next + 6);
        assertThat(wishes.days()).containsExactly(SATURDAY, NEXT);
        assertThat(shop.ledger.orders().lines(SATURDAY))
                .allMatch(line -> line.order().text().equals("M-20261202-1"))
                .extracting(line -> line.line())
                .containsExactly(1, 2);
    }

    @Test
    void set_double_and_drop_change_what_is_there_whatever_lines_it_came_in() {
        take(
                new More(SATURDAY, FIRM, 4, "4"),
                new More(SATURDAY, FIRM, 3, "3 more"),
                new SetTo(SATURDAY, FIRM, 9, "9"));
        assertThat(wishes.totals(SATURDAY)).containsEntry(FIRM, 9);
        take(new Twice(SATURDAY, FIRM, "double the firm"));
        assertThat(wishes.totals(SATURDAY)).containsEntry(FIRM, 18);
        take(new Drop(SATURDAY, FIRM, "no firm"));
        assertThat(wishes.totals(SATURDAY)).doesNotContainKey(FIRM);
        assertThat(wishes.questions()).isEmpty();
    }

    @Test
    void the_same_as_another_day_sets_each_product_to_what_it_was() {
        take(new More(SATURDAY, FIRM, 4, "4"), new More(SATURDAY, MILK, 6, "6"));
        Map<String, Integer> then = wishes.totals(SATURDAY);
        take(new SameAs(NEXT, SATURDAY, "same as this week"));
        assertThat(wishes.totals(NEXT)).containsAllEntriesOf(then);
    }

    @Test
    void a_skipped_day_has_nothing_of_the_customers_any_more_standing_lines_too() {
        take(new More(SATURDAY, FIRM, 4, "4"), new SkipDay(SATURDAY, "skip saturday"));
        assertThat(wishes.totals(SATURDAY)).isEmpty();
    }

    @Test
    void what_is_not_there_and_what_can_not_be_is_asked_and_nothing_of_it_booked() {
        LocalDate sunday = SATURDAY.plusDays(1);
        LocalDate past = LocalDate.of(2026, 12, 1);
        take(
                new Drop(NEXT, "AGE-150", "drop the aged"),
                new Twice(NEXT, "AGE-150", "double the aged"),
                new More(sunday, FIRM, 4, "4 for sunday"),
                new More(past, FIRM, 4, "4 for yesterday"),
                new SameAs(NEXT, past.minusDays(20), "as then"));
        assertThat(wishes.booked()).isEmpty();
        assertThat(wishes.questions())
                .extracting(Question::words)
                .contains("4 for sunday", "4 for yesterday", "drop the aged", "double the aged");
        assertThat(shop.ledger.orders().lines(past)).isEmpty();
    }

    @Test
    void a_change_after_the_close_is_late_and_can_no_longer_be_changed_by_itself() {
        take(new More(SATURDAY, FIRM, 4, "4"));
        assertThat(wishes.changeableUntil(SATURDAY)).isPresent();
        LocalCloses.close(shop);
        wishes = wishes();
        take(new SetTo(SATURDAY, FIRM, 9, "9"));
        assertThat(wishes.changeableUntil(SATURDAY)).isEmpty();
        assertThat(shop.booked()).containsExactly("C002 FIRM-400 9 2026-12-05 late");
    }

    @Test
    void a_mail_as_people_write_is_booked_line_by_line_and_what_was_not_read_is_in_the_reply() throws Exception {
        HeldMails box = new HeldMails(MailShop.SERVER);
        String from = MailShop.address("C002");
        try (MailShop mailed = new MailShop(folder.resolve("."), box)) {
            box.arrives(
                    MailShop.vouched(from) + "From: " + from + "\nTo: orders@millrace.example\nSubject: order\n"
                            + "Date: Wed, 2 Dec 2026 11:58:00 -0500\nMessage-ID: <9@k.example>\n\n"
                            + "Hello,\n24 packs FIRM-400 for Saturday\nand some flagons of moonlight\n\nThanks\n",
                    Instant.parse("2026-12-02T17:00:00Z"));
            mailed.look();
            String reply = mailed.sent.get(0).body().text().replaceAll("\\s+", " ");
            assertThat(reply).contains("moonlight");
            assertThat(mailed.booked()).isSubsetOf("C002 FIRM-400 24 2026-12-05");
        }
    }
}

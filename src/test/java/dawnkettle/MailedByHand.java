package dawnkettle;

import static java.nio.charset.StandardCharsets.UTF_8;

import dawnkettle.book.OrderWords;
import dawnkettle.mail.Arrived;
import dawnkettle.mail.Bytes;
import dawnkettle.mail.Mail;
import dawnkettle.mail.Mailbox;
import dawnkettle.night.MailIn;
import dawnkettle.night.OrderMailSettings;
import dawnkettle.trouble.DeviceAway;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.function.Predicate;

/**
 * Those who mail orders, and the mailbox between: sound mails, forged ones, the same twice; the line breaks between a mail and
 * its mark, and a server gives all places anew. It remembers outside the service what was mailed.
 */
final class MailedByHand implements Mailbox {
    private static final String OWNER = "owner@millrace.example";
    private static final String HEADER = "order,line,customer,product,packs,delivery_date,action\n";

    /** What becomes of a mail. */
    enum Fate {
        TAKEN,
        ASKED,
        ASIDE
    }

    /** A line that must be in the ledger once, when its mail came to its end. */
    record Line(String customer, String product, int packs, LocalDate delivery) {
        String row() {
            return customer + " " + product + " " + packs + " " + delivery;
        }
    }

    /**
     * A mail that was sent.
     *
     * @param amended packs that an order line stands for now, by order and line
     */
    record Sent(String id, Fate fate, List<Line> lines, Map<String, Integer> amended, Arrived mail) {}

    final List<Sent> sent = new ArrayList<>();
    final Map<Arrived.Place, String> places = new HashMap<>();
    private final List<Arrived> box = new ArrayList<>();
    private final Set<Arrived.Place> marked = new HashSet<>();
    private final FaultyDoors doors;
    private final FaultyDoors.Surroundings around;
    private final LocalDate day;
    private final Random dice;
    private long validity = 1;
    private int orders;

    MailedByHand(FaultyDoors doors, FaultyDoors.Surroundings around, LocalDate day, Random dice) {
        this.doors = doors;
        this.around = around;
        this.day = day;
        this.dice = dice;
    }

    /** The mailbox as the service has it. */
    MailIn in() {
        OrderMailSettings rules = new OrderMailSettings(
                List.of(OWNER), Map.of(), Map.of(), Duration.ofMinutes(2), OrderMailSettings.Limits.USUAL);
        return new MailIn(this, rules, new AttachedTables(), List.of(Read.ENGLISH));
    }

    /** Somebody sends a mail of some kind at this time. */
    void send(Instant now) {
        int kind = dice.nextInt(12);
        Sender sender = new Sender(address(), Optional.empty(), false);
        if (kind == 0)
            keep(Fate.ASIDE, List.of(), new Sender(address(), Optional.of("nobody vouches for it"), false), now);
        else if (kind == 1)
            keep(Fate.ASIDE, List.of(), new Sender("friend@stranger.example", Optional.empty(), false), now);
        else if (kind == 2) keep(Fate.ASIDE, List.of(), new Sender(address(), Optional.empty(), true), now);
        else if (kind == 3) keep(Fate.ASIDE, List.of(), sender, now.minus(Duration.ofDays(9)));
        else if (kind == 4 && !sent.isEmpty()) again();
        else if (kind == 5) words(Fate.ASKED, sender.from(), "four flagons of moonlight please", List.of(), now);
        else if (kind == 6) owner(now, "\norder C002 NOTHING 1 " + day + "\n", Fate.ASKED);
        else if (kind == 7) owner(now, "", Fate.TAKEN);
        else if (kind == 8 && hasTable()) amend(now);
        else keep(kind == 9 ? Fate.ASKED : Fate.TAKEN, lines(), sender, now);
    }

    private record Sender(String from, Optional<String> doubt, boolean automatic) {}

    private String customer = "";

    /** Of any customer; the mail is then about that one's orders. */
    private String address() {
        List<String> customers = dice.nextBoolean() ? FewOrders.SAME_DAY : FewOrders.DAY_AFTER;
        customer = customers.get(dice.nextInt(customers.size()));
        return FewOrders.SHOP.customer(customer).mails().get(0);
    }

    private List<Line> lines() {
        List<Line> lines = new ArrayList<>();
        int count = 1 + dice.nextInt(FewOrders.PRODUCTS.size());
        for (int i = 0; i < count; i++)
            lines.add(new Line(customer, FewOrders.PRODUCTS.get(i), 1 + dice.nextInt(20), delivery(customer)));
        return lines;
    }

    private LocalDate delivery(String of) {
        if (FewOrders.SAME_DAY.contains(of)) return day;
        LocalDate next = day.plusDays(1);
        return next.getDayOfWeek() == DayOfWeek.SUNDAY ? next.plusDays(1) : next;
    }

    /** A table of orders; one that is set aside holds orders as well, and none of them may count. */
    private void keep(Fate fate, List<Line> lines, Sender sender, Instant written) {
        String order = "T" + ++orders;
        List<Line> told = lines.isEmpty() ? lines() : lines;
        StringBuilder table = new StringBuilder(HEADER);
        for (int i = 0; i < told.size(); i++) table.append(row(order, i + 1, told.get(i)));
        if (fate == Fate.ASKED)
            table.append(row("X" + orders, 1, new Line(customer, "NO-SUCH", 3, delivery(customer))));
        Mail.Attachment file = new Mail.Attachment(
                "orders.csv", "text/csv", Bytes.of(table.toString().getBytes(UTF_8)));
        put(fate, lines, Map.of(), sender, new Arrived.Content("order " + order, "", written, List.of(file)));
    }

    private static String row(String order, int line, Line what) {
        return order + "," + line + "," + what.customer() + "," + what.product() + "," + what.packs() + ","
                + what.delivery() + ",\n";
    }

    private void owner(Instant now, String nonsense, Fate fate) {
        address();
        Line line = lines().get(0);
        String words = "order " + line.customer() + " " + line.product() + " " + line.packs() + " " + line.delivery();
        words(fate, OWNER, words + nonsense, List.of(line), now);
    }

    private boolean hasTable() {
        return sent.stream().anyMatch(MailedByHand::isTable);
    }

    private static boolean isTable(Sent mail) {
        return !mail.lines().isEmpty() && !mail.mail().content().tables().isEmpty();
    }

    /** The owner changes the first line of a table that came by mail before. */
    private void amend(Instant now) {
        List<Sent> tables = sent.stream().filter(MailedByHand::isTable).toList();
        String order = tables.get(dice.nextInt(tables.size()))
                .mail()
                .content()
                .subject()
                .substring("order ".length());
        int packs = 21 + orders + sent.size();
        put(
                Fate.TAKEN,
                List.of(),
                Map.of(order + "/1", packs),
                new Sender(OWNER, Optional.empty(), false),
                new Arrived.Content("a change", "amend " + order + " 1 " + packs, now, List.of()));
    }

    private void words(Fate fate, String from, String words, List<Line> lines, Instant now) {
        Sender sender = new Sender(from, Optional.empty(), false);
        put(fate, lines, Map.of(), sender, new Arrived.Content("words", words, now, List.of()));
    }

    private void put(
            Fate fate, List<Line> lines, Map<String, Integer> amended, Sender sender, Arrived.Content content) {
        String id = "<" + (sent.size() + 1) + "@mail.example>";
        Arrived mail = new Arrived(
                nextPlace(),
                new Arrived.Marks(id, String.format("%064x", sent.size() + 1)),
                new Arrived.Sender(
                        Optional.of(sender.from()),
                        sender.doubt(),
                        List.of("orders@millrace.example"),
                        sender.automatic()),
                content,
                Optional.empty());
        sent.add(new Sent(id, fate, lines, amended, mail));
        lie(mail);
    }

    /** The same mail comes once more, at another place. */
    private void again() {
        Arrived mail = sent.get(dice.nextInt(sent.size())).mail();
        lie(new Arrived(nextPlace(), mail.marks(), mail.sender(), mail.content(), mail.refused()));
    }

    private Arrived.Place nextPlace() {
        return new Arrived.Place(validity, box.size() + 1L);
    }

    private void lie(Arrived mail) {
        box.add(mail);
        places.put(mail.place(), mail.marks().messageId());
    }

    /** Whether what lies in the box came to its end at the place where it lies. */
    List<Arrived> box() {
        return List.copyOf(box);
    }

    @Override
    public void look(Predicate<Arrived.Place> isKnown, Predicate<Arrived> taker) {
        Mishap.Kind kind = doors.next(Mishap.Device.MAILBOX);
        if (kind == Mishap.Kind.MAILBOX_AWAY) throw DeviceAway.clean("the order mailbox is away", null);
        if (kind == Mishap.Kind.MAILBOX_GIVES_NEW_PLACES) renumber();
        for (Arrived mail : List.copyOf(box)) {
            if (marked.contains(mail.place())) continue;
            if (!isKnown.test(mail.place())) take(mail, taker);
            marked.add(mail.place());
        }
    }

    private void take(Arrived mail, Predicate<Arrived> taker) {
        around.point("before a mail is taken");
        taker.test(mail);
        around.point("after a mail was taken");
        if (doors.next(Mishap.Device.MAILBOX_MARK) != null)
            throw DeviceAway.ambiguous("the order mailbox went before the mail was marked", null);
    }

    /** As after a move to another server: other numbers, and no marks. */
    private void renumber() {
        validity++;
        List<Arrived> before = List.copyOf(box);
        box.clear();
        for (Arrived mail : before)
            lie(new Arrived(nextPlace(), mail.marks(), mail.sender(), mail.content(), mail.refused()));
    }

    /** Read once. */
    private static final class Read {
        static final OrderWords ENGLISH = english();

        private static OrderWords english() {
            try {
                return OrderWords.parse("en", Files.readString(Path.of("src/main/resources/dawnkettle/words/en.txt")));
            } catch (java.io.IOException e) {
                throw new java.io.UncheckedIOException(e);
            }
        }
    }
}

package dawnkettle.night;

import static java.nio.charset.StandardCharsets.UTF_8;

import com.icegreen.greenmail.user.GreenMailUser;
import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.ServerSetup;
import dawnkettle.book.BookLine;
import dawnkettle.book.OrderWords;
import dawnkettle.conf.Configuration;
import dawnkettle.conf.ReadConfiguration;
import dawnkettle.mail.Arrived;
import dawnkettle.mail.Mail;
import dawnkettle.mail.Mailbox;
import dawnkettle.post.ImapMailbox;
import dawnkettle.post.MailboxSettings;
import dawnkettle.post.PostSettings.Security;
import dawnkettle.store.Ledger;
import dawnkettle.store.MailEnd;
import dawnkettle.trouble.DeviceAway;
import jakarta.mail.Flags;
import jakarta.mail.Session;
import jakarta.mail.internet.MimeMessage;
import java.io.ByteArrayInputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Date;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;
import java.util.Set;
import java.util.function.Predicate;

/** The demonstration shop with an order mailbox on a real ledger; a mail server of the test's own, or one that is named. */
final class MailShop implements AutoCloseable {
    static final Configuration CONF = ReadConfiguration.from(Path.of("conf"));
    static final ZoneId ZONE = CONF.shop().house().zone();
    static final String SERVER = "mx.millrace.example";
    static final String TOKEN = "k7x2m9qa4t";

    /** A Wednesday noon; the book of Thursday closes at 15:00. */
    static final Instant NOON = Instant.parse("2026-12-02T17:00:00Z");

    final List<Mail> sent = new ArrayList<>();
    final List<String> story = new ArrayList<>();
    private final Path folder;
    final Ledger ledger;
    final Office office;
    final Letters letters;
    final TakeMails mails;
    boolean away;
    boolean powerFails;
    Optional<String> clockDoubt = Optional.empty();
    private GreenMail server;
    private long startedAt;
    private GreenMailUser box;
    private Mailbox mailbox;
    Instant now = NOON;

    MailShop(Path folder) throws Exception {
        this(folder, null);
    }

    /** @param mailbox another mailbox than the test's own server */
    MailShop(Path folder, Mailbox mailbox) throws Exception {
        this.folder = folder;
        this.mailbox = mailbox;
        if (mailbox == null) newServer();
        ledger = Ledger.open(folder.resolve("ledger.db"));
        OrderMailSettings rules = new OrderMailSettings(
                List.of("owner@millrace.example"),
                Map.of("hall@millrace.example", Set.of("lost", "count", "yield")),
                Map.of(TOKEN, "C003"),
                Duration.ofMinutes(2),
                OrderMailSettings.Limits.USUAL);
        MailIn in =
                new MailIn(this::look, rules, (file, book, shop, at) -> Attached.read(file, book, shop, at), List.of());
        Edges edges = new Edges(
                new Edges.Senses(at -> List.of(), null, at -> clockDoubt),
                null,
                null,
                new Edges.MailDesk((mail, date) -> sent.add(mail), null, null, in),
                new JsonPlans(CONF.shop()));
        office = new Office(
                new Office.Papers(CONF.shop(), CONF.standing(), CONF.night()),
                ledger,
                new java.time.Clock() {
                    @Override
                    public ZoneId getZone() {
                        return ZONE;
                    }

                    @Override
                    public java.time.Clock withZone(ZoneId other) {
                        throw new UnsupportedOperationException();
                    }

                    @Override
                    public Instant instant() {
                        return now;
                    }
                },
                edges,
                (at, line) -> story.add(line));
        letters = new Letters(office);
        mails = new TakeMails(office, letters);
    }

    private static OrderWords words(String language) throws Exception {
        Path file = Path.of("src/main/resources/dawnkettle/words", language + ".txt");
        return OrderWords.parse(language, Files.readString(file));
    }

    /** Another server, whose places are all new. */
    void newServer() throws Exception {
        if (server != null) server.stop();
        // A folder of this server counts its UIDVALIDITY in seconds: within one, the new server would pass for the old.
        while (System.currentTimeMillis() / 1_000 == startedAt) Thread.sleep(20);
        startedAt = System.currentTimeMillis() / 1_000;
        server = new GreenMail(new ServerSetup(0, "127.0.0.1", ServerSetup.PROTOCOL_IMAP));
        server.start();
        box = server.setUser("orders@millrace.example", "orders", "soymilk");
        Path secret = Files.writeString(folder.resolve("secret"), "soymilk\n");
        Files.setPosixFilePermissions(secret, PosixFilePermissions.fromString("rw-------"));
        mailbox = new ImapMailbox(new MailboxSettings(
                "127.0.0.1",
                server.getImap().getPort(),
                Security.NONE,
                "orders",
                Optional.of(secret),
                SERVER,
                Duration.ofSeconds(15)));
    }

    private void look(Predicate<Arrived.Place> isKnown, Predicate<Arrived> taker) {
        if (away) throw DeviceAway.clean("order mailbox is away", null);
        mailbox.look(isKnown, mail -> {
            boolean dealtWith = taker.test(mail);
            if (powerFails) throw new IllegalStateException("power");
            return dealtWith;
        });
    }

    /** Puts a mail into the mailbox as it is. */
    void arrives(String raw) throws Exception {
        MimeMessage message = new MimeMessage(
                Session.getInstance(new Properties()),
                new ByteArrayInputStream(raw.replace("\n", "\r\n").getBytes(UTF_8)));
        server.getManagers().getImapHostManager().getInbox(box).appendMessage(message, new Flags(), Date.from(now));
    }

    /** Looks once and sends what is to be answered. */
    void look() {
        mails.run();
        letters.deliver();
        now = now.plus(Duration.ofMinutes(3));
    }

    List<MailEnd> ends() {
        return ledger.mails().since(Instant.EPOCH);
    }

    /** Lines in the book that no standing order put there, by customer, product and packs. */
    List<String> booked() {
        LocalDate day = LocalDate.of(2026, 12, 1);
        return day.datesUntil(day.plusDays(20))
                .flatMap(making -> office.book().bookFor(making).stream())
                .filter(line -> line.source() != dawnkettle.book.OrderLine.Source.STANDING)
                .map(MailShop::text)
                .toList();
    }

    static String text(BookLine line) {
        return line.customer() + " " + line.product() + " " + line.packs() + " " + line.deliveryDate()
                + (line.late() ? " late" : "");
    }

    static String address(String customer) {
        return CONF.shop().customer(customer).mails().get(0);
    }

    /** What the receiving server writes at the head of a mail whose sender it vouches for. */
    static String vouched(String address) {
        return "Authentication-Results: " + SERVER + "; dmarc=pass (p=REJECT) header.from="
                + address.substring(address.indexOf('@') + 1) + "; spf=pass\n";
    }

    @Override
    public void close() {
        ledger.close();
        if (server != null) server.stop();
    }
}

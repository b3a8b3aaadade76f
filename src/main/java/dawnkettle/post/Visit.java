package dawnkettle.post;

import static java.nio.charset.StandardCharsets.US_ASCII;

import dawnkettle.mail.Arrived;
import jakarta.mail.FetchProfile;
import jakarta.mail.Flags;
import jakarta.mail.Folder;
import jakarta.mail.Message;
import jakarta.mail.MessagingException;
import jakarta.mail.Session;
import jakarta.mail.Store;
import jakarta.mail.UIDFolder;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.Instant;
import java.util.Arrays;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.SynchronousQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;
import org.eclipse.angus.mail.imap.IMAPFolder;
import org.eclipse.angus.mail.imap.IMAPMessage;

/** One visit to the mailbox: finds what is not known yet, hands it over mail by mail, and marks what was taken. */
final class Visit implements Callable<Void> {
    /** What a mail carries once it came to its end; a person who reads mail in the same box does not set it. */
    static final String MARK = "DawnkettleDone";

    /** A mail above this is no order (RFC822.SIZE, before anything of it is fetched). */
    static final int MOST_BYTES = 1_000_000;

    /** So many in one look: a flood is worked off over the evening and does not hold the night. */
    static final int MOST_MAILS = 60;

    /** Mails whose flags and sizes are asked for at once. */
    private static final int GROUP = 200;

    private final Session session;
    private final MailboxSettings settings;
    private final String password;
    private final Predicate<Arrived.Place> isKnown;
    private final ReadArrived reading;
    private final SynchronousQueue<Optional<Arrived>> there = new SynchronousQueue<>();
    private final SynchronousQueue<Boolean> back = new SynchronousQueue<>();
    private volatile Thread mine;
    private int handed;

    Visit(Session session, MailboxSettings settings, String password, Predicate<Arrived.Place> isKnown) {
        this.session = session;
        this.settings = settings;
        this.password = password;
        this.isKnown = isKnown;
        this.reading = new ReadArrived(new Vouching(settings.vouchedBy()));
    }

    /** Lets {@code taker} have the next mail, on the caller's thread. @return false where there is none any more */
    boolean hand(Predicate<Arrived> taker, long nanos) throws InterruptedException {
        Optional<Arrived> next = there.poll(Math.max(0, nanos), TimeUnit.NANOSECONDS);
        if (next == null || next.isEmpty()) return false;
        back.offer(taker.test(next.get()), 1, TimeUnit.SECONDS);
        return true;
    }

    void stop() {
        Thread running = mine;
        if (running != null) running.interrupt();
    }

    @Override
    public Void call() throws MessagingException, IOException, InterruptedException {
        mine = Thread.currentThread();
        try (Store store = new BoundedStore(session)) {
            store.connect(settings.host(), settings.port(), settings.user(), password);
            try (Folder inbox = store.getFolder("INBOX")) {
                inbox.open(Folder.READ_WRITE);
                walk((IMAPFolder) inbox);
            }
        } finally {
            there.offer(Optional.empty(), 1, TimeUnit.SECONDS);
        }
        return null;
    }

    private void walk(IMAPFolder inbox) throws MessagingException, IOException, InterruptedException {
        int all = inbox.getMessageCount();
        for (int from = 1; from <= all && handed < MOST_MAILS; from += GROUP) {
            Message[] group = inbox.getMessages(from, Math.min(all, from + GROUP - 1));
            FetchProfile profile = new FetchProfile();
            profile.add(FetchProfile.Item.FLAGS);
            profile.add(FetchProfile.Item.SIZE);
            profile.add(UIDFolder.FetchProfileItem.UID);
            // Never the envelope: servers stumble over addresses that are none.
            profile.add(IMAPFolder.FetchProfileItem.INTERNALDATE);
            inbox.fetch(group, profile);
            for (Message message : group)
                if (handed < MOST_MAILS && !message.getFlags().contains(MARK)) one(inbox, message);
        }
    }

    private void one(IMAPFolder inbox, Message message) throws MessagingException, IOException, InterruptedException {
        Arrived.Place place = new Arrived.Place(inbox.getUIDValidity(), inbox.getUID(message));
        Flags marks = new Flags();
        if (!isKnown.test(place)) {
            handed++;
            there.put(Optional.of(fetched(inbox, place, (IMAPMessage) message)));
            marks.add(back.take() ? Flags.Flag.SEEN : Flags.Flag.FLAGGED);
        }
        if (keepsMarks(inbox)) marks.add(MARK);
        message.setFlags(marks, true);
    }

    private static boolean keepsMarks(Folder inbox) {
        Flags permitted = inbox.getPermanentFlags();
        return permitted.contains(Flags.Flag.USER)
                || Arrays.asList(permitted.getUserFlags()).contains(MARK);
    }

    /** A mail that the server can't show is set aside, so that it does not stand before all others for ever. */
    private Arrived fetched(Folder inbox, Arrived.Place place, IMAPMessage message)
            throws MessagingException, IOException {
        try {
            return read(place, message);
        } catch (MessagingException | IOException e) {
            if (!inbox.isOpen()) throw e;
            return ReadArrived.refused(place, hash(place), "the mailbox can't show it");
        }
    }

    private static String hash(Arrived.Place place) {
        return ReadArrived.hash(place.toString().getBytes(US_ASCII));
    }

    private Arrived read(Arrived.Place place, IMAPMessage message) throws MessagingException, IOException {
        if (message.getSize() > MOST_BYTES) return ReadArrived.refused(place, hash(place), "it is larger than 1 MB");
        message.setPeek(true);
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        message.writeTo(bytes);
        Instant arrived = Optional.ofNullable(message.getReceivedDate())
                .map(date -> date.toInstant())
                .orElse(Instant.EPOCH);
        return reading.read(place, bytes.toByteArray(), arrived);
    }
}

package dawnkettle.post;

import static java.nio.charset.StandardCharsets.UTF_8;

import dawnkettle.mail.Arrived;
import dawnkettle.mail.Mailbox;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/** A mailbox that holds mails as bytes and reads them as the IMAP one does, without a server between. */
public final class HeldMails implements Mailbox {
    private final ReadArrived reading;
    private final List<byte[]> mails = new ArrayList<>();
    private final List<Instant> times = new ArrayList<>();

    /** @param server by which name the receiving server signs */
    public HeldMails(String server) {
        this.reading = new ReadArrived(new Vouching(server));
    }

    public void arrives(String raw, Instant at) {
        mails.add(raw.replace("\n", "\r\n").getBytes(UTF_8));
        times.add(at);
    }

    @Override
    public void look(Predicate<Arrived.Place> isKnown, Predicate<Arrived> taker) {
        for (int i = 0; i < mails.size(); i++) {
            Arrived.Place place = new Arrived.Place(1, i + 1);
            if (!isKnown.test(place)) taker.test(reading.read(place, mails.get(i), times.get(i)));
        }
    }
}

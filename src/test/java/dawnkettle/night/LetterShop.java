package dawnkettle.night;

import dawnkettle.conf.Configuration;
import dawnkettle.conf.ReadConfiguration;
import dawnkettle.mail.Mail;
import dawnkettle.mail.Post;
import dawnkettle.store.Ledger;
import dawnkettle.trouble.DeviceAway;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** The demonstration shop's outbox on a real ledger, with a mail server that fails as it is told to. */
final class LetterShop {
    static final Configuration CONF = ReadConfiguration.from(Path.of("conf"));

    final List<OrderSource.LeftOut> leftOut = new ArrayList<>();
    final List<Mail> arrived = new ArrayList<>();
    final List<DeviceAway> failures = new ArrayList<>();
    final List<String> story = new ArrayList<>();
    final Office office;
    Optional<String> clockDoubt = Optional.empty();
    Instant now;
    /** A way out of the house that the test has chosen; without it {@link #arrived} is where mails go. */
    Optional<Post> way = Optional.empty();
    /** So much later it is each time the clock is looked at. */
    Duration pace = Duration.ZERO;

    LetterShop(Ledger ledger, Instant now) {
        this.now = now;
        NightSettings was = CONF.night();
        NightSettings settings = new NightSettings(
                was.times(),
                was.places(),
                was.search(),
                new NightSettings.Mailing(
                        List.of("owner@millrace.example"),
                        List.of("owner@millrace.example"),
                        List.of("farm@quillhaven.example"),
                        true,
                        Set.of("run")));
        Edges edges = new Edges(
                new Edges.Senses(orders(), null, at -> clockDoubt),
                null,
                null,
                new Edges.MailDesk(this::take, null, null),
                null);
        office = new Office(
                new Office.Papers(CONF.shop(), CONF.standing(), settings),
                ledger,
                new Moved(),
                edges,
                (at, line) -> story.add(line));
    }

    private OrderSource orders() {
        return new OrderSource() {
            @Override
            public List<Parcel> look(Instant now) {
                return List.of();
            }

            @Override
            public List<LeftOut> leftOutSince(Instant since) {
                return leftOut;
            }
        };
    }

    private void take(Mail mail, Instant date) {
        if (way.isPresent()) {
            way.get().send(mail, date);
            return;
        }
        DeviceAway failure = failures.isEmpty() ? null : failures.remove(0);
        if (failure == null || failure.isAmbiguous()) arrived.add(mail);
        if (failure != null) throw failure;
    }

    void later(Duration span) {
        now = now.plus(span);
    }

    private final class Moved extends Clock {
        @Override
        public ZoneId getZone() {
            return CONF.shop().house().zone();
        }

        @Override
        public Clock withZone(ZoneId other) {
            throw new UnsupportedOperationException();
        }

        @Override
        public Instant instant() {
            now = now.plus(pace);
            return now;
        }
    }
}

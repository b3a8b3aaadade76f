package dawnkettle.night;

import dawnkettle.mail.Mail;
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

/** The demonstration shop with a state folder of its own that is cared for: a few bytes of ballast, copies, probes. */
final class CareShop {
    static final long BALLAST = 2_000_000;

    final List<Mail> sent = new ArrayList<>();
    final List<String> story = new ArrayList<>();
    final List<Probe> probes = new ArrayList<>();
    final Path state;
    final Ledger ledger;
    Optional<String> clockDoubt = Optional.empty();
    Optional<Path> second = Optional.empty();
    Optional<Path> key = Optional.empty();
    Optional<DeviceAway> postAway = Optional.empty();
    String boot = "first";
    int keepYears;
    long wantedFree = 1_000_000;
    int verified;
    Instant now;

    CareShop(Path state, Instant now) {
        this.state = state;
        this.now = now;
        this.ledger = Ledger.open(state.resolve("ledger.db"));
    }

    Office office() {
        NightSettings was = LetterShop.CONF.night();
        NightSettings settings = new NightSettings(
                was.times(),
                new NightSettings.Places(
                        ledger.file(), state.resolve("tray"), state.resolve("orders"), state.resolve("backups")),
                was.search(),
                new NightSettings.Mailing(
                        List.of("owner@millrace.example"),
                        List.of("owner@millrace.example"),
                        List.of(),
                        false,
                        Set.of()),
                was.records(),
                was.buying(),
                new NightSettings.Care(
                        true,
                        new NightSettings.Room(wantedFree, BALLAST),
                        new NightSettings.Copies(second, key),
                        keepYears));
        Edges edges = new Edges(
                new Edges.Senses(at -> List.of(), null, time(), probes, () -> verified++),
                null,
                null,
                new Edges.MailDesk(this::take, null, null),
                null);
        return new Office(
                new Office.Papers(LetterShop.CONF.shop(), LetterShop.CONF.standing(), settings),
                ledger,
                new Standing(),
                edges,
                (at, line) -> story.add(line));
    }

    private TrustedTime time() {
        return new TrustedTime() {
            @Override
            public Optional<String> doubt(Instant at) {
                return clockDoubt;
            }

            @Override
            public String boot() {
                return boot;
            }
        };
    }

    private void take(Mail mail, Instant date) {
        postAway.ifPresent(away -> {
            throw away;
        });
        sent.add(mail);
    }

    void later(Duration span) {
        now = now.plus(span);
    }

    /** A clock that stands where it is put. */
    private final class Standing extends Clock {
        @Override
        public ZoneId getZone() {
            return LetterShop.CONF.shop().house().zone();
        }

        @Override
        public Clock withZone(ZoneId other) {
            throw new UnsupportedOperationException();
        }

        @Override
        public Instant instant() {
            return now;
        }
    }
}

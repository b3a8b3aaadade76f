package dawnkettle;

import java.io.IOException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Consumer;
import java.util.function.LongSupplier;

/**
 * What the init system is told, in the words of sd_notify(3): that the service is ready once its first look at what is due
 * came back, and that it moves, whenever the work itself does so. No timer says it: work that stands still says nothing,
 * and a look that breaks off counts as standing still until one comes back whole.
 */
final class InitSystem {
    private static final long MICROS_PER_MILLI = 1_000;

    /** How long a start may stand still; systemd/dawnkettle.service says the same. */
    private static final Duration START = Duration.ofSeconds(180);

    /** Stands for the watchdog's time where nobody watches; it paces what is then told to nobody. */
    private static final Duration UNWATCHED = Duration.ofSeconds(80);

    /** What is borne above a device's own patience. */
    private static final Duration MARGIN = Duration.ofSeconds(60);

    private final Consumer<List<String>> teller;
    private final Duration watchdog;
    private final LongSupplier nanos;
    private final long pauseNanos;
    private final AtomicLong saidAt;
    private volatile boolean ready;
    private volatile boolean broken;

    /**
     * @param watchdog how long the service may stand still
     * @param nanos a clock that is never set, in nanoseconds
     */
    InitSystem(Consumer<List<String>> teller, Duration watchdog, LongSupplier nanos) {
        this.teller = teller;
        this.watchdog = watchdog;
        this.nanos = nanos;
        this.pauseNanos = watchdog.dividedBy(4).toNanos();
        this.saidAt = new AtomicLong(nanos.getAsLong() - pauseNanos);
    }

    /** The one that started us, as it says in the environment; where none did, nobody is told anything. */
    static InitSystem of(Map<String, String> environment) {
        Duration watchdog = Optional.ofNullable(environment.get("WATCHDOG_USEC"))
                .map(micros -> Duration.ofMillis(Long.parseLong(micros) / MICROS_PER_MILLI))
                .orElse(UNWATCHED);
        return environment.containsKey("NOTIFY_SOCKET")
                ? new InitSystem(words -> tell(words, environment.get("NOTIFY_SOCKET")), watchdog, System::nanoTime)
                : new InitSystem(words -> {}, watchdog, System::nanoTime);
    }

    /**
     * By systemd's own program, because Java 17 has no datagram sockets of this kind. It costs 10 ms two to four times a
     * minute, and returns when the word was received.
     */
    private static void tell(List<String> words, String socket) {
        List<String> command = new ArrayList<>(words);
        command.add(0, "systemd-notify");
        ProcessBuilder teller = new ProcessBuilder(command).inheritIO();
        teller.environment().put("NOTIFY_SOCKET", socket);
        try {
            Process process = teller.start();
            if (!process.waitFor(10, TimeUnit.SECONDS)) process.destroyForcibly();
        } catch (IOException absent) {
            System.err.println("the init system can't be told how we are, so it will end us: " + absent.getMessage());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** The work has moved; said a few times within the time that it may stand still, however often it is called. */
    void moved() {
        if (broken) return;
        long now = nanos.getAsLong();
        long before = saidAt.get();
        if (now - before < pauseNanos || !saidAt.compareAndSet(before, now)) return;
        teller.accept(List.of(ready ? "WATCHDOG=1" : "EXTEND_TIMEOUT_USEC=" + micros(START)));
    }

    /** A look at what is due, as it is told: ready when the first has come back. */
    Runnable watched(Runnable tick) {
        return () -> {
            moved();
            boolean whole = false;
            try {
                tick.run();
                whole = true;
            } finally {
                broken = !whole;
            }
            if (ready) moved();
            else ready();
        };
    }

    private void ready() {
        ready = true;
        saidAt.set(nanos.getAsLong());
        teller.accept(List.of("READY=1", "WATCHDOG=1"));
    }

    /** A clock each look at which is a move: whoever does something wants to know when it is. */
    Clock watched(Clock clock) {
        return new WatchedClock(clock, this::moved);
    }

    /** A device's own time limit is longer than the work may stand still: for so long nothing is expected of it. */
    void patiently(Duration limit, Runnable deed) {
        Duration borne = limit.plus(MARGIN);
        if (borne.compareTo(watchdog) <= 0) {
            deed.run();
            return;
        }
        allow(borne);
        try {
            deed.run();
        } finally {
            allow(watchdog);
        }
    }

    private void allow(Duration still) {
        if (broken) return;
        saidAt.set(nanos.getAsLong());
        teller.accept(
                ready
                        ? List.of("WATCHDOG_USEC=" + micros(still), "WATCHDOG=1")
                        : List.of("EXTEND_TIMEOUT_USEC=" + Math.max(micros(still), micros(START))));
    }

    private static long micros(Duration duration) {
        return duration.toMillis() * MICROS_PER_MILLI;
    }

    void stopping() {
        teller.accept(List.of("STOPPING=1"));
    }

    /** The clock of a service that is watched. */
    private static final class WatchedClock extends Clock {
        private final Clock clock;
        private final Runnable look;

        WatchedClock(Clock clock, Runnable look) {
            this.clock = clock;
            this.look = look;
        }

        @Override
        public Instant instant() {
            look.run();
            return clock.instant();
        }

        @Override
        public ZoneId getZone() {
            return clock.getZone();
        }

        @Override
        public Clock withZone(ZoneId zone) {
            return new WatchedClock(clock.withZone(zone), look);
        }
    }
}

package dawnkettle;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the init system hears, and when it hears nothing; the words are those of sd_notify(3). */
class InitSystemTest {
    /** So long the work may stand still; a sign of life may come four times as often. */
    private static final Duration WATCHDOG = Duration.ofMillis(400);

    /** Hears on a datagram socket, a word a line, and lets go of what comes along with it. */
    private static final String EAR = """
            $| = 1; socket(S, AF_UNIX, SOCK_DGRAM, 0); bind(S, pack_sockaddr_un($ARGV[0]));
            while (defined recv(S, $word, 4096, 0)) { print "$word\n" }""";

    private final List<String> heard = Collections.synchronizedList(new ArrayList<>());
    private final AtomicLong nanos = new AtomicLong();
    private final InitSystem init = new InitSystem(heard::addAll, WATCHDOG, nanos::get);

    @TempDir
    Path folder;

    private void passes(Duration howLong) {
        nanos.addAndGet(howLong.toNanos());
    }

    @Test
    void it_is_ready_when_the_first_look_at_what_is_due_has_come_back_and_not_before() {
        init.watched(() -> assertThat(heard).containsExactly("EXTEND_TIMEOUT_USEC=180000000"))
                .run();

        assertThat(heard).containsExactly("EXTEND_TIMEOUT_USEC=180000000", "READY=1", "WATCHDOG=1");
    }

    @Test
    void a_first_look_that_breaks_off_does_not_make_it_ready() {
        assertThatThrownBy(init.watched(() -> {
                    throw new IllegalStateException("the disk is full");
                })::run)
                .hasMessage("the disk is full");

        assertThat(heard).doesNotContain("READY=1");
    }

    @Test
    void work_that_looks_at_its_clock_is_said_to_move_but_not_at_each_look() {
        init.watched(() -> {}).run();
        heard.clear();
        Clock clock = init.watched(Clock.systemUTC());

        for (int look = 0; look < 45; look++) {
            passes(Duration.ofMillis(10));
            clock.instant();
        }

        assertThat(heard).containsExactly("WATCHDOG=1", "WATCHDOG=1", "WATCHDOG=1", "WATCHDOG=1");
    }

    @Test
    void work_that_stands_still_says_nothing_however_long() {
        init.watched(() -> {}).run();
        passes(WATCHDOG);
        heard.clear();

        init.watched(() -> {
                    assertThat(heard).containsExactly("WATCHDOG=1");
                    passes(WATCHDOG.multipliedBy(2));
                    assertThat(heard).containsExactly("WATCHDOG=1");
                })
                .run();
    }

    @Test
    void after_a_look_that_broke_off_nothing_counts_until_one_comes_back_whole() {
        init.watched(() -> {}).run();
        assertThatThrownBy(init.watched(() -> {
                    throw new IllegalStateException("the disk is full");
                })::run)
                .hasMessage("the disk is full");
        passes(WATCHDOG);
        heard.clear();

        init.watched(Clock.systemUTC()).instant();
        assertThat(heard).isEmpty();
        init.watched(() -> assertThat(heard).isEmpty()).run();
        assertThat(heard).containsExactly("WATCHDOG=1");
    }

    @Test
    void a_device_that_may_take_longer_is_given_its_time_and_no_more() {
        init.watched(() -> {}).run();
        heard.clear();

        init.patiently(Duration.ofMinutes(10), () -> heard.add("(prints)"));

        assertThat(heard)
                .containsExactly(
                        "WATCHDOG_USEC=660000000", "WATCHDOG=1", "(prints)", "WATCHDOG_USEC=400000", "WATCHDOG=1");
    }

    @Test
    void a_device_that_fails_leaves_no_longer_time_behind() {
        init.watched(() -> {}).run();

        assertThatThrownBy(() -> init.patiently(Duration.ofMinutes(10), () -> {
                    throw new IllegalStateException("unplugged");
                }))
                .hasMessage("unplugged");

        assertThat(heard).endsWith("WATCHDOG_USEC=400000", "WATCHDOG=1");
    }

    @Test
    void where_no_init_system_started_it_nobody_is_told() {
        InitSystem nobody = InitSystem.of(Map.of());

        nobody.watched(() -> {}).run();
        nobody.patiently(Duration.ofHours(1), () -> {});
        nobody.stopping();
    }

    /** The socket is a real one; what hears on it shares no code with what speaks. */
    @Test
    void a_real_socket_hears_ready_then_life_then_nothing_from_work_that_hangs() throws Exception {
        assumeThat(Path.of("/usr/bin/perl")).exists();
        assumeThat(Path.of("/usr/bin/systemd-notify").toFile().exists()
                        || Path.of("/bin/systemd-notify").toFile().exists())
                .as("systemd-notify is there")
                .isTrue();
        Path socket = folder.resolve("notify");
        Path said = folder.resolve("heard.txt");
        Process ear = new ProcessBuilder("perl", "-MSocket", "-e", EAR, socket.toString())
                .redirectOutput(said.toFile())
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        try {
            while (!Files.exists(socket)) rest(Duration.ofMillis(20));
            InitSystem real = InitSystem.of(Map.of("NOTIFY_SOCKET", socket.toString(), "WATCHDOG_USEC", "2000000"));
            Clock clock = real.watched(Clock.systemUTC());

            real.watched(() -> {}).run();
            assertThat(awaited(said, "READY=1")).startsWith("EXTEND_TIMEOUT_USEC=180000000\n");
            rest(Duration.ofMillis(600));
            clock.instant();
            rest(Duration.ofMillis(600));
            clock.instant();
            rest(Duration.ofMillis(300));
            int alive = signs(said);
            real.watched(() -> rest(Duration.ofSeconds(3))).run();

            assertThat(alive).isEqualTo(3);
            assertThat(signs(said)).as("one before it hung, one after").isBetween(4, 5);
            real.stopping();
            assertThat(awaited(said, "STOPPING=1")).isNotEmpty();
        } finally {
            ear.destroy();
        }
    }

    private static void rest(Duration howLong) {
        try {
            Thread.sleep(howLong.toMillis());
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    private static int signs(Path said) throws IOException {
        return Files.readString(said, UTF_8).split("WATCHDOG=1", -1).length - 1;
    }

    private static String awaited(Path said, String word) throws IOException {
        for (int tries = 0; tries < 100; tries++) {
            String text = Files.exists(said) ? Files.readString(said, UTF_8) : "";
            if (text.contains(word)) return text;
            rest(Duration.ofMillis(50));
        }
        throw new AssertionError(word + " was not heard");
    }
}

package dawnkettle.intake;

import static java.nio.charset.StandardCharsets.US_ASCII;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/**
 * Whether the machine's clock is known to be right: the init system's time service leaves a file once it has been set
 * from the network; of another time service the kernel knows, and {@code timedatectl} says so. A small computer without a
 * battery clock wakes up in the past.
 */
public final class SynchronizedClock {
    private static final Path SYNCHRONIZED = Path.of("/run/systemd/timesync/synchronized");

    /** Nothing of this program is older. */
    private static final Instant EARLIEST =
            LocalDate.of(2026, 1, 1).atStartOfDay(ZoneOffset.UTC).toInstant();

    private static final Path BOOT = Path.of("/proc/sys/kernel/random/boot_id");

    private static final int SECONDS_TO_ANSWER = 5;

    private final Path mark;

    public SynchronizedClock() {
        this(SYNCHRONIZED);
    }

    SynchronizedClock(Path mark) {
        this.mark = mark;
    }

    /** Why {@code now} is in doubt; empty where it is not. */
    public Optional<String> doubt(Instant now) {
        if (now.isBefore(EARLIEST)) return Optional.of("the clock says " + now + ", which is in the past; set it");
        if (Files.exists(mark) || kernelSaysSo()) return Optional.empty();
        return Optional.of(
                "the clock has not been set from the network since the start; see that the network is there, or set it");
    }

    /** The kernel's own word for this start of the machine; empty where it has none. */
    public String boot() {
        try {
            return Files.readString(BOOT, US_ASCII).strip();
        } catch (IOException e) {
            return "";
        }
    }

    private static boolean kernelSaysSo() {
        try {
            Process asked = new ProcessBuilder("timedatectl", "show", "--property=NTPSynchronized", "--value")
                    .redirectErrorStream(true)
                    .start();
            if (!asked.waitFor(SECONDS_TO_ANSWER, TimeUnit.SECONDS)) {
                asked.destroyForcibly();
                return false;
            }
            return new String(asked.getInputStream().readAllBytes(), US_ASCII)
                    .strip()
                    .equals("yes");
        } catch (IOException e) {
            return false; // no such program: nobody vouches for the clock
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }
}

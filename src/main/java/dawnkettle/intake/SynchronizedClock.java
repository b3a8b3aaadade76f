package dawnkettle.intake;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Optional;

/**
 * Whether the machine's clock is known to be right: the init system's time service leaves a file once it has been set
 * from the network. A small computer without a battery clock wakes up in the past.
 */
public final class SynchronizedClock {
    private static final Path SYNCHRONIZED = Path.of("/run/systemd/timesync/synchronized");

    /** Nothing of this program is older. */
    private static final Instant EARLIEST =
            LocalDate.of(2026, 1, 1).atStartOfDay(ZoneOffset.UTC).toInstant();

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
        if (Files.exists(mark)) return Optional.empty();
        return Optional.of(
                "the clock has not been set from the network since the start; see that the network is there, or set it");
    }
}

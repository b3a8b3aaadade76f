package dawnkettle.night;

import java.time.Instant;
import java.util.Optional;

/** Whether the clock is known to be right; no date is printed otherwise. */
public interface TrustedTime {
    /** Why {@code now} is in doubt, in words; empty where it is not. */
    Optional<String> doubt(Instant now);

    /** A word for this start of the machine, by which what a person said of the clock ends with it; empty where none is known. */
    default String boot() {
        return "";
    }
}

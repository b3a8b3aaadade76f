package dawnkettle.watch;

import java.net.URI;
import java.time.Duration;

/**
 * Who outside is told that steps were done, and raises the alarm when nothing comes.
 *
 * @param url what is called; whoever knows it can feign that all is well, so it is said nowhere
 * @param patience how long one call may take
 */
public record WatchSettings(URI url, Duration patience) {
    /** Says nothing of the address. */
    @Override
    public String toString() {
        return "WatchSettings[" + patience + "]";
    }
}

package dawnkettle.mail;

import dawnkettle.trouble.DeviceAway;
import java.time.Instant;

/** Where mail leaves. */
public interface Post {
    /**
     * Sends {@code mail}, dated {@code date}.
     *
     * @throws DeviceAway when it did not go out; ambiguous where it may have gone out all the same
     */
    void send(Mail mail, Instant date);
}

package dawnkettle.line;

import java.time.Duration;

/**
 * The line to the label printer.
 *
 * @param device path of the port, best the one under {@code /dev/serial/by-id} that stays the same; empty for none
 * @param baud bits per second, 1200 to 921600
 * @param flow how the printer says wait
 * @param profile name of the printer profile
 * @param group most labels between two questions, 1 to 100
 * @param patience how long a stop (out of labels, cover open) is borne before the run is given up, at least 1 s
 */
public record LineSettings(String device, int baud, Flow flow, String profile, int group, Duration patience) {
    public LineSettings {
        if (baud < 1_200 || baud > 921_600)
            throw new IllegalArgumentException(
                    "baud \"" + baud + "\" is not 1200 to 921600; write what the printer is set to");
        if (group < 1 || group > 100)
            throw new IllegalArgumentException("group \"" + group + "\" is not 1 to 100; write 10");
        if (patience.compareTo(Duration.ofSeconds(1)) < 0)
            throw new IllegalArgumentException("patience \"" + patience + "\" is below a second; write 600");
    }

    /** How the printer says wait. Software flow control is not here: its two bytes occur in pictures. */
    public enum Flow {
        NONE,
        RTS_CTS,
        DTR_DSR
    }

    /** How long so many bytes may take: three times what the line needs, and five seconds. */
    Duration deadline(int bytes) {
        // A byte is ten bits on the line: start, eight, stop (by arithmetic: 9600 baud are 960 bytes a second).
        return Duration.ofMillis(3L * bytes * 10 * 1_000 / baud + 5_000);
    }
}

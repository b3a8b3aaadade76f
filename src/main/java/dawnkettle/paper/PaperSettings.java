package dawnkettle.paper;

import java.net.URI;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;

/**
 * How sheets are printed.
 *
 * @param queue address of the print queue or printer, as ipp://printer.example/ipp/print; empty where sheets only go to the out-tray
 * @param copies copies by kind of sheet; a kind that is not named is printed once
 * @param patience how long a job is followed before it counts as not printed
 */
public record PaperSettings(Optional<URI> queue, Map<String, Integer> copies, Duration patience) {
    public PaperSettings {
        copies = Map.copyOf(copies);
    }
}

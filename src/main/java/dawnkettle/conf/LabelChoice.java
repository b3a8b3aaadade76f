package dawnkettle.conf;

import java.time.Duration;
import java.util.Optional;

/**
 * What the owner chose for case labels.
 *
 * @param device the label printer's serial device; empty where labels only go to the out-tray
 * @param baud bits per second on that device, 1200 to 115200
 * @param patience how long a write may hang before the printer counts as away, 1 s to 5 min
 * @param profile name of the printer profile in {@code labels/printers}
 * @param dotsPerMm dots in a millimetre of the print head, 6 to 24
 * @param design label design of products that name none
 */
public record LabelChoice(
        Optional<String> device, int baud, Duration patience, String profile, int dotsPerMm, String design) {}

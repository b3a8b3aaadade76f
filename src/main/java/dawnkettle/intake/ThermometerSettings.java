package dawnkettle.intake;

import java.nio.file.Path;
import java.util.Optional;

/**
 * Where the soak room's temperature comes from; the monthly norms hold where neither answers.
 *
 * @param sensor file of the kernel's 1-wire or hwmon driver, thousandths of a degree
 * @param log CSV that something else writes: time, degrees Celsius
 */
public record ThermometerSettings(Optional<Path> sensor, Optional<Path> log) {}

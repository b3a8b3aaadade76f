package dawnkettle.intake;

import static java.nio.charset.StandardCharsets.UTF_8;

import dawnkettle.measure.Celsius;
import dawnkettle.trouble.Table;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** The temperature log, row by row: a time with its offset (or local time), degrees Celsius. Rows it can't read are left out. */
final class RoomLog {
    /** No soak lasts longer than the hours that are looked at. */
    private static final Duration LONGEST_SOAK = Duration.ofHours(96);

    private final Path file;
    private final ZoneId zone;

    RoomLog(Path file, ZoneId zone) {
        this.file = file;
        this.zone = zone;
    }

    /** Its readings of the last four days, the oldest first; empty where it can't be read. */
    List<RoomReading.Logged> before(Instant now) {
        try {
            if (Files.size(file) > Thermometers.LARGEST_LOG_BYTES) return List.of();
            Map<Instant, Celsius> readings = new TreeMap<>();
            for (Table.Row row : Table.read(file.getFileName().toString(), Files.readString(file, UTF_8))
                    .rows()) {
                if (row.cells().size() < 2) continue;
                Optional<Instant> at = time(row.cells().get(0).text(), zone);
                Optional<Celsius> celsius = celsius(row.cells().get(1).text());
                if (at.isEmpty() || celsius.isEmpty() || at.get().isAfter(now)) continue;
                if (at.get().isAfter(now.minus(LONGEST_SOAK))) readings.put(at.get(), celsius.get());
            }
            return readings.entrySet().stream()
                    .map(reading -> new RoomReading.Logged(reading.getKey(), reading.getValue()))
                    .toList();
        } catch (IOException e) {
            return List.of(); // that it can't be read is said with the source
        }
    }

    private static Optional<Celsius> celsius(String degrees) {
        if (!degrees.matches("-?[0-9]{1,3}(\\.[0-9]{1,3})?")) return Optional.empty();
        return Optional.of(Celsius.of(new BigDecimal(degrees).setScale(1, RoundingMode.HALF_UP)));
    }

    static Optional<Instant> time(String word, ZoneId zone) {
        try {
            return Optional.of(OffsetDateTime.parse(word).toInstant());
        } catch (DateTimeException noOffset) {
            try {
                return Optional.of(LocalDateTime.parse(word).atZone(zone).toInstant());
            } catch (DateTimeException noTime) {
                return Optional.empty();
            }
        }
    }
}

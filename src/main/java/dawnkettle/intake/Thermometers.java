package dawnkettle.intake;

import static java.nio.charset.StandardCharsets.UTF_8;

import dawnkettle.measure.Celsius;
import dawnkettle.shop.Climate;
import dawnkettle.trouble.Table;
import java.io.IOException;
import java.io.InputStream;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The soak room's temperature: from the sensor, otherwise from the log, otherwise the month's norm. What is not
 * believable is not used, and the source says so. Tap water is always the month's norm.
 */
public final class Thermometers {
    /**
     * The kernel's 1-wire file holds two lines, the first with the checksum's verdict, the second with {@code t=} and
     * thousandths of a degree (Linux ABI document sysfs-driver-w1_therm); hwmon files hold that number alone.
     */
    private static final Pattern ONE_WIRE = Pattern.compile("(?s).*crc=[0-9a-f]{2} YES\\s.*t=(-?[0-9]{1,6})\\s*");

    private static final Pattern PLAIN = Pattern.compile("(-?[0-9]{1,6})\\s*");

    /** What a common 1-wire part answers before its first measurement (from memory). */
    private static final int POWER_ON_MILLIDEGREES = 85_000;

    /** A soak room outside of this is a broken sensor (common practice, no source). */
    private static final int COLDEST_MILLIDEGREES = -5_000;

    private static final int WARMEST_MILLIDEGREES = 45_000;

    /** A logged temperature older than this says nothing of the night (common practice, no source). */
    private static final Duration OLDEST = Duration.ofHours(3);

    static final long LARGEST_LOG_BYTES = 5_000_000;

    private final ThermometerSettings settings;
    private final Climate climate;
    private final ZoneId zone;

    /** One answer, or why there is none. */
    private record Answer(Optional<Celsius> room, String words) {
        static Answer none(String why) {
            return new Answer(Optional.empty(), why);
        }
    }

    public Thermometers(ThermometerSettings settings, Climate climate, ZoneId zone) {
        this.settings = settings;
        this.climate = climate;
        this.zone = zone;
    }

    public RoomReading read(Instant now) {
        var month = now.atZone(zone).getMonth();
        Celsius tap = climate.tap(month);
        List<String> failed = new ArrayList<>();
        List<Optional<Answer>> asked = List.of(
                settings.sensor().map(Thermometers::sensor), settings.log().map(log -> logged(log, now)));
        for (Optional<Answer> answer : asked) {
            if (answer.isEmpty()) continue;
            if (answer.get().room().isPresent())
                return new RoomReading(
                        answer.get().room().get(), tap, said(answer.get().words(), failed));
            failed.add(answer.get().words());
        }
        String norm = "norm of " + month.getDisplayName(TextStyle.FULL, Locale.ENGLISH);
        return new RoomReading(climate.room(month), tap, said(norm, failed));
    }

    /** What the log says of the hours behind us, the oldest first, as far as it is believable; empty without a log. */
    public List<RoomReading.Logged> past(Instant now) {
        return settings.log().map(log -> new RoomLog(log, zone).before(now)).orElse(List.of()).stream()
                .filter(one -> isBelievable(one.celsius().tenths() * 100))
                .toList();
    }

    private static String said(String source, List<String> failed) {
        return failed.isEmpty() ? source : source + ", because " + String.join(" and ", failed);
    }

    private static Answer sensor(Path file) {
        try {
            String text = head(file);
            Matcher oneWire = ONE_WIRE.matcher(text);
            Matcher plain = PLAIN.matcher(text);
            if (oneWire.matches()) return believed(Integer.parseInt(oneWire.group(1)), "sensor");
            if (plain.matches()) return believed(Integer.parseInt(plain.group(1)), "sensor");
            return Answer.none(
                    text.contains("crc=") ? "the sensor's checksum is wrong" : "the sensor's answer cannot be read");
        } catch (IOException e) {
            return Answer.none("the sensor does not answer");
        }
    }

    private static String head(Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            return new String(in.readNBytes(500), UTF_8);
        }
    }

    private static Answer believed(int millidegrees, String words) {
        Celsius room = Celsius.of(BigDecimal.valueOf(millidegrees, 3).setScale(1, RoundingMode.HALF_UP));
        if (!isBelievable(millidegrees))
            return Answer.none("the " + words + " says " + room + ", which is not believable");
        return new Answer(Optional.of(room), words);
    }

    private static boolean isBelievable(int millidegrees) {
        return millidegrees != POWER_ON_MILLIDEGREES
                && millidegrees >= COLDEST_MILLIDEGREES
                && millidegrees <= WARMEST_MILLIDEGREES;
    }

    /** The log's last row that is not later than now: a time with its offset (or local time), degrees Celsius. */
    private Answer logged(Path file, Instant now) {
        try {
            if (Files.size(file) > LARGEST_LOG_BYTES)
                return Answer.none("the temperature log is larger than 5 MB; begin a new one");
            Optional<Instant> at = Optional.empty();
            String degrees = "";
            for (Table.Row row : Table.read(file.getFileName().toString(), Files.readString(file, UTF_8))
                    .rows()) {
                Optional<Instant> time = row.cells().size() < 2
                        ? Optional.empty()
                        : RoomLog.time(row.cells().get(0).text(), zone);
                if (time.isEmpty() || time.get().isAfter(now)) continue;
                if (at.isPresent() && at.get().isAfter(time.get())) continue;
                at = time;
                degrees = row.cells().get(1).text();
            }
            return logged(at, degrees, now);
        } catch (IOException e) {
            return Answer.none("the temperature log cannot be read");
        }
    }

    private Answer logged(Optional<Instant> at, String degrees, Instant now) {
        if (at.isEmpty()) return Answer.none("the temperature log has no line before now");
        String when = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT)
                .format(at.get().atZone(zone));
        if (at.get().isBefore(now.minus(OLDEST))) return Answer.none("the temperature log ends at " + when);
        if (!degrees.matches("-?[0-9]{1,3}(\\.[0-9]{1,3})?"))
            return Answer.none("the temperature log's last line cannot be read");
        int millidegrees = new BigDecimal(degrees).movePointRight(3).intValueExact();
        return believed(millidegrees, "log of " + when);
    }
}

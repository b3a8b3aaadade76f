package dawnkettle.intake;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.book.SmallShop;
import dawnkettle.measure.Celsius;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ThermometersTest {
    private static final Instant NOW = Instant.parse("2026-12-03T20:00:00Z");

    @TempDir
    Path folder;

    /** A reading published on pastebin.com (p6XaL2SH): 0x0124 sixteenths of a degree are 18.25 °C. */
    @Test
    void a_one_wire_file_is_read_where_its_checksum_holds() throws IOException {
        assertThat(sensor("24 01 4b 46 7f ff 0c 10 48 : crc=48 YES\n24 01 4b 46 7f ff 0c 10 48 t=18250\n"))
                .isEqualTo(new RoomReading(Celsius.tenths(183), Celsius.degrees(11), "sensor"));
    }

    @Test
    void a_hwmon_file_holds_thousandths_of_a_degree() throws IOException {
        assertThat(sensor("21437\n").room()).isEqualTo(Celsius.tenths(214));
        assertThat(sensor("-550\n").room()).isEqualTo(Celsius.tenths(-6));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
        24 01 : crc=48 NO t=18250 | the sensor's checksum is wrong
        85000                     | the sensor says 85.0 °C, which is not believable
        -127000                   | the sensor says -127.0 °C, which is not believable
        NaN                       | the sensor's answer cannot be read
        """)
    void what_is_not_believable_is_not_used_and_the_sheet_says_why(String text, String why) throws IOException {
        assertThat(sensor(text + "\n"))
                .isEqualTo(
                        new RoomReading(Celsius.degrees(18), Celsius.degrees(11), "norm of December, because " + why));
    }

    @Test
    void the_log_holds_where_the_sensor_does_not_answer() throws IOException {
        Path log = Files.writeString(folder.resolve("room.csv"), """
                time,celsius
                2026-12-03T14:10:00-05:00,19.5
                2026-12-03T14:40:00,20.25
                2026-12-03T23:00:00-05:00,31
                """);

        assertThat(read(Optional.of(folder.resolve("none")), Optional.of(log)))
                .isEqualTo(new RoomReading(
                        Celsius.tenths(203),
                        Celsius.degrees(11),
                        "log of 2026-12-03 14:40, because the sensor does not answer"));
    }

    @Test
    void the_log_tells_the_hours_behind_us_as_far_as_it_is_believable() throws IOException {
        Path log = Files.writeString(folder.resolve("room.csv"), """
                time,celsius
                2026-11-20T14:10:00-05:00,12
                2026-12-03T14:40:00,20.25
                2026-12-03T14:10:00-05:00,19.5
                2026-12-03T14:20:00-05:00,85.0
                2026-12-03T14:30:00-05:00,warm
                2026-12-03T23:00:00-05:00,31
                """);
        Thermometers thermometers = new Thermometers(
                new ThermometerSettings(Optional.empty(), Optional.of(log)),
                SmallShop.climate(),
                ZoneId.of("America/New_York"));

        assertThat(thermometers.past(NOW))
                .containsExactly(
                        new RoomReading.Logged(Instant.parse("2026-12-03T19:10:00Z"), Celsius.tenths(195)),
                        new RoomReading.Logged(Instant.parse("2026-12-03T19:40:00Z"), Celsius.tenths(203)));
    }

    @Test
    void an_old_log_says_nothing_of_tonight() throws IOException {
        Path log = Files.writeString(folder.resolve("room.csv"), "time,celsius\n2026-12-03T11:59:00-05:00,19.5\n");

        assertThat(read(Optional.empty(), Optional.of(log)).source())
                .isEqualTo("norm of December, because the temperature log ends at 2026-12-03 11:59");
    }

    @Test
    void with_nothing_that_measures_the_norm_of_the_shops_month_holds() {
        assertThat(read(Optional.empty(), Optional.empty()).source()).isEqualTo("norm of December");
        assertThat(new Thermometers(
                                new ThermometerSettings(Optional.empty(), Optional.empty()),
                                SmallShop.climate(),
                                ZoneId.of("America/New_York"))
                        .read(Instant.parse("2026-12-01T03:00:00Z"))
                        .source())
                .isEqualTo("norm of November");
    }

    private RoomReading sensor(String text) throws IOException {
        return read(Optional.of(Files.writeString(folder.resolve("w1_slave"), text)), Optional.empty());
    }

    private static RoomReading read(Optional<Path> sensor, Optional<Path> log) {
        return new Thermometers(
                        new ThermometerSettings(sensor, log), SmallShop.climate(), ZoneId.of("America/New_York"))
                .read(NOW);
    }
}

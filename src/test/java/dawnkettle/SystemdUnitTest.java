package dawnkettle;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the unit must keep saying, whoever edits it; the words are those of systemd.exec(5) and systemd.service(5). */
class SystemdUnitTest {
    private static final Path FOLDER = Path.of("systemd");

    private final Map<String, List<String>> unit = read();

    /** The values of each key in their order; a line that ends with a backslash goes on in the next. */
    private static Map<String, List<String>> read() {
        Map<String, List<String>> values = new LinkedHashMap<>();
        for (String line : text("dawnkettle.service").replace("\\\n", " ").split("\n")) {
            int equals = line.indexOf('=');
            if (line.startsWith("#") || equals < 0) continue;
            values.computeIfAbsent(line.substring(0, equals), key -> new ArrayList<>())
                    .add(line.substring(equals + 1));
        }
        return values;
    }

    private static String text(String name) {
        return read(FOLDER.resolve(name).toString());
    }

    private static String read(String file) {
        try {
            return Files.readString(Path.of(file), UTF_8);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    private String only(String key) {
        assertThat(unit).containsKey(key);
        assertThat(unit.get(key)).hasSize(1);
        return unit.get(key).get(0);
    }

    @Test
    void it_starts_the_service_and_not_a_rehearsal() {
        assertThat(only("ExecStart")).isEqualTo("/usr/bin/dawnkettle run --conf /etc/dawnkettle/conf");
    }

    @Test
    void it_starts_again_after_a_crash_but_not_where_the_configuration_is_wrong() {
        assertThat(only("Restart")).isEqualTo("on-failure");
        assertThat(only("RestartPreventExitStatus").split(" ")).contains("78", "2");
        assertThat(only("StartLimitIntervalSec")).isEqualTo("0");
    }

    @Test
    void each_fall_is_counted_by_a_program_that_the_package_lays_down() {
        assertThat(only("ExecStopPost")).isEqualTo("-/usr/lib/dawnkettle/fell %n");
        assertThat(Path.of("src/deb/fell")).isExecutable();
        assertThat(read("src/deb/layout.xml")).contains("src/deb/fell\" todir=\"${deb}/programs/usr/lib/dawnkettle\"");
    }

    @Test
    void it_is_watched_and_out_of_a_standstill_within_two_and_a_half_minutes() {
        assertThat(only("Type")).isEqualTo("notify");
        assertThat(only("NotifyAccess")).isEqualTo("all");
        assertThat(only("WatchdogSignal"))
                .as("a Java then writes where it stands")
                .isEqualTo("SIGQUIT");
        int seconds = Integer.parseInt(only("WatchdogSec"))
                + Integer.parseInt(only("TimeoutAbortSec"))
                + Integer.parseInt(only("RestartSec"));
        assertThat(seconds).isLessThan(150);
        assertThat(Integer.parseInt(only("WatchdogSec")))
                .as("a look a minute, and one may be late")
                .isGreaterThanOrEqualTo(120);
    }

    @Test
    void a_person_is_told_where_it_does_not_start_again() {
        assertThat(only("OnFailure")).isEqualTo("dawnkettle-failed@%n.service");
        assertThat(text("dawnkettle-failed@.service"))
                .contains("Type=oneshot", "ExecStart=/usr/lib/dawnkettle/failed %i");
    }

    /** The scale is systemd's own: 0 is shut, 10 is open; the bare unit has 9.6. */
    @ParameterizedTest
    @ValueSource(strings = {"dawnkettle.service", "dawnkettle-failed@.service"})
    void systemd_itself_finds_it_well_shut(String name) throws IOException, InterruptedException {
        assumeThat(Path.of("/usr/bin/systemd-analyze")).exists();
        Process process = new ProcessBuilder(
                        "systemd-analyze",
                        "security",
                        "--offline=true",
                        FOLDER.resolve(name).toString())
                .redirectErrorStream(true)
                .start();
        String said = new String(process.getInputStream().readAllBytes(), UTF_8);
        Matcher exposure =
                Pattern.compile("Overall exposure level for \\S+: ([0-9.]+) ").matcher(said);

        assertThat(exposure.find()).as(said).isTrue();
        assertThat(new BigDecimal(exposure.group(1))).isLessThanOrEqualTo(new BigDecimal("2.0"));
    }

    @Test
    void it_listens_to_nobody() {
        assertThat(unit.keySet()).noneMatch(key -> key.startsWith("Listen") || key.equals("Sockets"));
        assertThat(unit).doesNotContainKey("SocketBindAllow");
        assertThat(only("SocketBindDeny")).isEqualTo("any");
        assertThat(FOLDER.toFile().list()).noneMatch(name -> name.endsWith(".socket"));
    }

    @Test
    void mail_printer_and_serial_line_are_within_its_reach() {
        assertThat(only("RestrictAddressFamilies").split(" ")).contains("AF_INET", "AF_INET6");
        assertThat(unit).doesNotContainKeys("PrivateNetwork", "IPAddressDeny");
        assertThat(unit.get("DeviceAllow")).contains("char-ttyUSB rw", "char-ttyACM rw", "char-ttyS rw");
        assertThat(only("PrivateDevices")).isEqualTo("no");
        assertThat(only("SupplementaryGroups")).isEqualTo("dialout");
    }

    @Test
    void java_may_compile_while_it_runs() {
        assertThat(only("MemoryDenyWriteExecute")).isEqualTo("no");
    }

    @Test
    void native_libraries_are_unpacked_where_nobody_else_can_write() {
        String own = "/var/cache/" + only("CacheDirectory");
        Matcher folders = Pattern.compile("-D(?:java\\.io|org\\.sqlite)\\.tmpdir=([^\\s\"]+)|native=(\\S+)")
                .matcher(only("Environment") + " " + read("src/deb/dawnkettle").replace('"', ' '));
        assertThat(folders.results().map(found -> found.group(1) == null ? found.group(2) : found.group(1)))
                .containsExactly(own, own, "/usr/lib/dawnkettle/native");
        assertThat(only("CacheDirectoryMode")).isEqualTo("0700");
    }

    @Test
    void its_account_and_its_folders_are_those_that_are_made_for_it() {
        assertThat(text("dawnkettle.sysusers")).contains("\nu " + only("User") + " ");
        assertThat(text("dawnkettle.sysusers")).contains("\nm " + only("User") + " " + only("SupplementaryGroups"));
        assertThat(text("dawnkettle.tmpfiles").replaceAll(" +", " "))
                .contains("\nd /var/lib/" + only("StateDirectory") + " " + only("StateDirectoryMode") + " "
                        + only("User") + " " + only("Group") + "\n")
                .contains("\nd /var/cache/" + only("CacheDirectory") + " " + only("CacheDirectoryMode") + " ");
    }
}

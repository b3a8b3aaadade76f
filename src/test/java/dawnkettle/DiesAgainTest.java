package dawnkettle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import dawnkettle.store.Ledger;
import dawnkettle.store.QueuedMail;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A service that starts, dies, starts and dies: somebody hears of it, once, whichever of the two can still write. */
class DiesAgainTest {
    @TempDir
    Path folder;

    private CopiedShop shop;

    @BeforeEach
    void copy() throws IOException {
        assumeTrue(Path.of("/proc/self").toFile().exists(), "SIGKILL is sent as Linux does it");
        shop = CopiedShop.quick(folder)
                .withoutHistory()
                .with("shop.toml", "state = \"../out/state\"", "state = \"" + folder.resolve("state") + "\"");
    }

    private Path ledger() {
        return folder.resolve("state/ledger.db");
    }

    private Process started() throws IOException {
        return RealService.start(shop.conf(), folder.resolve("said"));
    }

    private long count(String query) {
        if (Files.notExists(ledger())) return 0;
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + ledger());
                Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(query)) {
            return rows.next() ? rows.getLong(1) : 0;
        } catch (SQLException notThereYet) {
            return 0;
        }
    }

    private void await(String query, long wanted) throws InterruptedException {
        for (int tries = 0; tries < 1200 && count(query) < wanted; tries++) TimeUnit.MILLISECONDS.sleep(50);
        assertThat(count(query)).as(query).isEqualTo(wanted);
    }

    @Test
    void the_real_command_killed_three_times_tells_it_at_its_fourth_start_and_never_twice() throws Exception {
        for (int start = 1; start <= 5; start++) {
            Process service = started();
            await("SELECT count(*) FROM service_start", start);
            if (start > 3)
                await("SELECT count(*) FROM outbox WHERE message_id LIKE '%dies-again' AND state = 'sent'", 1);
            assertThat(count("SELECT count(*) FROM outbox WHERE message_id LIKE '%dies-again'"))
                    .as("start " + start)
                    .isEqualTo(start > 3 ? 1 : 0);
            service.destroyForcibly().waitFor();
        }
        assertThat(endedWhenTold(6)).as("one that is told to stop has not died").isTrue();
        assertThat(Files.readString(folder.resolve("said"))).contains("the service died 3 times within the last hour");
        try (Ledger kept = Ledger.open(ledger())) {
            assertThat(kept.outbox().find(today() + ".dies-again").map(QueuedMail::subject))
                    .get()
                    .asString()
                    .startsWith("Please look: the night clerk dies and is started again");
        }
    }

    /** Told to stop before it serves it dies of that, too; so it is given longer each time. */
    private boolean endedWhenTold(int start) throws Exception {
        for (int seconds = 2; seconds <= 64; seconds *= 2, start++) {
            Process service = started();
            await("SELECT count(*) FROM service_start", start);
            TimeUnit.SECONDS.sleep(seconds);
            service.destroy();
            assertThat(service.waitFor(60, TimeUnit.SECONDS)).isTrue();
            if (count("SELECT count(*) FROM service_start WHERE ended_at IS NOT NULL") == 1) return true;
        }
        return false;
    }

    /** The day of the mail, by the shop's own zone. */
    private String today() {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + ledger());
                Statement statement = connection.createStatement();
                ResultSet rows =
                        statement.executeQuery("SELECT message_id FROM outbox WHERE message_id LIKE '%dies-again'")) {
            return rows.next() ? rows.getString(1).substring(0, 10) : "";
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    private List<Path> mails() throws IOException {
        Path mails = folder.resolve("state/tray/mail");
        if (Files.notExists(mails)) return List.of();
        try (Stream<Path> files = Files.list(mails)) {
            return files.filter(file -> file.getFileName().toString().contains("dies-again"))
                    .toList();
        }
    }

    @Test
    void the_hook_tells_it_where_the_ledger_is_what_it_dies_of() throws IOException {
        Files.createDirectories(ledger().getParent());
        Files.writeString(ledger(), "this was a ledger once, before the disk had it");

        Terminal.Told told = Terminal.run("stopped", "--again", "--conf", shop.conf(), "dawnkettle.service");

        assertThat(told.status()).isZero();
        assertThat(told.err()).contains("ledger.db");
        assertThat(mails()).hasSize(1);
        assertThat(Files.readString(mails().get(0)))
                .contains("dawnkettle.service dies and is started again", "The machine is dead");
    }

    @Test
    void service_and_hook_write_one_mail_between_them() throws IOException {
        Terminal.run("stopped", "--again", "--conf", shop.conf(), "dawnkettle.service");
        Terminal.run("stopped", "--again", "--conf", shop.conf(), "dawnkettle.service");

        assertThat(mails()).hasSize(1);
        assertThat(count("SELECT count(*) FROM outbox")).isEqualTo(1);
    }

    /** The hook as the package has it, but that it calls {@code told} instead of the installed command. */
    private String fall(String result, String status) throws IOException, InterruptedException {
        Path cache = Files.createDirectories(folder.resolve("cache"));
        Path command = folder.resolve("command");
        Files.writeString(command, "#!/bin/sh\necho \"$@\" >> " + folder.resolve("told") + "\n");
        command.toFile().setExecutable(true);
        Path hook = folder.resolve("fell");
        Files.writeString(
                hook,
                Files.readString(Path.of("src/deb/fell"))
                        .replace("/usr/bin/dawnkettle", command.toString())
                        .replace(
                                "/etc/dawnkettle/when-failed",
                                folder.resolve("none").toString()));
        ProcessBuilder builder =
                new ProcessBuilder("sh", hook.toString(), "dawnkettle.service").redirectErrorStream(true);
        builder.environment().put("CACHE_DIRECTORY", cache.toString());
        builder.environment().put("SERVICE_RESULT", result);
        builder.environment().put("EXIT_STATUS", status);
        Process run = builder.start();
        String said = new String(run.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(run.waitFor()).isZero();
        return said;
    }

    private List<String> told() throws IOException {
        return Files.exists(folder.resolve("told")) ? Files.readAllLines(folder.resolve("told")) : List.of();
    }

    @Test
    void the_hook_counts_falls_and_neither_stops_nor_a_wrong_configuration() throws Exception {
        for (int times = 0; times < 5; times++) {
            fall("success", "143");
            fall("exit-code", "78");
        }
        fall("signal", "KILL");
        fall("oom-kill", "KILL");
        assertThat(told()).isEmpty();

        assertThat(fall("exit-code", "74"))
                .isEqualTo("<1>dawnkettle.service has died 3 times within an hour and is started again each time; see:"
                        + " journalctl -u dawnkettle.service\n");
        for (int times = 0; times < 5; times++)
            assertThat(fall("watchdog", "KILL")).isEmpty();
        assertThat(told()).containsExactly("stopped --again --conf /etc/dawnkettle/conf dawnkettle.service");
    }
}

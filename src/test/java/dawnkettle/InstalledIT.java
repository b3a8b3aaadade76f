package dawnkettle;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import dawnkettle.night.Step;
import dawnkettle.store.Effect;
import dawnkettle.store.Ledger;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.api.io.TempDir;

/** The life of the package on a Debian with a systemd of its own: installed, used, upgraded in mid-night, removed, purged. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class InstalledIT {
    private static final Path PACKAGE = Path.of(System.getProperty("package"));
    private static final LocalDate DAY = LocalDate.of(2026, 12, 4);
    private static final String STATE = "/var/lib/dawnkettle";

    @TempDir
    static Path folder;

    private OwnMachine machine;
    private String installed;

    @BeforeAll
    void install() throws IOException, InterruptedException {
        Optional<OwnMachine> own = OwnMachine.started(Files.createDirectory(folder.resolve("machine")));
        assumeThat(own)
                .as("a machine of its own can be had: " + OwnMachine.log(folder))
                .isPresent();
        machine = own.get();
        machine.lay(PACKAGE, "/tmp/dawnkettle.deb");
        installed = apt("install", "/tmp/dawnkettle.deb");
        machine.shell("useradd -m visitor; useradd -m member; adduser member dawnkettle");
    }

    @AfterAll
    void close() {
        if (machine != null) machine.close();
    }

    private String apt(String... words) {
        String[] command = new String[words.length + 3];
        command[0] = "apt-get";
        command[1] = "-y";
        command[2] = "-q";
        System.arraycopy(words, 0, command, 3, words.length);
        OwnMachine.Said said = machine.run(command);
        assertThat(said.status()).as(said.text()).isZero();
        return said.text();
    }

    private String as(String user, String line) {
        return machine.run("su", user, "-c", "cd; " + line).text().strip();
    }

    private String told(String key, String unit) {
        return machine.run("systemctl", "show", "-p", key, "--value", unit)
                .text()
                .strip();
    }

    @Test
    @Order(1)
    void installing_makes_the_account_and_the_folders_and_starts_nothing() {
        assertThat(installed)
                .contains("dawnkettle: installed, with the demonstration shop in /etc/dawnkettle. Nothing runs yet.");
        assertThat(machine.shell("id -nG dawnkettle").strip()).isEqualTo("dawnkettle dialout");
        assertThat(machine.shell("stat -c '%a %U %G %n' /etc/dawnkettle /etc/dawnkettle/conf/customers.csv " + STATE
                        + " /var/cache/dawnkettle"))
                .isEqualTo("""
                        750 root dawnkettle /etc/dawnkettle
                        640 root dawnkettle /etc/dawnkettle/conf/customers.csv
                        2770 dawnkettle dawnkettle /var/lib/dawnkettle
                        700 dawnkettle dawnkettle /var/cache/dawnkettle
                        """);
        assertThat(told("ActiveState", "dawnkettle")).isEqualTo("inactive");
        assertThat(machine.shell("man -w dawnkettle")).contains("dawnkettle.1.gz");
    }

    @Test
    @Order(2)
    void systemd_finds_nothing_wrong_with_the_units_and_finds_them_well_shut() {
        for (String unit : new String[] {"dawnkettle.service", "dawnkettle-failed@.service"})
            assertThat(machine.run("systemd-analyze", "verify", "/lib/systemd/system/" + unit))
                    .isEqualTo(new OwnMachine.Said(0, ""));
        Matcher level = Pattern.compile("Overall exposure level for \\S+ ([0-9.]+) ")
                .matcher(machine.run(
                                "systemd-analyze",
                                "security",
                                "--offline=true",
                                "/lib/systemd/system/dawnkettle.service")
                        .text());
        assertThat(level.find()).isTrue();
        assertThat(new BigDecimal(level.group(1))).isLessThanOrEqualTo(new BigDecimal("2.0"));
    }

    @Test
    @Order(3)
    void the_installed_command_rehearses_a_night() {
        machine.shell(
                "mkdir /tmp/quick && cp -r /etc/dawnkettle/* /tmp/quick && chmod -R a+rX /tmp/quick"
                        + " && sed -i 's/^decodes = .*/decodes = 1000/; s/^# if_card = true/if_card = false/' /tmp/quick/conf/shop.toml");

        String said = as("visitor", "dawnkettle rehearse --conf /tmp/quick/conf --out night 2>&1");

        assertThat(said).contains("close: ", " batches");
        assertThat(as("visitor", "ls night")).contains("plan.json", "sheets", "labels", "mail", "story.txt");
    }

    @Test
    @Order(4)
    void the_service_says_that_it_is_ready_and_listens_to_nobody() {
        assertThat(machine.run("systemctl", "start", "dawnkettle").status())
                .as(machine.shell("cat /var/log/own.log"))
                .isZero();

        assertThat(told("ActiveState", "dawnkettle")).isEqualTo("active");
        assertThat(told("Type", "dawnkettle")).isEqualTo("notify");
        assertThat(told("NRestarts", "dawnkettle")).isEqualTo("0");
        assertThat(machine.shell("ss -H -ltnup")).isEmpty();
        String main = told("MainPID", "dawnkettle");
        assertThat(machine.shell("ps -o user= -p " + main).strip()).isEqualTo("dawnkettle");
        assertThat(machine.shell("grep -E 'CapBnd|NoNewPrivs|Seccomp:' /proc/" + main + "/status"))
                .contains("CapBnd:\t0000000000000000", "NoNewPrivs:\t1", "Seccomp:\t2");
        assertThat(machine.shell("grep -o '[^/ ]*/[^/ ]*/libsqlitejdbc.so' /proc/" + main + "/maps | sort -u"))
                .as("the native part is the one that was laid down")
                .contains("native/");
        assertThat(machine.shell("ls /var/cache/dawnkettle").strip()).isEqualTo("last-good");
    }

    @Test
    @Order(5)
    void who_is_not_of_the_group_hears_which_group_and_how() {
        assertThat(as("visitor", "dawnkettle status"))
                .isEqualTo(
                        "/etc/dawnkettle/conf: it may not be read by \"visitor\"; it is for the group \"dawnkettle\":"
                                + " sudo adduser visitor dawnkettle, then log in anew");
        assertThat(as("visitor", "dawnkettle order C002 FIRM-400 24 2026-12-05 --conf /tmp/quick/conf; echo $?"))
                .isEqualTo(
                        STATE + "/ledger.db: it may not be written by \"visitor\"; it is for the group \"dawnkettle\":"
                                + " sudo adduser visitor dawnkettle, then log in anew\n2");
    }

    @Test
    @Order(6)
    void who_is_of_the_group_orders_from_the_running_service() {
        assertThat(as("member", "dawnkettle order C002 FIRM-400 24 2026-12-05")).contains(" is taken: 1 lines");
        as("member", "dawnkettle clock confirm $(TZ=America/New_York date +%F)"); // it has no time service
        assertThat(as("member", "dawnkettle status")).startsWith("All is well.");
        assertThat(machine.shell("stat -c '%G %A' " + STATE + "/ledger.db*").lines())
                .allMatch(line -> line.equals("dawnkettle -rw-rw----"));
    }

    /** The same confinement around a shell that tries what the service does, and what it never may. */
    @Test
    @Order(7)
    void mail_printer_and_serial_line_are_within_reach_and_nothing_else_is() throws IOException {
        Path probe = folder.resolve("probe.sh");
        Files.writeString(probe, """
                try() { what=$1; shift; if "$@" >/dev/null 2>&1; then echo "$what: yes"; else echo "$what: no"; fi; }
                try mail socat -u OPEN:/dev/null TCP:127.0.0.1:2525
                try listening timeout 1 socat -u TCP-LISTEN:2526 OPEN:/dev/null
                try serial stty -F /dev/ttyS0
                try tunnel sh -c ': < /dev/tun'
                try state touch /var/lib/dawnkettle/probe
                try configuration sh -c ': < /etc/dawnkettle/conf/shop.toml'
                try change touch /etc/dawnkettle/conf/probe
                try programs touch /usr/share/dawnkettle/probe
                try home ls /root/.
                try clock date -s 2020-01-01
                rm -f /var/lib/dawnkettle/probe
                """, UTF_8);
        machine.lay(probe, "/usr/local/bin/probe");
        machine.shell("""
                sed -e 's/^Type=.*/Type=oneshot/' -e '/^ExecStart/d' -e '/^Watchdog/d' -e '/^Restart/d' -e '/^OnFailure/d' \
                  -e 's/^WorkingDirectory.*/&\\nExecStart=\\/bin\\/sh \\/usr\\/local\\/bin\\/probe\\nStandardOutput=append:\\/var\\/log\\/probe.log/' \
                  /lib/systemd/system/dawnkettle.service > /etc/own-units/probe.service
                systemctl daemon-reload
                socat -u TCP-LISTEN:2525,reuseaddr OPEN:/dev/null &
                sleep 0.5
                systemctl start probe 2>&1""");
        assertThat(as("visitor", ": < /dev/tun && echo open"))
                .as("without the unit")
                .isEqualTo("open");

        assertThat(machine.shell("cat /var/log/probe.log")).isEqualTo("""
                        mail: yes
                        listening: no
                        serial: yes
                        tunnel: no
                        state: yes
                        configuration: yes
                        change: no
                        programs: no
                        home: no
                        clock: no
                        """);
    }

    @Test
    @Order(8)
    void where_the_configuration_is_wrong_it_does_not_start_and_a_person_is_told() {
        machine.shell("sed -i 's/^units = .*/units = \"cubits\"/' /etc/dawnkettle/conf/shop.toml");

        assertThat(machine.run("systemctl", "restart", "dawnkettle").status()).isNotZero();

        assertThat(told("ExecMainStatus", "dawnkettle")).isEqualTo("78");
        awaitEnd("dawnkettle-failed@dawnkettle.service.service");
        String log = machine.shell("cat /var/log/own.log");
        assertThat(log).contains("shop.toml:", "units \"cubits\"", "Please look: dawnkettle.service has stopped");
        assertThat(machine.shell("cat " + STATE + "/tray/mail/*stopped*"))
                .contains("To: owner@millrace.example", "run \"dawnkettle check\" and mend what it names");

        machine.shell("printf '#!/bin/sh\\necho \"my own way: $1\"\\n' > /etc/dawnkettle/when-failed;"
                + " chmod 755 /etc/dawnkettle/when-failed; systemctl restart dawnkettle");
        awaitEnd("dawnkettle-failed@dawnkettle.service.service");
        assertThat(machine.shell("cat /var/log/own.log")).contains("my own way: dawnkettle.service");

        machine.shell("cp /var/cache/dawnkettle/last-good/conf/shop.toml /etc/dawnkettle/conf/shop.toml");
        assertThat(machine.run("systemctl", "start", "dawnkettle").status()).isZero();
    }

    /** Takes two and a half minutes, so only with -Dcampaign=long. */
    @Test
    @Order(9)
    void a_service_that_stands_still_says_where_and_is_started_again_within_two_and_a_half_minutes() {
        assumeThat(System.getProperty("campaign")).isEqualTo("long");
        String before = told("MainPID", "dawnkettle");
        machine.shell("kill -STOP " + before);

        machine.shell("for second in $(seq 150); do sleep 1;"
                + " [ \"$(systemctl show -p NRestarts --value dawnkettle)\" = 0 ] || break; done");

        assertThat(told("NRestarts", "dawnkettle")).isEqualTo("1");
        assertThat(told("MainPID", "dawnkettle")).isNotEqualTo(before);
    }

    private void awaitEnd(String unit) {
        for (int tries = 0; tries < 300 && !told("ActiveState", unit).matches("inactive|failed"); tries++)
            machine.shell("sleep 0.2");
    }

    @Test
    @Order(10)
    void a_night_that_is_half_done_when_the_package_is_upgraded_goes_on_with_nothing_lost() throws IOException {
        Path before = halfNight();
        machine.shell("systemctl stop dawnkettle; rm " + STATE + "/ledger.db*");
        machine.lay(before, STATE + "/ledger.db");
        machine.shell("chown dawnkettle:dawnkettle " + STATE + "/ledger.db; chmod 660 " + STATE + "/ledger.db;"
                + " systemctl start dawnkettle");
        machine.shell(
                "cd /tmp && dpkg-deb -R dawnkettle.deb next && sed -i 's/^Version: .*/&+next/' next/DEBIAN/control"
                        + " && dpkg-deb -b next next.deb");
        String own = machine.shell("sha256sum /etc/dawnkettle/conf/shop.toml");

        String said = apt("install", "/tmp/next.deb");

        assertThat(said).contains("the ledger as version ", " left it is in " + STATE + "/backups/before-upgrade");
        assertThat(machine.shell("dpkg-query -W -f '${Version}' dawnkettle")).endsWith("+next");
        assertThat(machine.run("systemctl", "start", "dawnkettle").status()).isZero();
        assertThat(told("ActiveState", "dawnkettle")).isEqualTo("active");
        assertThat(machine.shell("sha256sum /etc/dawnkettle/conf/shop.toml")).isEqualTo(own);
        machine.shell("systemctl stop dawnkettle");
        Path after = folder.resolve("after.db");
        machine.fetch(STATE + "/ledger.db", after);
        try (Ledger old = Ledger.open(before);
                Ledger now = Ledger.open(after)) {
            assertThat(now.orders().lines(DAY))
                    .isNotEmpty()
                    .isEqualTo(old.orders().lines(DAY));
            assertThat(now.steps().of(DAY)).isNotEmpty().containsAll(old.steps().of(DAY));
            assertThat(now.plans().latest(DAY).orElseThrow().json())
                    .isEqualTo(old.plans().latest(DAY).orElseThrow().json());
            assertThat(now.broken(DAY)).isEmpty();
            assertThat(old.effects().in(Effect.State.SENDING)).hasSize(1);
            assertThat(now.effects().in(Effect.State.SENDING)).isEmpty();
            String key = old.effects().in(Effect.State.SENDING).get(0).key();
            assertThat(now.effects().find(key).orElseThrow().state()).isEqualTo(Effect.State.AMBIGUOUS);
        }
        assertThat(machine.shell("ls " + STATE + "/backups/before-upgrade")).contains("ledger.db");
    }

    /** Closed and planned, the sheets on their way: as a power cut leaves it. */
    private Path halfNight() throws IOException {
        CopiedShop shop = CopiedShop.quick(folder.resolve("shop"));
        try (PlayedNight night = new PlayedNight(shop, DAY, "2026-12-03T14:55")) {
            night.without(Step.FALLBACK);
            night.without(Step.SHEETS);
            night.drop(
                    "web.csv",
                    "order,line,customer,product,packs,delivery_date,action\nW-1,1,C002,FIRM-400,24,2026-12-05,\n");
            night.until("2026-12-03T15:00");
            night.ledger()
                    .effects()
                    .intend(
                            "sheet half-way",
                            Effect.Kind.SHEET,
                            DAY,
                            night.office().clock().instant());
            night.ledger()
                    .effects()
                    .sending("sheet half-way", night.office().clock().instant());
            Path copy = folder.resolve("half.db");
            night.ledger().copyTo(copy);
            return copy;
        }
    }

    @Test
    @Order(11)
    void removing_leaves_what_is_the_shops_and_purging_puts_the_ledger_away_and_says_where() {
        machine.shell("systemctl start dawnkettle");
        apt("remove", "dawnkettle");
        assertThat(machine.shell("systemctl is-active dawnkettle").strip()).isNotEqualTo("active");
        assertThat(machine.shell("ls " + STATE + " /etc/dawnkettle/conf; ls /usr/share/dawnkettle 2>&1"))
                .contains("ledger.db", "shop.toml", "No such file");

        String said = apt("purge", "dawnkettle");

        Matcher kept = Pattern.compile("are kept in (/var/backups/dawnkettle-[0-9-]+);")
                .matcher(said);
        assertThat(kept.find()).as(said).isTrue();
        assertThat(machine.shell("stat -c '%a %U' " + kept.group(1) + "; ls " + kept.group(1)))
                .startsWith("700 root\n")
                .contains("backups", "ledger.db", "conf", "labels");
        assertThat(machine.shell("ls -d /etc/dawnkettle " + STATE + " /var/cache/dawnkettle /usr/bin/dawnkettle 2>&1")
                        .lines())
                .allMatch(line -> line.endsWith("No such file or directory"));
    }
}

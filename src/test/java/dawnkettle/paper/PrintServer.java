package dawnkettle.paper;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.net.URI;
import java.net.URL;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/**
 * The print server CUPS with one queue, and the network printer of its own test tools behind it, on this machine's
 * loopback and in a folder of their own.
 *
 * <p>The printer does not start without DNS-SD, so that a message bus and a responder, bound to loopback, run beside it.
 */
final class PrintServer implements AutoCloseable {
    private static final List<String> NEEDED =
            List.of("cupsd", "ippeveprinter", "dbus-daemon", "avahi-daemon", "ipptool");

    private final Path folder;
    private final List<Process> running = new ArrayList<>();
    private final int printerPort = freePort();
    private final int serverPort = freePort();

    PrintServer(Path folder) throws IOException {
        this.folder = folder;
        Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwxr-xr-x"));
        for (String part : List.of("jobs", "cups/conf/ppd", "cups/spool/tmp", "cups/cache", "cups/state", "cups/log"))
            Files.createDirectories(folder.resolve(part));
        Files.writeString(folder.resolve("bus.conf"), BUS.formatted(folder));
        Files.writeString(folder.resolve("responder.conf"), RESPONDER);
        Files.writeString(folder.resolve("jobs.test"), JOBS);
        Files.writeString(folder.resolve("cups/conf/cupsd.conf"), SERVER.formatted(serverPort));
        Files.writeString(folder.resolve("cups/conf/cups-files.conf"), FILES.formatted(folder.resolve("cups")));
        Files.writeString(folder.resolve("cups/conf/printers.conf"), QUEUE.formatted(printerPort));
    }

    /** Whether all of it is installed; the bus's responder and the server want to be root. */
    static boolean isInstalled() {
        return "root".equals(System.getProperty("user.name")) && NEEDED.stream().allMatch(PrintServer::onPath);
    }

    /** There can be one on a machine, and another's bus is not ours to use. */
    static boolean isResponderTaken() throws IOException {
        Path pid = Path.of("/run/avahi-daemon/pid");
        if (!Files.exists(pid)) return false;
        return ProcessHandle.of(Long.parseLong(Files.readString(pid).strip()))
                .filter(ProcessHandle::isAlive)
                .isPresent();
    }

    private static boolean onPath(String program) {
        return Stream.of("/usr/bin", "/usr/sbin").anyMatch(place -> Files.isExecutable(Path.of(place, program)));
    }

    void start() throws IOException {
        start("dbus-daemon", "--config-file=" + folder.resolve("bus.conf"), "--nofork", "--nopidfile");
        await(() -> Files.exists(folder.resolve("bus")));
        start(
                "avahi-daemon",
                "-f",
                "" + folder.resolve("responder.conf"),
                "--no-drop-root",
                "--no-rlimits",
                "--no-chroot");
        startPrinter();
        Path conf = folder.resolve("cups/conf");
        start("cupsd", "-f", "-c", "" + conf.resolve("cupsd.conf"), "-s", "" + conf.resolve("cups-files.conf"));
        await(() -> listens(serverPort));
    }

    /** Also after it was switched off; it may come before the responder is ready. */
    void startPrinter() {
        await(() -> {
            Process printer = start(
                    "ippeveprinter",
                    "-2",
                    "-c",
                    "/bin/true", // else it plays at printing for 5 to 15 s a job
                    "-k",
                    "-d",
                    "" + folder.resolve("jobs"),
                    "-n",
                    "localhost",
                    "-p",
                    "" + printerPort,
                    "-f",
                    "application/pdf",
                    "-r",
                    "off",
                    "Office printer of the test");
            await(() -> listens(printerPort) || !printer.isAlive());
            return printer.isAlive();
        });
    }

    void switchPrinterOff() {
        stop(running.stream()
                .filter(process -> process.info().command().orElse("").endsWith("ippeveprinter") && process.isAlive())
                .findFirst()
                .orElseThrow());
    }

    URI queue() {
        return URI.create("ipp://localhost:" + serverPort + "/printers/office");
    }

    URI printer() {
        return URI.create("ipp://localhost:" + printerPort + "/ipp/print");
    }

    /** What came to the printer of sheets whose title holds {@code word}. */
    List<Path> documents(String word) throws IOException {
        try (Stream<Path> files = Files.list(folder.resolve("jobs"))) {
            return files.filter(file -> file.getFileName().toString().matches(".*_" + word + "_.*[.]pdf"))
                    .toList();
        }
    }

    /** Asks the server to hold the queue, or to let it go again. */
    void queueIs(boolean running) throws IOException {
        run(running ? "cupsenable" : "cupsdisable", "-h", "localhost:" + serverPort, "office");
    }

    /** Empties or fills the printer's trays by the form that it serves. */
    void trays(boolean filled) throws IOException {
        String levels = filled ? "&level1=250&level3=25" : "&level1=0&level3=0";
        URL form = new URL("http://localhost:" + printerPort + "/media?size1=iso_a4_210x297mm&type1=stationery"
                + "&size3=na_letter_8.5x11in&type3=stationery" + levels);
        try (InputStream page = form.openStream()) {
            page.readAllBytes(); // it begins to answer before it has taken the form, and is done with it at the end
        }
    }

    /** What the server says of our jobs, those that are over or those that are not. */
    String jobs(String which) throws IOException {
        return run("ipptool", "-tv", "-d", "which=" + which, "" + queue(), "" + folder.resolve("jobs.test"));
    }

    private Process start(String... words) {
        ProcessBuilder builder = new ProcessBuilder(words).redirectErrorStream(true);
        builder.environment().put("DBUS_SYSTEM_BUS_ADDRESS", "unix:path=" + folder.resolve("bus"));
        builder.environment().merge("PATH", "/usr/sbin:/usr/bin", (path, more) -> path + ":" + more);
        builder.redirectOutput(folder.resolve(words[0] + ".log").toFile());
        try {
            Process process = builder.start();
            running.add(0, process);
            return process;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private String run(String... words) throws IOException {
        Process process = new ProcessBuilder(words).redirectErrorStream(true).start();
        return new String(process.getInputStream().readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
    }

    /** Something that comes true by itself. */
    interface Condition {
        boolean holds();
    }

    static void await(Condition condition) {
        long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(20);
        while (!condition.holds()) {
            if (System.nanoTime() > deadline) throw new AssertionError("waited 20 s in vain");
            try {
                Thread.sleep(50);
            } catch (InterruptedException e) {
                throw new AssertionError(e);
            }
        }
    }

    private static boolean listens(int port) {
        try (Socket socket = new Socket("localhost", port)) {
            return socket.isConnected();
        } catch (IOException e) {
            return false;
        }
    }

    private static int freePort() {
        try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            return socket.getLocalPort();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void stop(Process process) {
        process.descendants().forEach(ProcessHandle::destroy);
        process.destroy();
        try {
            if (!process.waitFor(3, TimeUnit.SECONDS)) process.destroyForcibly().waitFor();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    @Override
    public void close() {
        running.forEach(PrintServer::stop);
    }

    private static final String BUS = """
            <busconfig><type>system</type><listen>unix:path=%s/bus</listen>
            <policy context="default"><allow user="*"/><allow own="*"/><allow send_type="method_call"/>
            <allow send_destination="*"/><allow receive_sender="*"/></policy></busconfig>
            """;

    private static final String RESPONDER = """
            [server]
            host-name=quillhaven
            allow-interfaces=lo
            use-ipv6=no
            enable-dbus=yes
            [wide-area]
            enable-wide-area=no
            [publish]
            publish-hinfo=no
            publish-workstation=no
            """;

    private static final String SERVER = """
            Listen localhost:%d
            Browsing No
            WebInterface No
            JobRetryInterval 1
            <Location />
            Order allow,deny
            Allow localhost
            </Location>
            <Policy default>
            JobPrivateAccess default
            JobPrivateValues default
            <Limit All>
            Order deny,allow
            </Limit>
            </Policy>
            """;

    private static final String FILES = """
            ServerRoot %1$s/conf
            RequestRoot %1$s/spool
            TempDir %1$s/spool/tmp
            CacheDir %1$s/cache
            StateDir %1$s/state
            AccessLog %1$s/log/access
            ErrorLog %1$s/log/error
            PageLog %1$s/log/page
            LogFileGroup root
            SystemGroup root
            """;

    private static final String QUEUE = """
            <Printer office>
            Info office
            DeviceURI ipp://localhost:%d/ipp/print
            State Idle
            Accepting Yes
            Shared No
            JobSheets none none
            ErrorPolicy retry-job
            </Printer>
            """;

    private static final String JOBS = """
            {
            OPERATION Get-Jobs
            GROUP operation-attributes-tag
            ATTR charset attributes-charset utf-8
            ATTR language attributes-natural-language en
            ATTR uri printer-uri $uri
            ATTR name requesting-user-name dawnkettle
            ATTR keyword which-jobs $which
            ATTR keyword requested-attributes job-name,copies,sides,job-state
            STATUS successful-ok
            }
            """;
}

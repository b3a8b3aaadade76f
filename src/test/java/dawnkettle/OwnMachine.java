package dawnkettle;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/** A machine of the test's own with a systemd of its own, on a copy of this one that is thrown away (own-machine.sh). */
final class OwnMachine implements AutoCloseable {
    private static final Path SCRIPT = Path.of("src/test/sh/own-machine.sh");
    private static final String LOG = "own-machine.log";
    private static final Duration PATIENCE = Duration.ofMinutes(5);

    private final Path folder;
    private final Process process;
    private final ProcessHandle first;

    /** What a command said, and how it ended. */
    record Said(int status, String text) {}

    private OwnMachine(Path folder, Process process, ProcessHandle first) {
        this.folder = folder;
        this.process = process;
        this.first = first;
    }

    /** Empty where this machine does not let us: we are not root, or what it takes is not there. */
    static Optional<OwnMachine> started(Path folder) throws IOException, InterruptedException {
        Stream<String> needed = Stream.of(
                "/lib/systemd/systemd",
                "/usr/bin/unshare",
                "/usr/bin/nsenter",
                "/usr/bin/apt-get",
                "/usr/bin/systemctl");
        if (!"root".equals(System.getProperty("user.name"))
                || !needed.allMatch(program -> Files.isExecutable(Path.of(program)))) return Optional.empty();
        Process process = new ProcessBuilder(
                        "unshare", "--mount", "--ipc", "--uts", "bash", SCRIPT.toString(), folder.toString())
                .redirectErrorStream(true)
                .redirectOutput(folder.resolveSibling(LOG).toFile())
                .start();
        for (int tries = 0; tries < 100 && process.isAlive(); tries++) {
            Thread.sleep(200);
            Optional<ProcessHandle> first = process.descendants()
                    .filter(child -> child.info().command().orElse("").endsWith("/systemd"))
                    .findFirst();
            if (first.isEmpty()) continue;
            OwnMachine machine = new OwnMachine(folder, process, first.get());
            if (machine.run("systemctl", "is-system-running").text().startsWith("running")) return Optional.of(machine);
        }
        process.destroy();
        return Optional.empty();
    }

    /** Why there is none. */
    static String log(Path beside) throws IOException {
        Path log = beside.resolve(LOG);
        return Files.exists(log)
                ? Files.readString(log, UTF_8)
                : "this is not a Debian with systemd, or we are not root";
    }

    /** Runs a command on it as root. */
    Said run(String... command) {
        try {
            Path said = Files.createTempFile(folder.getParent(), "said", ".txt");
            List<String> whole = new ArrayList<>(List.of("nsenter", "-t", Long.toString(first.pid())));
            whole.addAll(List.of("-m", "-p", "-i", "-u", "-n", "-C", "-r", "-w", "--", "env", "-i"));
            whole.addAll(List.of(
                    "PATH=/usr/sbin:/usr/bin:/sbin:/bin",
                    "HOME=/root",
                    "LC_ALL=C.UTF-8",
                    "DEBIAN_FRONTEND=noninteractive",
                    "SYSTEMD_UNIT_PATH=/etc/own-units"));
            whole.addAll(List.of(command));
            Process run = new ProcessBuilder(whole)
                    .redirectErrorStream(true)
                    .redirectInput(Path.of("/dev/null").toFile())
                    .redirectOutput(said.toFile())
                    .start();
            if (!run.waitFor(PATIENCE.toSeconds(), TimeUnit.SECONDS)) run.destroyForcibly();
            String text = Files.readString(said, UTF_8);
            Files.delete(said);
            return new Said(run.waitFor(), text);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    /** Runs a line of the shell on it as root, and gives what it said. */
    String shell(String line) {
        return run("sh", "-c", line).text();
    }

    /** Lays a file of this machine down on it. */
    void lay(Path file, String target) throws IOException {
        Files.copy(file, Path.of("/proc/" + first.pid() + "/root" + target));
    }

    /** Takes a file from it. */
    void fetch(String file, Path target) throws IOException {
        Files.copy(Path.of("/proc/" + first.pid() + "/root" + file), target);
    }

    @Override
    public void close() {
        process.destroy();
        try {
            if (!process.waitFor(20, TimeUnit.SECONDS)) process.destroyForcibly();
        } catch (InterruptedException e) {
            process.destroyForcibly();
            Thread.currentThread().interrupt();
        }
    }
}

package dawnkettle;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

/** The command {@code run} in a process of its own, as the init system starts it. */
final class RealService {
    /** State of a TCP socket that waits for callers, and of a UDP socket that anybody may write to (proc_net_tcp of the kernel). */
    private static final String LISTENS = "0A";

    private static final String UNCONNECTED = "07";

    private RealService() {}

    static Process start(Path conf, Path said) throws IOException {
        List<String> command = List.of(
                Path.of(System.getProperty("java.home"), "bin/java").toString(),
                "-Xmx256m",
                "-XX:TieredStopAtLevel=1",
                "-cp",
                System.getProperty("java.class.path"),
                "dawnkettle.Main",
                "run",
                "--conf",
                conf.toString());
        return new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.appendTo(said.toFile()))
                .start();
    }

    /** What {@code ss -ltnup} would show of a process: its sockets among those that wait, read as that program reads them. */
    static List<String> listening(long pid) throws IOException {
        Set<String> own = new TreeSet<>();
        try (Stream<Path> open = Files.list(Path.of("/proc/" + pid + "/fd"))) {
            for (Path one : open.toList())
                if (Files.isSymbolicLink(one)) {
                    String target = Files.readSymbolicLink(one).toString();
                    if (target.startsWith("socket:["))
                        own.add(target.substring("socket:[".length(), target.length() - 1));
                }
        }
        List<String> found = new ArrayList<>();
        for (String table : List.of("tcp", "tcp6", "udp", "udp6"))
            for (String row : Files.readAllLines(Path.of("/proc/" + pid + "/net/" + table))) {
                String[] cells = row.strip().split("\\s+");
                boolean isOpen = cells[3].equals(table.startsWith("tcp") ? LISTENS : UNCONNECTED);
                if (isOpen && own.contains(cells[9])) found.add(table + " " + cells[1]);
            }
        return found;
    }
}

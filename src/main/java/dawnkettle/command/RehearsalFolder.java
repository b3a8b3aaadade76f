package dawnkettle.command;

import static java.nio.charset.StandardCharsets.UTF_8;

import dawnkettle.trouble.DeviceAway;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/** The folder that a rehearsal fills; what an earlier rehearsal left there is taken away first, and nothing else. */
final class RehearsalFolder {
    private static final List<String> OURS = List.of(
            "plan.json",
            "story.txt",
            "ledger.db",
            "ledger.db-wal",
            "ledger.db-shm",
            "sheets",
            "labels",
            "mail",
            "drop",
            "backups");

    private final Path root;

    RehearsalFolder(Path root) {
        this.root = root;
    }

    Path root() {
        return root;
    }

    Path ledger() {
        return root.resolve("ledger.db");
    }

    void clear() {
        try {
            Files.createDirectories(root);
            for (String name : OURS) remove(root.resolve(name));
        } catch (IOException e) {
            throw away(e);
        }
    }

    private static void remove(Path path) throws IOException {
        if (Files.notExists(path)) return;
        try (Stream<Path> inside = Files.walk(path)) {
            for (Path one : inside.sorted(Comparator.reverseOrder()).toList()) Files.delete(one);
        }
    }

    /** Drops every order file of a folder, where it is there. */
    void dropAll(Path folder) {
        if (Files.notExists(folder)) return;
        try (Stream<Path> files = Files.list(folder)) {
            files.filter(file -> file.toString().endsWith(".csv")).sorted().forEach(this::drop);
        } catch (IOException e) {
            throw away(e);
        }
    }

    private void drop(Path orders) {
        try {
            Files.createDirectories(root.resolve("drop"));
            Files.copy(
                    orders,
                    root.resolve("drop").resolve(orders.getFileName().toString()),
                    StandardCopyOption.REPLACE_EXISTING);
        } catch (IOException e) {
            throw away(e);
        }
    }

    void write(String name, String text) {
        try {
            Files.writeString(root.resolve(name), text, UTF_8);
        } catch (IOException e) {
            throw away(e);
        }
    }

    /** What lies in the folder now, a line a kind. */
    String listing() {
        return "In " + root + ": plan.json, story.txt, ledger.db, " + count("sheets", ".pdf") + " sheets, "
                + count("labels", ".png") + " label previews with their bytes, " + count("mail", ".eml") + " mails.\n";
    }

    private long count(String folder, String ending) {
        if (Files.notExists(root.resolve(folder))) return 0;
        try (Stream<Path> files = Files.list(root.resolve(folder))) {
            return files.filter(file -> file.toString().endsWith(ending)).count();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private DeviceAway away(IOException e) {
        return DeviceAway.clean(
                "folder \"" + root + "\" can't be written (" + e.getMessage() + "); name another with --out", e);
    }
}

package dawnkettle.store;

import static java.nio.charset.StandardCharsets.US_ASCII;

import dawnkettle.trouble.DeviceAway;
import dawnkettle.trouble.DiskAway;
import java.io.IOException;
import java.io.InputStream;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import org.sqlite.SQLiteConfig;

/**
 * A copy of the ledger in a file of its own, with its SHA-256 (FIPS 180-4) in a file beside it as {@code sha256sum}
 * writes it: a database can't see that a byte of what it holds has flipped, a checksum does.
 */
public record LedgerCopy(Path file) {
    /**
     * What was found out about a copy.
     *
     * @param problems what is wrong with it, in words; empty where it may be put back
     * @param changed which old rows are not as they were written, in words; it may be put back all the same, for an older copy
     *     may be no better
     * @param isSealed whether a checksum stands beside it
     * @param rows how many rows each table holds
     * @param newest the last instant that it knows of
     */
    public record Verdict(
            List<String> problems,
            List<String> changed,
            boolean isSealed,
            Map<String, Long> rows,
            Optional<Instant> newest) {
        public Verdict {
            problems = List.copyOf(problems);
            changed = List.copyOf(changed);
            rows = Map.copyOf(rows);
        }

        public boolean isSound() {
            return problems.isEmpty();
        }

        /** Rows of all tables together. */
        public long rowCount() {
            return rows.values().stream().mapToLong(Long::longValue).sum();
        }
    }

    /** Looks at all of it: the checksum, then the database from end to end. The file is not written to. */
    public Verdict checked() {
        if (!isSealed()) return inside(false, true);
        Optional<String> objection = checksumObjection();
        return objection
                .map(why -> new Verdict(List.of(why), List.of(), true, Map.of(), Optional.empty()))
                .orElseGet(() -> inside(true, true));
    }

    /** The same of one that has just been written and has no checksum yet. */
    Verdict checkedAsMade() {
        return inside(false, false);
    }

    /** Which old rows in it are not as they were written, in words, of those that are looked at on a day. */
    public List<String> changed(LocalDate day) {
        return opened(sql -> new ChainRows(sql).brokenOf(day));
    }

    /** @throws DeviceAway where it can't be opened */
    private <T> T opened(Function<Sql, T> look) {
        try (Connection connection = connection()) {
            return look.apply(new Sql(connection, new LedgerTrouble(file)));
        } catch (SQLException e) {
            throw new LedgerTrouble(file).of(e);
        }
    }

    /** Read only, and believed to be nobody else's. */
    private Connection connection() throws SQLException {
        SQLiteConfig config = new SQLiteConfig();
        config.setReadOnly(true);
        return config.createConnection("jdbc:sqlite:" + file.toAbsolutePath().toUri() + "?immutable=1");
    }

    public boolean isSealed() {
        return Files.isRegularFile(checksumFile());
    }

    /** Where its checksum stands. */
    public Path checksumFile() {
        return file.resolveSibling(file.getFileName() + ".sha256");
    }

    private Optional<String> checksumObjection() {
        try {
            return sealed().equals(sha256())
                    ? Optional.empty()
                    : Optional.of("its bytes are not those that were written: the checksum differs");
        } catch (IOException e) {
            return Optional.of("it can't be read (" + e.getMessage() + ")");
        }
    }

    private Verdict inside(boolean isSealed, boolean withChain) {
        try (Connection connection = connection()) {
            Sql sql = new Sql(connection, new LedgerTrouble(file));
            List<String> problems = new ArrayList<>(strangeness(sql));
            if (problems.isEmpty()) problems.addAll(faults(sql));
            if (!problems.isEmpty()) return new Verdict(problems, List.of(), isSealed, Map.of(), Optional.empty());
            List<String> changed = withChain ? new ChainRows(sql).broken() : List.of();
            return new Verdict(List.of(), changed, isSealed, rows(sql), ClockRows.newest(sql));
        } catch (SQLException | DeviceAway | DiskAway | IllegalStateException e) {
            return new Verdict(
                    List.of("it is no sound database (" + e.getMessage() + ")"),
                    List.of(),
                    isSealed,
                    Map.of(),
                    Optional.empty());
        }
    }

    private static List<String> strangeness(Sql sql) {
        int version = Migrations.version(sql);
        if (sql.number("SELECT application_id AS n FROM pragma_application_id") != Migrations.APPLICATION_ID)
            return List.of("it is no ledger");
        if (version < 1 || version > Migrations.known())
            return List.of("it is of version " + version + ", and this one knows 1 to " + Migrations.known());
        return List.of();
    }

    /** What the database finds wrong in itself (sqlite.org/pragma.html, integrity_check and foreign_key_check). */
    static List<String> faults(Sql sql) {
        List<String> faults = new ArrayList<>(sql.list(row -> row.text("integrity_check"), "PRAGMA integrity_check"));
        faults.removeIf("ok"::equals);
        sql.list(row -> row.text("table"), "PRAGMA foreign_key_check").stream()
                .distinct()
                .forEach(table -> faults.add("rows of \"" + table + "\" point to rows that are not there"));
        return faults;
    }

    static Map<String, Long> rows(Sql sql) {
        Map<String, Long> rows = new TreeMap<>();
        sql.list(
                        row -> row.text("name"),
                        "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%'")
                .forEach(table -> rows.put(table, sql.number("SELECT count(*) AS n FROM " + table)));
        return rows;
    }

    /** Brings its bytes to the disk and writes the checksum beside it. */
    public void seal() {
        try {
            force(file);
            seal(sha256());
        } catch (IOException e) {
            throw away(e);
        }
    }

    private void seal(String sum) throws IOException {
        Path made = checksumFile().resolveSibling(checksumFile().getFileName() + ".part");
        Files.writeString(made, sum + "  " + file.getFileName() + "\n", US_ASCII);
        force(made);
        Files.move(made, checksumFile(), StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
    }

    private String sealed() throws IOException {
        return Files.readString(checksumFile(), US_ASCII).strip().split("\\s+")[0];
    }

    /** Puts it, with its checksum, where {@code name} says; what stood there is replaced only now that this is whole. */
    public LedgerCopy movedTo(Path name) {
        LedgerCopy moved = new LedgerCopy(name);
        try {
            Files.deleteIfExists(moved.checksumFile());
            Files.move(file, name, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
            moved.seal(sealed());
            Files.delete(checksumFile());
            return moved;
        } catch (IOException e) {
            throw away(e);
        }
    }

    /** The same bytes once more in another file, proved to be the same. */
    public LedgerCopy copiedTo(Path name) {
        LedgerCopy copied = new LedgerCopy(name);
        try {
            Path part = name.resolveSibling(name.getFileName() + ".part");
            Files.copy(file, part, StandardCopyOption.REPLACE_EXISTING);
            force(part);
            Files.deleteIfExists(copied.checksumFile());
            Files.move(part, name, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
            if (!copied.sha256().equals(sha256()))
                throw new LedgerTrouble(name)
                        .clean("this copy does not hold what was copied", "copy again, and look at the disk", null);
            copied.seal();
            return copied;
        } catch (IOException e) {
            throw new LedgerTrouble(name)
                    .clean("no copy can be written there (" + e.getMessage() + ")", "look at it", e);
        }
    }

    String sha256() throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            byte[] some = new byte[1 << 16];
            for (int read = in.read(some); read >= 0; read = in.read(some)) digest.update(some, 0, read);
            return HexFormat.of().formatHex(digest.digest());
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    static void force(Path file) throws IOException {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.READ)) {
            channel.force(true);
        }
    }

    private DeviceAway away(IOException e) {
        return new LedgerTrouble(file)
                .clean("this copy can't be kept (" + e.getMessage() + ")", "look at the disk and its folder", e);
    }
}

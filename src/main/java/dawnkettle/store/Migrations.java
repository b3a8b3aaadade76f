package dawnkettle.store;

import static java.nio.charset.StandardCharsets.UTF_8;

import dawnkettle.trouble.DeviceAway;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;

/** The ledger's shape, in numbered steps; the file says in {@code user_version} how many of them it has taken. */
final class Migrations {
    static final List<String> STEPS = List.of(
            "001-orders.sql",
            "002-night.sql",
            "003-plans.sql",
            "004-records.sql",
            "005-more-records.sql",
            "006-alarms.sql",
            "007-keeping.sql",
            "008-labels.sql",
            "009-holds-and-hours.sql",
            "010-mails.sql",
            "011-care.sql",
            "012-hands-and-stations.sql",
            "013-not-confirmed.sql",
            "014-chain.sql");

    /** "Dwnk" in ASCII: says that a SQLite file is a ledger of ours. */
    static final int APPLICATION_ID = 0x44776e6b;

    private Migrations() {}

    /** Takes the steps that are still to be taken, each whole or not at all; what was there before is kept as a file. */
    static void run(Sql sql, LedgerTrouble trouble, Path file) {
        refuseStrangers(sql, trouble);
        int before = version(sql);
        if (before > 0 && before < STEPS.size()) keep(sql, file, before);
        sql.inTransaction(() -> {
            int taken = version(sql);
            for (int step = taken; step < STEPS.size(); step++) {
                sql.script(text(STEPS.get(step)));
                sql.script("PRAGMA user_version = " + (step + 1));
            }
            if (taken == 0) sql.script("PRAGMA application_id = " + APPLICATION_ID);
        });
    }

    /** Without a whole copy nothing is changed; one that was kept by an attempt before this one stays. */
    private static void keep(Sql sql, Path file, int before) {
        Path kept = file.resolveSibling(file.getFileName() + "-of-version-" + before);
        Path part = kept.resolveSibling(kept.getFileName() + ".part");
        if (Files.exists(kept)) return;
        try {
            Files.deleteIfExists(part);
            sql.write("VACUUM INTO ?", part.toAbsolutePath().toString());
            Files.move(part, kept, StandardCopyOption.ATOMIC_MOVE);
        } catch (IOException e) {
            throw DeviceAway.clean(
                    "ledger " + file + ": no copy \"" + kept + "\" can be kept before it is brought to this version;"
                            + " see that its folder can be written to",
                    e);
        }
    }

    private static void refuseStrangers(Sql sql, LedgerTrouble trouble) {
        int version = version(sql);
        if (version > STEPS.size())
            throw trouble.clean(
                    "it was written by a newer version (" + version + ", this one knows " + STEPS.size() + ")",
                    "install that version again",
                    null);
        boolean empty = sql.number("SELECT count(*) AS n FROM sqlite_schema") == 0;
        if (!empty && sql.number("SELECT application_id AS n FROM pragma_application_id") != APPLICATION_ID)
            throw trouble.clean("it is some other program's file", "name another file for the ledger", null);
    }

    /** How many steps this version knows. */
    static int known() {
        return STEPS.size();
    }

    static int version(Sql sql) {
        return (int) sql.number("SELECT user_version AS n FROM pragma_user_version");
    }

    private static String text(String name) {
        try (InputStream in = Migrations.class.getResourceAsStream(name)) {
            return new String(in.readAllBytes(), UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException("migration " + name + " cannot be read from the program", e);
        }
    }
}

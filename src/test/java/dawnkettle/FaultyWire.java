package dawnkettle;

import dawnkettle.store.LedgerWire;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/** The power and the disk of a night: at which point they fail, counted over what the ledger writes and the devices do. */
final class FaultyWire implements LedgerWire.Tap {
    private static final int SQLITE_IOERR = 10;
    private static final int SQLITE_FULL = 13;

    /** Statements that note what left the house or came in. */
    private static final Pattern NOTES =
            Pattern.compile("UPDATE (effect|outbox|label)|INTO (label|dropped_file|order_line)|COMMIT");

    final List<Mishap> mishaps;
    int cuts;
    int points;
    int diskErrors;
    private final Plant plant;
    private final Map<String, Integer> named = new HashMap<>();
    private boolean isDark;
    private boolean isHealed;
    private int devicePoints;
    private int diskCalls;
    private int notes;

    FaultyWire(List<Mishap> mishaps, Plant plant) {
        this.mishaps = mishaps;
        this.plant = plant;
    }

    boolean isDark() {
        return isDark;
    }

    void lightsOn() {
        isDark = false;
    }

    boolean isHealed() {
        return isHealed;
    }

    /** Nothing goes wrong any more. */
    void heal() {
        isHealed = true;
    }

    /** What is not tried here: what people write. */
    void undisturbed(Runnable writing) {
        boolean was = isHealed;
        isHealed = true;
        writing.run();
        isHealed = was;
    }

    Optional<Mishap> isNow(Mishap.Device device, int call) {
        if (isHealed) return Optional.empty();
        return mishaps.stream()
                .filter(mishap -> mishap.kind().device == device && mishap.isNow(call))
                .findFirst();
    }

    /** The next point of the night at a device. */
    void point(String name) {
        devicePoints++;
        cutIf(Mishap.Device.POWER_AT_DEVICE, devicePoints, name);
        int times = named.merge(name, 1, Integer::sum);
        if (name.equals("after a sheet")) cutIf(Mishap.Device.POWER_AFTER_SHEET, times, name);
        if (name.equals("between labels")) cutIf(Mishap.Device.POWER_BETWEEN_LABELS, times, name);
        if (name.equals("after a mail")) cutIf(Mishap.Device.POWER_AFTER_MAIL, times, name);
    }

    private void cutIf(Mishap.Device device, int number, String where) {
        if (isDark) throw new PowerCut(where);
        if (isNow(device, number).isEmpty()) return;
        isDark = true;
        cuts++;
        throw new PowerCut(where);
    }

    private static boolean isWrite(String sql) {
        return !sql.stripLeading().startsWith("SELECT") && !sql.startsWith("PRAGMA");
    }

    @Override
    public String instead(String sql) {
        return plant.instead(sql);
    }

    @Override
    public void before(String sql) throws SQLException {
        if (isDark) throw new PowerCut("long ago");
        if (!isWrite(sql) || sql.startsWith("ROLLBACK")) return;
        cutIf(Mishap.Device.POWER, ++points, "before " + sql);
        Optional<Mishap> disk = isNow(Mishap.Device.DISK, ++diskCalls);
        if (NOTES.matcher(sql).find()) {
            notes++;
            if (disk.isEmpty()) disk = isNow(Mishap.Device.DISK_AT_NOTES, notes);
        }
        if (disk.isEmpty()) return;
        diskErrors++;
        boolean isFull =
                disk.get().kind() == Mishap.Kind.DISK_FULL || disk.get().kind() == Mishap.Kind.DISK_FULL_AT_A_NOTE;
        int code = isFull ? SQLITE_FULL : SQLITE_IOERR;
        throw new SQLException("the disk, at " + sql.strip().replaceAll("\\s+", " "), "", code);
    }

    @Override
    public void after(String sql) {
        if (isWrite(sql) && !sql.startsWith("ROLLBACK")) cutIf(Mishap.Device.POWER, ++points, "after " + sql);
    }
}

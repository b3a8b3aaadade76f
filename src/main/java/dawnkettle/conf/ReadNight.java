package dawnkettle.conf;

import dawnkettle.night.NightSettings;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.LocalTime;

/** Reads of {@code shop.toml} when the steps of a night are due, where things lie and how long to search. */
final class ReadNight {
    private final Section file;
    private final Path dir;

    ReadNight(Section file, Path dir) {
        this.file = file;
        this.dir = dir;
    }

    NightSettings.Times times() {
        Section times = file.needSection("times");
        int before = times.problems().count();
        LocalTime soakCall = times.need("soak_call", "\"05:00\"").time();
        Written closeWritten = times.need("close", "\"15:00\"");
        LocalTime close = closeWritten.time();
        if (times.problems().count() == before && !soakCall.isBefore(close))
            closeWritten.bad(close, "is not after soak_call", "the tubs are called for before the book closes");
        NightSettings.Times read = new NightSettings.Times(
                soakCall,
                close,
                times.need("dawn_check", "\"02:00\"").time(),
                times.find("labels_before_minutes").map(m -> m.whole(0, 720)).orElse(45),
                times.need("summary", "\"06:30\"").time(),
                times.need("self_test", "\"17:00\"").time(),
                times.need("fallback", "\"14:00\"").time(),
                times.need("backup", "\"23:30\"").time(),
                times.need("cost_day", "\"mon\"").weekday(),
                times.need("cost_at", "\"07:00\"").time());
        times.noMore();
        return read;
    }

    /** Relative paths: {@code state} counts from the folder of the configuration, all else from {@code state}. */
    NightSettings.Places places() {
        Section places = file.needSection("places");
        Path state = path(places.need("state", "\"/var/lib/dawnkettle\""), dir);
        NightSettings.Places read = new NightSettings.Places(
                below(state, places, "ledger", "ledger.db"),
                below(state, places, "out_tray", "out"),
                below(state, places, "drop_folder", "orders"),
                below(state, places, "backups", "backups"));
        places.noMore();
        return read;
    }

    private static Path below(Path state, Section places, String key, String usual) {
        return places.find(key).map(written -> path(written, state)).orElse(state.resolve(usual));
    }

    /** A folder next to the one of the configuration. */
    static Path beside(Path dir, String name) {
        return dir.resolve("..").resolve(name).normalize();
    }

    static Path path(Written written, Path from) {
        String name = written.words();
        if (name.equals(Written.NOTHING)) return from;
        try {
            return from.resolve(name).normalize();
        } catch (InvalidPathException e) {
            return written.bad(from, "is no path", "write a folder or file name");
        }
    }

    NightSettings.Search search() {
        NightSettings.Search usual = new NightSettings.Search(100_000, 60_000, 1);
        return file.findSection("search")
                .map(search -> {
                    NightSettings.Search read = new NightSettings.Search(
                            search.find("decodes")
                                    .map(n -> n.whole(0, 10_000_000))
                                    .orElse(100_000),
                            search.find("guard_millis")
                                    .map(n -> n.whole(100, 600_000))
                                    .orElse(60_000),
                            search.find("seed")
                                    .map(n -> n.whole(0, Integer.MAX_VALUE))
                                    .orElse(1));
                    search.noMore();
                    return read;
                })
                .orElse(usual);
    }
}

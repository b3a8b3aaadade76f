package dawnkettle.conf;

import dawnkettle.night.NightSettings;
import dawnkettle.watch.WatchSettings;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Reads of {@code shop.toml} how the ledger and its disk are cared for, how long words are kept, and who outside watches. */
final class ReadCare {
    private static final List<String> HERE = List.of("localhost", "127.0.0.1", "[::1]");
    private static final long MEGABYTE = 1_000_000;

    private final Section file;
    private final Path dir;

    ReadCare(Section file, Path dir) {
        this.file = file;
        this.dir = dir;
    }

    NightSettings.Care care() {
        Optional<Section> from = file.findSection("care");
        NightSettings.Room room = new NightSettings.Room(
                megabytes(from, "free_megabytes", 50, 500), megabytes(from, "ballast_megabytes", 0, 64));
        NightSettings.Copies copies = new NightSettings.Copies(
                from.flatMap(care -> care.find("second_copy")).map(path -> ReadNight.path(path, dir)),
                from.flatMap(care -> care.find("copy_key_file")).map(key -> SecretFile.read(key, dir)));
        from.ifPresent(Section::noMore);
        return new NightSettings.Care(true, room, copies, keepYears());
    }

    private static long megabytes(Optional<Section> from, String key, int least, int usual) {
        return MEGABYTE
                * from.flatMap(care -> care.find(key))
                        .map(written -> written.whole(least, 1_000_000))
                        .orElse(usual);
    }

    /** Where food came from and went to is to be told for some years, so that less than two is refused. */
    private int keepYears() {
        Optional<Written> written = file.findSection("records").flatMap(records -> records.find("keep_years"));
        return written.map(years -> years.whole(2, 100)).orElse(0);
    }

    Optional<WatchSettings> watch() {
        return file.findSection("watch").map(from -> {
            Written url = from.need("url", "\"https://watch.example/3f2a\"");
            WatchSettings read = new WatchSettings(
                    address(url),
                    Duration.ofSeconds(from.find("patience_seconds")
                            .map(s -> s.whole(1, 60))
                            .orElse(10)));
            from.noMore();
            return read;
        });
    }

    /** The address is a secret of a kind, and goes over no open line. */
    private static URI address(Written written) {
        URI nothing = URI.create("https://watch.invalid/");
        if (written.kind() == Written.Kind.MISSING) return nothing;
        try {
            URI uri = new URI(written.words());
            String scheme = String.valueOf(uri.getScheme()).toLowerCase(Locale.ROOT);
            if (uri.getHost() != null
                    && (scheme.equals("https") || scheme.equals("http") && HERE.contains(uri.getHost()))) return uri;
        } catch (URISyntaxException e) {
            // said below, as for any other text that is no such address
        }
        written.problems()
                .add(
                        written.place(),
                        "what stands there is no address that may be called",
                        "write it as https://watch.example/3f2a; http only on this machine");
        return nothing;
    }
}

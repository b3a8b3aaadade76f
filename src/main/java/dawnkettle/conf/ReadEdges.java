package dawnkettle.conf;

import dawnkettle.intake.ThermometerSettings;
import dawnkettle.line.LineSettings;
import dawnkettle.night.NightSettings;
import dawnkettle.paper.PaperSettings;
import dawnkettle.post.PostSettings;
import dawnkettle.sheet.Sheet;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Reads of {@code shop.toml} how mail, paper and labels leave, and where the temperature comes from. */
final class ReadEdges {
    private static final List<String> KINDS =
            Stream.of(Sheet.Kind.values()).map(Sheet.Kind::word).toList();

    private final Section file;
    private final Path dir;

    ReadEdges(Section file, Path dir) {
        this.file = file;
        this.dir = dir;
    }

    /** Who gets which mail, and what goes along with the summary. */
    static NightSettings.Mailing mailing(Section mail) {
        return new NightSettings.Mailing(
                addresses(mail.needList("summary_to", "[\"owner@millrace.example\"]")),
                addresses(mail.findList("alert_to")),
                addresses(mail.findList("farmer_to")),
                mail.find("calendar").map(Written::truth).orElse(false),
                mail.findList("attach").stream()
                        .map(kind -> kind.oneOf(Sheet.Kind.class).word())
                        .collect(Collectors.toSet()));
    }

    private static List<String> addresses(List<Written> written) {
        return written.stream().map(ReadEdges::mailAddress).toList();
    }

    PostSettings post(Section mail) {
        Optional<String> host = mail.find("host").map(Written::words);
        Optional<Written> user = mail.find("user");
        Optional<Written> secret = mail.find("secret_file");
        PostSettings.Security security = mail.find("security")
                .map(word -> word.oneOf(PostSettings.Security.class))
                .orElse(PostSettings.Security.STARTTLS);
        if (user.isPresent() && secret.isEmpty())
            user.get()
                    .bad(
                            0,
                            "has no secret_file beside it",
                            "write secret_file = \"/run/credentials/dawnkettle.service/smtp\"");
        if (user.isPresent() && security == PostSettings.Security.NONE)
            mail.find("security")
                    .ifPresent(word -> word.bad(0, "would send the password in the clear", "write starttls or tls"));
        PostSettings post = new PostSettings(
                host,
                mail.find("port").map(port -> port.whole(1, 65_535)).orElse(587),
                security,
                user.map(Written::words),
                secret.map(written -> SecretFile.read(written, dir)),
                mailAddress(mail.need("from", "\"clerk@millrace.example\"")),
                seconds(mail, "patience_seconds", 30));
        mail.noMore();
        return post;
    }

    private static String mailAddress(Written written) {
        if (written.kind() == Written.Kind.MISSING || isMailAddress(written.text())) return written.text();
        return written.bad("-", "is no mail address", "write it as owner@millrace.example");
    }

    static boolean isMailAddress(String text) {
        return text.matches("[^@\\s;,<>\"]+@[^@\\s;,<>\"]+[.][^@\\s;,<>\".]+");
    }

    PaperSettings paper() {
        Section paper = file.needSection("paper");
        PaperSettings read = new PaperSettings(
                paper.find("queue").flatMap(ReadEdges::queue),
                byKind(paper, "queues", ReadEdges::queue),
                byKind(paper, "copies", count -> Optional.of(count.whole(0, 20))),
                byKind(paper, "sides", word -> Optional.of(word.oneOf(PaperSettings.Sides.class))),
                Duration.ofMinutes(
                        paper.find("patience_minutes").map(m -> m.whole(1, 120)).orElse(10)));
        paper.noMore();
        return read;
    }

    /** A table of {@code [paper]} with a key for each kind of sheet. */
    private static <T> Map<String, T> byKind(Section paper, String table, Function<Written, Optional<T>> read) {
        Map<String, T> kinds = new HashMap<>();
        paper.findSection(table).ifPresent(section -> {
            for (String kind : KINDS) section.find(kind).flatMap(read).ifPresent(value -> kinds.put(kind, value));
            section.noMore();
        });
        return kinds;
    }

    /** Typefaces beside our own, for sheets and labels. */
    List<Path> typefaces() {
        Optional<Section> typefaces = file.findSection("typefaces");
        if (typefaces.isEmpty()) return List.of();
        List<Path> files =
                typefaces.get().findList("files").stream().map(this::typeface).toList();
        typefaces.get().noMore();
        return files;
    }

    private Path typeface(Written written) {
        Path file = ReadNight.path(written, dir);
        if (written.text().equals(Written.NOTHING) || Files.isReadable(file) && Files.isRegularFile(file)) return file;
        return written.bad(
                file,
                "is no file that can be read",
                "install the typeface, as with the package fonts-droid-fallback, or correct the path");
    }

    private static Optional<URI> queue(Written queue) {
        try {
            URI uri = new URI(queue.words());
            if (List.of("ipp", "ipps").contains(String.valueOf(uri.getScheme())) && uri.getHost() != null)
                return Optional.of(uri);
        } catch (URISyntaxException e) {
            // said below, as for any other text that is no address of a queue
        }
        return queue.bad(Optional.empty(), "is no print queue", "write it as ipp://printer.example/ipp/print");
    }

    ThermometerSettings thermometer() {
        Optional<Section> thermometer = file.findSection("thermometer");
        if (thermometer.isEmpty()) return new ThermometerSettings(Optional.empty(), Optional.empty());
        Section from = thermometer.get();
        ThermometerSettings read = new ThermometerSettings(
                from.find("sensor").map(path -> ReadNight.path(path, dir)),
                from.find("log").map(path -> ReadNight.path(path, dir)));
        from.noMore();
        return read;
    }

    LabelChoice labels() {
        Section labels = file.needSection("labels");
        LabelChoice read = new LabelChoice(
                labels.find("folder").map(path -> ReadNight.path(path, dir)).orElse(ReadNight.beside(dir, "labels")),
                labels.need("design", "\"case-100x70\"").code(),
                new LineSettings(
                        labels.find("device").map(Written::words).orElse(""),
                        labels.find("baud")
                                .map(baud -> baud.whole(1_200, 921_600))
                                .orElse(9_600),
                        labels.find("flow")
                                .map(word -> word.oneOf(LineSettings.Flow.class))
                                .orElse(LineSettings.Flow.RTS_CTS),
                        labels.need("profile", "\"rows-behind-escape\"").code(),
                        labels.find("group").map(group -> group.whole(1, 100)).orElse(10),
                        Duration.ofSeconds(labels.find("patience_seconds")
                                .map(s -> s.whole(1, 3_600))
                                .orElse(600))));
        labels.noMore();
        return read;
    }

    private static Duration seconds(Section from, String key, int usual) {
        return Duration.ofSeconds(from.find(key).map(s -> s.whole(1, 300)).orElse(usual));
    }
}

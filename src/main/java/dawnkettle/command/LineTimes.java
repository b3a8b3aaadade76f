package dawnkettle.command;

import dawnkettle.conf.LabelChoice;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** What a rehearsed night's labels cost on the line: bytes and seconds of each lot and product. */
final class LineTimes {
    /** A byte is ten bits on the line: start, eight, stop. */
    private static final int BITS_A_BYTE = 10;

    private static final String ENDING = ".bin";

    private final Path folder;
    private final LabelChoice labels;

    LineTimes(Path folder, LabelChoice labels) {
        this.folder = folder;
        this.labels = labels;
    }

    String text() {
        if (Files.notExists(folder)) return "";
        StringBuilder text = new StringBuilder();
        line(
                text,
                "Labels on the line: profile %s at %d baud, %d bytes a second",
                labels.profile(),
                labels.baud(),
                aSecond());
        long all = 0;
        for (Path file : files()) {
            String name = file.getFileName().toString();
            all += size(file);
            line(text, "  %-32s %s", name.substring(0, name.length() - ENDING.length()), bytes(size(file)));
        }
        line(text, "  %-32s %s", "all", bytes(all));
        return text.append('\n').toString();
    }

    private List<Path> files() {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> file.toString().endsWith(ENDING))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static long size(Path file) {
        try {
            return Files.size(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private String bytes(long count) {
        return String.format(Locale.ROOT, "%9d bytes %7.1f s", count, (double) count / aSecond());
    }

    private int aSecond() {
        return labels.baud() / BITS_A_BYTE;
    }

    private static void line(StringBuilder text, String format, Object... words) {
        text.append(String.format(Locale.ROOT, format, words).stripTrailing()).append('\n');
    }
}

package dawnkettle;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.stream.Stream;

/** A copy of the demonstration shop with its labels, in a folder of its own, to be changed in a place or two. */
record CopiedShop(Path folder) {
    static CopiedShop in(Path folder) throws IOException {
        copy(Path.of("conf"), folder.resolve("conf"));
        copy(Path.of("labels"), folder.resolve("labels"));
        return new CopiedShop(folder);
    }

    /** One that plans soon, without the card of losses, and by the number of runs alone: the same on a slow machine and on a fast one. */
    static CopiedShop quick(Path folder) throws IOException {
        return in(folder)
                .with("shop.toml", "decodes = 100000", "decodes = 1500")
                .with("shop.toml", "guard_millis = 60000", "guard_millis = 600000")
                .with("shop.toml", "# if_card = true", "if_card = false");
    }

    private static void copy(Path from, Path to) throws IOException {
        try (Stream<Path> all = Files.walk(from)) {
            for (Path one : all.toList()) {
                Path target = to.resolve(from.relativize(one).toString());
                if (Files.isDirectory(one)) Files.createDirectories(target);
                else Files.copy(one, target);
            }
        }
    }

    Path conf() {
        return folder.resolve("conf");
    }

    /** Where a rehearsal of it goes. */
    Path out() {
        return folder.resolve("out");
    }

    /** Writes {@code now} instead of the first {@code before}. */
    CopiedShop with(String file, String before, String now) throws IOException {
        String text = Files.readString(conf().resolve(file), UTF_8);
        int at = text.indexOf(before);
        if (at < 0) throw new IllegalArgumentException(file + " does not hold " + before);
        return holding(file, text.substring(0, at) + now + text.substring(at + before.length()));
    }

    CopiedShop holding(String file, String text) throws IOException {
        Files.writeString(conf().resolve(file), text, UTF_8);
        return this;
    }

    /** Without the weeks that were, which take a second to read in. */
    CopiedShop withoutHistory() throws IOException {
        try (Stream<Path> all = Files.walk(conf().resolve("rehearsal/history"))) {
            for (Path one : all.sorted(Comparator.reverseOrder()).toList()) Files.delete(one);
        }
        return this;
    }

    Terminal.Told rehearse(String at, Object... more) {
        Object[] words = Stream.concat(
                        Stream.of("rehearse", "--conf", conf(), "--out", out(), "--at", at), Stream.of(more))
                .toArray();
        return Terminal.run(words);
    }
}

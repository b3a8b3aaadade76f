package dawnkettle.intake;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;

/** Names that are still free, so that no file is ever moved over another. */
final class Names {
    private Names() {}

    /** Moves a file into a folder, under its own name or, where that is taken, with a number. */
    static Path moveFree(Path file, Path into) throws IOException {
        while (true) {
            Path target = free(file.getFileName().toString(), into);
            try {
                return Files.move(file, target);
            } catch (FileAlreadyExistsException someoneWasFaster) {
                continue;
            }
        }
    }

    static Path free(String name, Path folder) {
        Path target = folder.resolve(name);
        for (int n = 2; Files.exists(target, LinkOption.NOFOLLOW_LINKS); n++)
            target = folder.resolve(numbered(name, n));
        return target;
    }

    private static String numbered(String name, int n) {
        int dot = name.lastIndexOf('.');
        return name.substring(0, dot) + "-" + n + name.substring(dot);
    }
}

package dawnkettle.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assumptions;

/** A real file system of a few megabytes in memory, which only the superuser may mount; else the test is left out. */
public record SmallDisk(Path folder) implements AutoCloseable {
    public static SmallDisk mounted(Path folder, int megabytes) throws IOException {
        Files.createDirectories(folder);
        Assumptions.assumeTrue(
                ran("mount", "-t", "tmpfs", "-o", "size=" + megabytes + "m", "tmpfs", folder.toString()),
                "this machine mounts nothing for us");
        return new SmallDisk(folder);
    }

    public void readOnly() throws IOException {
        // Even where a file is open for writing: the mount is what is asked at each opening of another.
        Assumptions.assumeTrue(
                ran("mount", "-o", "remount,ro", folder.toString())
                        || ran("mount", "-o", "remount,ro,bind", folder.toString()),
                "this machine remounts nothing that is open");
    }

    public void writable() throws IOException {
        ran("mount", "-o", "remount,rw", folder.toString());
        ran("mount", "-o", "remount,rw,bind", folder.toString());
    }

    private static boolean ran(String... words) throws IOException {
        try {
            Process process = new ProcessBuilder(words)
                    .redirectErrorStream(true)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .start();
            return process.waitFor(10, TimeUnit.SECONDS) && process.exitValue() == 0;
        } catch (IOException noSuchProgram) {
            return false;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }

    @Override
    public void close() throws IOException {
        ran("umount", "-l", folder.toString());
    }
}

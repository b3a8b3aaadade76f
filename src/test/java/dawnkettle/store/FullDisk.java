package dawnkettle.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;

/** A small disk in memory that can be filled to the last block, or made read-only; only root can mount one. */
final class FullDisk {
    private static final int BYTES = 4 << 20;

    /** What a file's page is on it. */
    static final int BLOCK = 4_096;

    final Path folder;

    private FullDisk(Path folder) {
        this.folder = folder;
    }

    /** @return null where this machine does not let us */
    static FullDisk mount(Path on) throws IOException, InterruptedException {
        Files.createDirectories(on);
        return run("mount", "-t", "tmpfs", "-o", "size=" + BYTES, "tmpfs", on.toString()) ? new FullDisk(on) : null;
    }

    /** Takes all room but so many blocks. */
    void leave(int blocks) throws IOException {
        Path ballast = folder.resolve("ballast");
        Files.deleteIfExists(ballast);
        long free = Files.getFileStore(folder).getUsableSpace() - (long) blocks * BLOCK;
        Files.write(ballast, new byte[(int) Math.max(0, free)]);
    }

    void makeRoom() throws IOException {
        Files.deleteIfExists(folder.resolve("ballast"));
    }

    boolean remount(String how) throws IOException, InterruptedException {
        return run("mount", "-o", "remount," + how, folder.toString());
    }

    private static boolean run(String... command) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        return process.waitFor(20, TimeUnit.SECONDS) && process.exitValue() == 0;
    }

    void unmount() throws IOException, InterruptedException {
        run("umount", folder.toString());
    }
}

package dawnkettle.line;

import dawnkettle.label.FakePrinter;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.UnaryOperator;

/** A {@link FakePrinter} at the far end of a pseudo-terminal that socat holds; it reads no faster than a line would. */
final class PtyPrinter implements AutoCloseable {
    private final Process socat;
    private final Path device;
    private final FakePrinter printer;
    private final Thread reader;
    private final long bytesASecond;
    private volatile long bytesUntilUnplugged = Long.MAX_VALUE;
    private volatile long bytesUntilStalled = Long.MAX_VALUE;
    private final CountDownLatch stalled = new CountDownLatch(1);
    private volatile boolean isOver;
    private volatile UnaryOperator<byte[]> onTheWay = bytes -> bytes;
    private volatile long answerDelayMillis;
    private long readNanos;
    private long idleNanos;

    PtyPrinter(Path folder, FakePrinter printer, int baud) throws Exception {
        this.device = folder.resolve("tty");
        this.printer = printer;
        this.bytesASecond = baud / 10;
        this.socat = new ProcessBuilder("socat", "-b", "256", "pty,raw,echo=0,link=" + device, "STDIO")
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        for (int i = 0; i < 200 && Files.notExists(device); i++) Thread.sleep(20);
        this.reader = new Thread(this::serve, "pty-printer");
        reader.setDaemon(true);
        reader.start();
    }

    static boolean isPossible() {
        return Files.isExecutable(Path.of("/usr/bin/socat"));
    }

    String device() {
        return device.toString();
    }

    PtyPrinter unplugAfter(long bytes) {
        bytesUntilUnplugged = bytes;
        return this;
    }

    PtyPrinter stallAfter(long bytes) {
        bytesUntilStalled = bytes;
        return this;
    }

    /** What becomes of answers on their way back. */
    PtyPrinter answers(UnaryOperator<byte[]> change) {
        onTheWay = change;
        return this;
    }

    PtyPrinter answersLate(long millis) {
        answerDelayMillis = millis;
        return this;
    }

    /** Share of the time in which bytes of something unfinished were on the line and not waited for. */
    double lineUse() {
        return (double) readNanos / (readNanos + idleNanos);
    }

    void awaitStall() throws InterruptedException {
        stalled.await(60, TimeUnit.SECONDS);
    }

    private void serve() {
        try (InputStream in = socat.getInputStream();
                OutputStream out = socat.getOutputStream()) {
            byte[] chunk = new byte[256];
            long last = System.nanoTime();
            while (!isOver) {
                int waiting = Math.min(chunk.length, in.available());
                if (waiting == 0) idle();
                else {
                    int count = in.read(chunk, 0, waiting);
                    hear(java.util.Arrays.copyOf(chunk, count), out);
                }
                long now = System.nanoTime();
                answer(printer.pass((now - last) / 1_000_000), out);
                last = now - (now - last) % 1_000_000;
            }
        } catch (IOException e) {
            if (!isOver) throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void hear(byte[] bytes, OutputStream out) throws IOException, InterruptedException {
        bytesUntilUnplugged -= bytes.length;
        bytesUntilStalled -= bytes.length;
        if (bytesUntilUnplugged <= 0) {
            isOver = true;
            socat.destroyForcibly();
            return;
        }
        if (bytesUntilStalled <= 0) {
            new ProcessBuilder("kill", "-STOP", Long.toString(socat.pid()))
                    .start()
                    .waitFor();
            stalled.countDown();
            while (!isOver) Thread.sleep(50);
            return;
        }
        long began = System.nanoTime();
        Thread.sleep(bytes.length * 1_000L / bytesASecond);
        answer(printer.take(bytes), out);
        if (printer.isAmid()) readNanos += System.nanoTime() - began;
    }

    private void idle() throws InterruptedException {
        long began = System.nanoTime();
        Thread.sleep(2);
        if (printer.isAmid()) idleNanos += System.nanoTime() - began;
    }

    private void answer(byte[] bytes, OutputStream out) throws IOException, InterruptedException {
        byte[] changed = onTheWay.apply(bytes);
        if (changed.length == 0) return;
        if (answerDelayMillis > 0) Thread.sleep(answerDelayMillis);
        out.write(changed);
        out.flush();
    }

    @Override
    public void close() {
        isOver = true;
        try {
            socat.destroyForcibly().waitFor(5, TimeUnit.SECONDS);
            reader.join(2_000);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}

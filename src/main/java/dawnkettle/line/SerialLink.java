package dawnkettle.line;

import com.fazecast.jSerialComm.SerialPort;
import dawnkettle.label.LabelLine;
import dawnkettle.trouble.DeviceAway;
import java.io.ByteArrayOutputStream;
import java.time.Duration;
import java.util.Arrays;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Predicate;

/**
 * An open serial port. Bytes are written by a thread of their own, because a write to a printer that has stopped reading
 * never comes back by itself; the port is closed under it when its time is up.
 */
final class SerialLink implements LabelLine.Link {
    private static final int CHUNK = 512;
    private static final Duration GLANCE = Duration.ofMillis(20);

    private final SerialPort port;
    private final LineSettings settings;
    private final String name;
    private final ExecutorService writer = Executors.newSingleThreadExecutor(work -> {
        Thread thread = new Thread(work, "label-line-writer");
        thread.setDaemon(true);
        return thread;
    });

    SerialLink(SerialPort port, LineSettings settings, String name) {
        this.port = port;
        this.settings = settings;
        this.name = name;
    }

    @Override
    public void send(byte[] bytes) {
        AtomicInteger taken = new AtomicInteger();
        Future<Boolean> written = writer.submit(() -> write(bytes, taken));
        Duration deadline = settings.deadline(bytes.length);
        try {
            if (!written.get(deadline.toMillis(), TimeUnit.MILLISECONDS))
                throw away(taken.get(), "was unplugged or switched off", null);
        } catch (TimeoutException e) {
            port.closePort();
            throw away(
                    taken.get(),
                    "took " + taken.get() + " of " + bytes.length + " bytes in " + deadline.toSeconds()
                            + " s and no more",
                    e);
        } catch (ExecutionException e) {
            throw away(taken.get(), "refused what was sent", e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            port.closePort();
            throw away(taken.get(), "was left because the service stops", e);
        }
    }

    /** @return whether all was taken; a nought or less from the library means that the port has gone */
    private boolean write(byte[] bytes, AtomicInteger taken) {
        while (taken.get() < bytes.length) {
            byte[] chunk = Arrays.copyOfRange(bytes, taken.get(), Math.min(bytes.length, taken.get() + CHUNK));
            int count = port.writeBytes(chunk, chunk.length);
            if (count <= 0) return false;
            taken.addAndGet(count);
        }
        return true;
    }

    private DeviceAway away(int taken, String what, Exception cause) {
        String message = name + " " + what;
        return taken == 0 ? DeviceAway.clean(message, cause) : DeviceAway.ambiguous(message, cause);
    }

    @Override
    public byte[] ask(byte[] question, Predicate<byte[]> isWhole, Duration patience) {
        ByteArrayOutputStream answer = new ByteArrayOutputStream();
        listen(answer);
        send(question);
        long until = System.nanoTime() + patience.toNanos();
        while (!isWhole.test(answer.toByteArray()) && System.nanoTime() < until) {
            rest(GLANCE);
            listen(answer);
        }
        return answer.toByteArray();
    }

    private void listen(ByteArrayOutputStream answer) {
        int waiting = port.bytesAvailable();
        if (waiting < 0) throw away(1, "was unplugged or switched off", null);
        if (waiting == 0) return;
        byte[] heard = new byte[waiting];
        int count = port.readBytes(heard, heard.length);
        if (count < 0) throw away(1, "was unplugged or switched off", null);
        answer.write(heard, 0, count);
    }

    @Override
    public void rest(Duration howLong) {
        try {
            Thread.sleep(howLong.toMillis());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw away(1, "was left because the service stops", e);
        }
    }

    @Override
    public void close() {
        port.closePort();
        writer.shutdownNow();
    }
}

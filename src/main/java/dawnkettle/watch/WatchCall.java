package dawnkettle.watch;

import java.io.IOException;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;

/**
 * Calls whoever watches from outside, by HTTP GET (RFC 9110), on a thread of its own: whether the call gets through never
 * holds a step of the night up. Of calls that wait while one hangs the last is enough.
 */
public final class WatchCall implements AutoCloseable {
    private final WatchSettings settings;
    private final HttpClient client;
    private final ThreadPoolExecutor caller;
    private final AtomicReference<String> last = new AtomicReference<>("not called yet");

    public WatchCall(WatchSettings settings) {
        this.settings = settings;
        this.client = HttpClient.newBuilder()
                .connectTimeout(settings.patience())
                .followRedirects(HttpClient.Redirect.NEVER)
                .build();
        this.caller = new ThreadPoolExecutor(
                0,
                1,
                1,
                TimeUnit.SECONDS,
                new LinkedBlockingQueue<>(1),
                WatchCall::thread,
                new ThreadPoolExecutor.DiscardOldestPolicy());
    }

    private static Thread thread(Runnable work) {
        Thread thread = new Thread(work, "watch call");
        thread.setDaemon(true);
        return thread;
    }

    /** Calls, and returns at once. */
    public void call() {
        caller.execute(() -> last.set(called()));
    }

    /** How the last call went, in words without the address. */
    public String last() {
        return last.get();
    }

    /** Calls and waits for the answer, as the self-test does. @return how it went */
    public String callNow() {
        last.set(called());
        return last.get();
    }

    private String called() {
        HttpRequest request = HttpRequest.newBuilder(settings.url())
                .timeout(settings.patience())
                .GET()
                .build();
        try {
            int status =
                    client.send(request, HttpResponse.BodyHandlers.discarding()).statusCode();
            return status < 300 ? "answered" : "answered with status " + status;
        } catch (IOException e) {
            return "did not answer (" + e.getClass().getSimpleName() + ")";
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return "was left";
        }
    }

    @Override
    public void close() {
        caller.shutdownNow();
    }
}

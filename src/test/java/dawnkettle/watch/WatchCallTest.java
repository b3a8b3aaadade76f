package dawnkettle.watch;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.time.Duration;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Calls to a server of this machine. */
class WatchCallTest {
    private HttpServer server;
    private final AtomicInteger calls = new AtomicInteger();
    private final CountDownLatch hang = new CountDownLatch(1);
    private volatile int status = 200;
    private volatile boolean hangs;

    @BeforeEach
    void start() throws IOException {
        server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        server.setExecutor(Executors.newCachedThreadPool());
        server.createContext("/3f2a", exchange -> {
            calls.incrementAndGet();
            if (hangs) await(hang);
            exchange.sendResponseHeaders(status, -1);
            exchange.close();
        });
        server.start();
    }

    private static void await(CountDownLatch latch) {
        try {
            latch.await(20, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    @AfterEach
    void stop() {
        hang.countDown();
        server.stop(0);
    }

    private WatchSettings settings(int port) {
        return new WatchSettings(URI.create("http://127.0.0.1:" + port + "/3f2a"), Duration.ofSeconds(1));
    }

    @Test
    void it_calls_and_says_how_it_went() {
        try (WatchCall call = new WatchCall(settings(server.getAddress().getPort()))) {
            assertThat(call.callNow()).isEqualTo("answered");
            status = 404;
            assertThat(call.callNow()).isEqualTo("answered with status 404");
            assertThat(calls).hasValue(2);
        }
    }

    @Test
    void a_server_that_hangs_holds_nothing_up_and_of_many_calls_that_wait_one_is_enough() {
        hangs = true;
        try (WatchCall call = new WatchCall(settings(server.getAddress().getPort()))) {
            long began = System.nanoTime();
            for (int n = 0; n < 100; n++) call.call();

            assertThat(Duration.ofNanos(System.nanoTime() - began)).isLessThan(Duration.ofSeconds(1));
            assertThat(call.callNow()).isEqualTo("did not answer (HttpTimeoutException)");
            assertThat(calls).hasValueLessThan(5);
        }
    }

    @Test
    void where_nobody_listens_it_says_so_without_the_address() throws IOException {
        int port = server.getAddress().getPort();
        server.stop(0);
        try (WatchCall call = new WatchCall(settings(port))) {
            assertThat(call.callNow()).isEqualTo("did not answer (ConnectException)");
            assertThat(settings(port).toString()).doesNotContain("3f2a");
        }
    }
}

package dawnkettle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A running service waits for no caller: what {@code ss -ltnup} shows of it is nothing. */
class ListensToNobodyTest {
    @TempDir
    Path folder;

    @Test
    void the_service_at_work_has_no_socket_that_waits() throws Exception {
        assumeTrue(Path.of("/proc/self/fd").toFile().exists(), "sockets are looked up as Linux shows them");
        CopiedShop shop = CopiedShop.quick(folder)
                .withoutHistory()
                .with("shop.toml", "state = \"../out/state\"", "state = \"" + folder.resolve("state") + "\"");
        Process service = RealService.start(shop.conf(), folder.resolve("said"));
        try {
            Path ledger = folder.resolve("state/ledger.db");
            for (int tries = 0; tries < 1200 && Files.notExists(ledger); tries++) TimeUnit.MILLISECONDS.sleep(50);
            assertThat(ledger).exists();
            for (int looks = 0; looks < 20; looks++) {
                assertThat(service.isAlive()).isTrue();
                assertThat(RealService.listening(service.pid())).isEmpty();
                TimeUnit.MILLISECONDS.sleep(200);
            }
        } finally {
            service.destroyForcibly().waitFor();
        }
    }

    @Test
    void the_look_itself_sees_a_socket_that_waits() throws IOException {
        assumeTrue(Path.of("/proc/self/fd").toFile().exists(), "sockets are looked up as Linux shows them");
        try (ServerSocket waits = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            assertThat(RealService.listening(ProcessHandle.current().pid()))
                    .anyMatch(one -> one.endsWith(String.format(java.util.Locale.ROOT, ":%04X", waits.getLocalPort())));
        }
    }
}

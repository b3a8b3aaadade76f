package dawnkettle;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.command.Wiring;
import dawnkettle.store.LedgerHold;
import java.io.IOException;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Proxy;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A service whose disk takes nothing any more: it ends with a status of its own, and has told somebody. */
class DiskGoneTest {
    private static final Instant NIGHT = Instant.parse("2026-12-04T08:00:00Z");

    @TempDir
    Path folder;

    /** The door as it is, but that {@code ticks} says when the service ticks. */
    private static Wiring served(Consumer<Runnable> ticks) {
        SetClock door = new SetClock(new Main(), new MovedClock(NIGHT, ZoneId.of("America/New_York")));
        return (Wiring) Proxy.newProxyInstance(
                DiskGoneTest.class.getClassLoader(), new Class<?>[] {Wiring.class}, (self, method, words) -> {
                    if (method.getName().equals("serve")) {
                        ticks.accept((Runnable) words[0]);
                        return null;
                    }
                    try {
                        return method.invoke(door, words);
                    } catch (InvocationTargetException e) {
                        throw e.getCause();
                    }
                });
    }

    private CopiedShop shop() throws IOException {
        return CopiedShop.quick(folder)
                .withoutHistory()
                .with("shop.toml", "state = \"../out/state\"", "state = \"" + folder.resolve("state") + "\"");
    }

    private Terminal.Told run(CopiedShop shop, Consumer<Runnable> ticks) {
        return Terminal.runWith(served(ticks), "run", "--conf", shop.conf());
    }

    /** As a disk that has gone read-only under the service: the probe can't be written though there is room. */
    private void breakDisk() {
        assertThat(folder.resolve("state/probe").toFile().mkdir()).isTrue();
    }

    private long lastWords() throws IOException {
        Path mails = folder.resolve("state/tray/mail");
        if (Files.notExists(mails)) return 0;
        try (Stream<Path> files = Files.list(mails)) {
            return files.filter(file -> file.getFileName().toString().contains("disk"))
                    .count();
        }
    }

    @Test
    void it_ends_with_status_74_and_one_mail_where_it_was_at_work_before() throws IOException {
        Terminal.Told told = run(shop(), tick -> {
            tick.run();
            breakDisk();
            tick.run();
        });

        assertThat(told.status()).isEqualTo(74);
        assertThat(told.err()).contains("can't be written to").contains("look at the disk");
        assertThat(lastWords()).isEqualTo(1);
    }

    @Test
    void one_that_finds_it_so_at_its_start_writes_no_mail_each_time() throws IOException {
        CopiedShop shop = shop();
        Terminal.Told told = run(shop, tick -> {
            breakDisk();
            tick.run();
        });

        assertThat(told.status()).isEqualTo(74);
        assertThat(lastWords()).isZero();
    }

    @Test
    void two_services_on_one_ledger_are_one_too_many() throws IOException {
        CopiedShop shop = shop();
        Files.createDirectories(folder.resolve("state"));
        try (LedgerHold first =
                LedgerHold.take(folder.resolve("state/ledger.db")).orElseThrow()) {
            assertThat(first).isNotNull();
            Terminal.Told told = run(shop, tick -> {});
            assertThat(told.status()).isEqualTo(1);
            assertThat(told.err()).contains("another service is at work on it; stop that one first");
        }
    }

    @Test
    void told_to_stop_it_stops_and_lets_go() throws IOException {
        assertThat(run(shop(), tick -> tick.run()).status()).isZero();
        assertThat(LedgerHold.take(folder.resolve("state/ledger.db")))
                .isPresent()
                .get()
                .satisfies(LedgerHold::close);
    }
}

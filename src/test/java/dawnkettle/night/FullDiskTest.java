package dawnkettle.night;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.store.SmallDisk;
import dawnkettle.store.StepKey;
import dawnkettle.trouble.DeviceAway;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A night on a real file system of eight megabytes that fills up; only the superuser may mount one. */
class FullDiskTest {
    private static final Instant NOW = Instant.parse("2026-12-04T08:00:00Z");

    @TempDir
    Path folder;

    private static int untilFull(CareShop shop) {
        for (int n = 0; n < 100_000; n++)
            try {
                shop.ledger.outbox().queue("mail " + n, "subject", new byte[9_000], NOW);
            } catch (DeviceAway full) {
                return n;
            }
        return 100_000;
    }

    @Test
    void what_is_kept_back_is_given_up_once_and_told_and_the_ledger_goes_on_with_all_it_said_it_kept()
            throws IOException {
        try (SmallDisk disk = SmallDisk.mounted(folder.resolve("disk"), 8)) {
            CareShop shop = new CareShop(disk.folder(), NOW);
            DiskWatch watch = new DiskWatch(shop.office());
            assertThat(disk.folder().resolve("ballast")).exists();
            int kept = untilFull(shop);

            watch.look();
            watch.look();

            assertThat(shop.story)
                    .containsExactly("the disk is full: room that was kept back is given up, "
                            + "so that the night can be finished; make room now");
            assertThat(disk.folder().resolve("ballast")).doesNotExist();
            for (int step = 0; step < 10; step++) {
                StepKey key = StepKey.of("step " + step, LocalDate.of(2026, 12, 4));
                shop.ledger.steps().due(key, NOW, NOW);
                assertThat(shop.ledger.steps().start(key, NOW)).isTrue();
            }
            assertThat(shop.ledger.outbox().waiting()).hasSize(kept);
            assertThat(shop.ledger.faults()).isEmpty();
            assertThat(new Alarms(shop.office(), new Letters(shop.office())).open())
                    .anyMatch(alarm ->
                            alarm.happened().equals("the disk is full; the room that was kept back is used up"));
            shop.ledger.close();
        }
    }

    @Test
    void in_the_evening_it_is_kept_back_again_where_there_is_room() throws IOException {
        try (SmallDisk disk = SmallDisk.mounted(folder.resolve("disk"), 8)) {
            CareShop shop = new CareShop(disk.folder(), NOW);
            DiskWatch watch = new DiskWatch(shop.office());
            long free = Files.getFileStore(disk.folder()).getUsableSpace();
            Path filler = Files.write(disk.folder().resolve("old-sheets"), new byte[(int) free - 500_000]);
            watch.look();
            assertThat(disk.folder().resolve("ballast")).doesNotExist();

            Files.delete(filler);

            assertThat(new SelfTest(shop.office()).look(LocalDate.of(2026, 12, 5)))
                    .filteredOn(one -> one.what().equals("ballast"))
                    .allMatch(SelfTest.Finding::isWell);
            assertThat(disk.folder().resolve("ballast")).exists();
            shop.ledger.close();
        }
    }
}

package dawnkettle.night;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dawnkettle.trouble.DeviceAway;
import dawnkettle.trouble.DiskAway;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Room that is kept back for a bad night. */
class BallastTest {
    private static final NightSettings.Room ROOM = new NightSettings.Room(1_000_000, 300_000);

    @TempDir
    Path folder;

    @Test
    void it_is_made_once_given_up_once_and_made_again_where_there_is_room() throws IOException {
        Ballast ballast = new Ballast(folder, ROOM);

        assertThat(ballast.make()).isTrue();
        assertThat(Files.size(ballast.file())).isEqualTo(300_000);
        assertThat(ballast.isGivenUp()).isFalse();
        assertThat(ballast.giveUp()).isTrue();
        assertThat(ballast.giveUp()).isFalse();
        assertThat(ballast.make()).isTrue();
    }

    @Test
    void it_is_not_made_where_the_night_would_lack_that_room() {
        Ballast ballast = new Ballast(folder, new NightSettings.Room(Long.MAX_VALUE / 2, 300_000));

        assertThat(ballast.make()).isFalse();
        assertThat(ballast.isGivenUp()).isTrue();
        assertThat(folder).isEmptyDirectory();
    }

    @Test
    void where_none_is_wanted_none_is_made() {
        Ballast ballast = new Ballast(folder, new NightSettings.Room(0, 0));

        assertThat(ballast.make()).isFalse();
        assertThat(ballast.isGivenUp()).isFalse();
    }

    @Test
    void a_folder_that_takes_nothing_is_said_to_be_so() {
        Ballast ballast = new Ballast(folder.resolve("nowhere"), ROOM);

        assertThatThrownBy(ballast::writeSomething)
                .isInstanceOf(DeviceAway.class)
                .hasMessageContaining("can't be written to")
                .hasMessageEndingWith("look at the disk");
    }

    @Test
    void a_disk_that_is_well_is_left_alone_at_each_look() throws IOException {
        CareShop shop = new CareShop(folder, Instant.EPOCH);
        Ballast.of(shop.office()).make();

        new DiskWatch(shop.office()).look();

        assertThat(shop.story).isEmpty();
        assertThat(folder.resolve("ballast")).exists();
        assertThat(folder.resolve("probe")).doesNotExist();
        shop.ledger.close();
    }

    @Test
    void a_disk_that_takes_nothing_though_it_has_room_ends_the_process() throws IOException {
        CareShop shop = new CareShop(folder, Instant.EPOCH);
        Files.createDirectory(folder.resolve("probe")); // a probe that can't be written, as on a disk gone read-only

        assertThatThrownBy(() -> new DiskWatch(shop.office()).look()).isInstanceOf(DiskAway.class);
        shop.ledger.close();
    }
}

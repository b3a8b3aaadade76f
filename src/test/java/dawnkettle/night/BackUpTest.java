package dawnkettle.night;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.store.Ledger;
import dawnkettle.store.LedgerCopy;
import dawnkettle.store.LockedCopy;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Copies of a real ledger, night after night. */
class BackUpTest {
    private static final LocalDate FIRST = LocalDate.of(2026, 11, 25);

    @TempDir
    Path state;

    private String backUp(LocalDate day) {
        NightSettings.Places places = new NightSettings.Places(
                state.resolve("ledger.db"), state, state.resolve("drop"), state.resolve("backups"));
        Office.Papers papers =
                new Office.Papers(null, List.of(), new NightSettings(null, places, null, NightSettings.Mailing.NONE));
        Clock clock = Clock.fixed(day.atStartOfDay().toInstant(ZoneOffset.UTC), ZoneOffset.UTC);
        try (Ledger ledger = Ledger.open(places.ledger())) {
            return new BackUp(new Office(papers, ledger, clock, null, (at, line) -> {})).run(day);
        }
    }

    private List<String> names() throws IOException {
        try (Stream<Path> files = Files.list(state.resolve("backups"))) {
            return files.map(file -> file.getFileName().toString())
                    .filter(name -> !name.endsWith(".sha256"))
                    .sorted()
                    .toList();
        }
    }

    private static String name(LocalDate day) {
        return "ledger-" + day + ".db";
    }

    private static List<LocalDate> nights(int count) {
        return FIRST.datesUntil(FIRST.plusDays(count)).toList();
    }

    @Test
    void the_last_fourteen_copies_stay_and_the_first_of_each_month() throws IOException {
        List<String> said = new ArrayList<>();
        for (LocalDate day : nights(70)) said.add(backUp(day));

        List<String> left =
                new ArrayList<>(List.of(name(FIRST), name(LocalDate.of(2026, 12, 1)), name(LocalDate.of(2027, 1, 1))));
        nights(70).subList(70 - 14, 70).forEach(day -> left.add(name(day)));
        assertThat(names()).isEqualTo(left.stream().distinct().sorted().toList());
        assertThat(said.get(13)).isEqualTo("the ledger is copied and the copy was opened");
        assertThat(said.get(15)).isEqualTo("the ledger is copied and the copy was opened, 1 old copy cleared away");
    }

    @Test
    void nothing_is_deleted_but_copies_in_that_folder() throws IOException {
        Path backups = Files.createDirectories(state.resolve("backups"));
        List<String> others = List.of(
                "ledger-2020-01-03.db.gz",
                "ledger-2020-01-03-before-the-move.db",
                "ledger-2020-02-30.db",
                "my-ledger-2020-01-03.db",
                "ledger.db",
                "notes.txt");
        for (String name : others) Files.writeString(backups.resolve(name), "x");
        Files.createDirectory(backups.resolve("ledger-2020-01-04.db"));
        Path elsewhere = Files.writeString(state.resolve("ledger-2020-01-05.db"), "x");
        Files.createSymbolicLink(backups.resolve("ledger-2020-01-05.db"), elsewhere);
        Files.writeString(backups.resolve("ledger-2020-01-06.db"), "x");
        Files.writeString(backups.resolve("ledger-2020-01-07.db"), "x");

        for (LocalDate day : nights(15)) backUp(day);

        assertThat(names()).containsAll(others);
        assertThat(names())
                .contains("ledger-2020-01-04.db", "ledger-2020-01-05.db", "ledger-2020-01-06.db")
                .doesNotContain("ledger-2020-01-07.db");
        assertThat(elsewhere).exists();
    }

    @Test
    void a_copy_just_made_stays_even_where_the_clock_has_jumped_back() throws IOException {
        for (LocalDate day : nights(20)) backUp(day);

        backUp(LocalDate.of(2026, 11, 26));

        assertThat(names()).contains("ledger-2026-11-26.db");
    }

    @Test
    void each_copy_has_its_checksum_beside_it_and_both_go_together() throws IOException {
        for (LocalDate day : nights(17)) backUp(day);

        try (Stream<Path> files = Files.list(state.resolve("backups"))) {
            List<String> all = files.map(file -> file.getFileName().toString()).toList();
            assertThat(all.stream().filter(name -> name.endsWith(".sha256")).map(name -> name.replace(".sha256", "")))
                    .containsExactlyInAnyOrderElementsOf(names());
        }
        assertThat(new Copies(state.resolve("backups")).newestFirst())
                .allSatisfy(one -> assertThat(one.copy().checked().isSound()).isTrue());
    }

    @Test
    void a_second_folder_gets_a_copy_as_well_locked_where_there_is_a_key_and_loses_old_ones() throws IOException {
        CareShop shop = new CareShop(state, FIRST.atStartOfDay().toInstant(ZoneOffset.UTC));
        Path stick = Files.createDirectory(state.resolve("stick"));
        shop.second = Optional.of(stick);
        assertThat(new BackUp(shop.office()).run(FIRST)).endsWith("also in \"" + stick + "\"");
        assertThat(new Copies(stick).newestFirst().get(0).copy().checked().isSealed())
                .isTrue();

        shop.key = Optional.of(Files.writeString(state.resolve("key"), "0f".repeat(32)));
        LocalDate next = FIRST.plusDays(1);
        new BackUp(shop.office()).run(next);
        Copies.Dated locked = new Copies(stick).newestFirst().get(0);
        assertThat(locked.file().getFileName()).hasToString("ledger-2026-11-26.db.locked");
        Path open = state.resolve("open.db");
        new LockedCopy(locked.file()).open(open, LockedCopy.key(shop.key.get()));
        assertThat(new LedgerCopy(open).checked().isSound()).isTrue();
        shop.ledger.close();
    }

    @Test
    void a_stick_that_is_not_there_is_not_made_and_the_copy_here_counts() {
        CareShop shop = new CareShop(state, FIRST.atStartOfDay().toInstant(ZoneOffset.UTC));
        shop.second = Optional.of(state.resolve("stick"));

        assertThat(new BackUp(shop.office()).run(FIRST))
                .isEqualTo("the ledger is copied and the copy was opened; no second copy: folder \""
                        + state.resolve("stick") + "\" is not there, plug it in");
        assertThat(state.resolve("stick")).doesNotExist();
        shop.ledger.close();
    }
}

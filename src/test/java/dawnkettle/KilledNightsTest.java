package dawnkettle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import dawnkettle.label.ElementString;
import dawnkettle.label.LabelText;
import dawnkettle.night.SwiftFolder;
import dawnkettle.store.Ledger;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

/**
 * A process that plays the night is killed with SIGKILL, at any moment or at a named point, and started again until the night
 * is over; {@code -Dkills=2000} kills so often.
 */
class KilledNightsTest {
    private static final int KILLS = Integer.getInteger("kills", 6);
    private static final long SEED = Long.getLong("seed", 1);
    private static final ZoneId ZONE = FewOrders.SHOP.house().zone();
    private static final int POINTS = 500;

    private final Random dice = new Random(SEED);
    private final Map<String, Integer> killedAt = new TreeMap<>();
    private int kills;
    private int nights;
    private int inDoubt;
    private int lines;
    private int labels;

    @Test
    void a_night_that_is_killed_again_and_again_is_a_whole_night() throws Exception {
        assumeTrue(Path.of("/proc/self").toFile().exists(), "SIGKILL is sent as Linux does it");
        while (kills < KILLS) {
            nights++;
            List<String> broken = night(LocalDate.of(2026, 12, 15).plusDays(dice.nextInt(3)));
            assertThat(broken)
                    .as("night " + nights + " of seed " + SEED + " after " + kills + " kills")
                    .isEmpty();
            if (nights % 10 == 0 || kills >= KILLS) tell();
        }
    }

    private void tell() {
        System.out.printf(
                "%d kills in %d nights, %d order lines and %d labels: none lost, none twice unmarked, %d in doubt; at %s%n",
                kills, nights, lines, labels, inDoubt, killedAt);
    }

    private List<String> night(LocalDate day) throws Exception {
        try (SwiftFolder folder = SwiftFolder.make()) {
            Path coming = Files.createDirectories(folder.path().resolve("coming"));
            Path drop = Files.createDirectories(folder.path().resolve("drop"));
            DroppedByHand drops = new DroppedByHand(coming, day, dice);
            Instant evening = day.minusDays(1).atTime(5, 0).atZone(ZONE).toInstant();
            for (int i = 0; i < 4; i++) drops.drop(evening.plusSeconds(17_000L * i + dice.nextInt(9_000)));
            Ledger.open(folder.path().resolve("ledger.db")).close();
            FaultyDoors doors = new FaultyDoors(null, List.of(), dice);
            List<String> broken = new ArrayList<>();
            int killsBefore = kills;
            try (Asked asked = new Asked(folder.path().resolve("ledger.db"))) {
                NightLaws laws = new NightLaws(asked, doors, drops, drop, day);
                boolean isOver = false;
                while (!isOver && broken.isEmpty()) {
                    isOver = play(folder.path(), day, kills - killsBefore < 14 && kills < KILLS);
                    read(folder.path().resolve("outside"), doors);
                    if (!asked.rows("PRAGMA quick_check").equals(List.of("ok"))) broken.add("the ledger is damaged");
                    if (isOver) broken.addAll(laws.broken());
                    else
                        laws.broken().stream()
                                .filter(one -> !one.startsWith("I9"))
                                .forEach(broken::add);
                }
                if (broken.isEmpty()) broken.addAll(end(asked, drops, laws, day, kills - killsBefore));
            }
            return broken;
        }
    }

    private List<String> end(Asked asked, DroppedByHand drops, NightLaws laws, LocalDate day, int killed)
            throws IOException {
        lines += Integer.parseInt(asked.rows("SELECT count(*) FROM order_line WHERE source = 'file'")
                .get(0));
        labels += Integer.parseInt(asked.rows(
                        "SELECT coalesce(sum(to_number - from_number + 1), 0) FROM label_group WHERE outcome = 'confirmed'")
                .get(0));
        inDoubt += Integer.parseInt(asked.rows("SELECT count(*) FROM label_group WHERE outcome = 'uncertain'")
                .get(0));
        inDoubt +=
                Integer.parseInt(asked.rows("SELECT count(*) FROM effect WHERE state = 'ambiguous' AND kind = 'sheet'")
                        .get(0));
        NightsEnd.Course course = new NightsEnd.Course(day, false, killed, killed);
        return new NightsEnd(asked, drops, course).broken(laws.taken());
    }

    /** @return whether the night came to its end before it was killed */
    private boolean play(Path folder, LocalDate day, boolean isToBeKilled) throws Exception {
        boolean isNamed = dice.nextBoolean();
        int point = isToBeKilled && isNamed ? 1 + dice.nextInt(POINTS) : 0;
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx300m",
                        "-XX:TieredStopAtLevel=1",
                        "-XX:+UseSerialGC",
                        "-Duser.timezone=UTC",
                        "-Djava.awt.headless=true",
                        "-cp",
                        System.getProperty("java.class.path"),
                        "dawnkettle.NightInAProcess",
                        folder.toString(),
                        day.toString(),
                        "" + point)
                .redirectError(folder.resolve("complaints").toFile())
                .start();
        try (BufferedReader said = process.inputReader()) {
            String line = said.readLine();
            while (line != null && !line.equals("playing")) line = said.readLine();
            if (isToBeKilled && !isNamed) {
                if (!process.waitFor(dice.nextInt(2_500), TimeUnit.MILLISECONDS)) return killed(process, "any moment");
            }
            for (line = said.readLine(); line != null; line = said.readLine()) {
                if (line.equals("over")) break;
                if (line.startsWith("at "))
                    return killed(process, line.substring(3).replaceAll("\\s*\\(.*| SET.*", ""));
            }
        }
        assertThat(process.waitFor())
                .as(Files.readString(folder.resolve("complaints")))
                .isZero();
        return true;
    }

    private boolean killed(Process process, String where) throws InterruptedException {
        kills++;
        killedAt.merge(where, 1, Integer::sum);
        process.destroyForcibly().waitFor();
        return false;
    }

    /** What left the house, as the outside has it. */
    private static void read(Path outside, FaultyDoors doors) throws IOException {
        doors.labels.clear();
        doors.sheets.clear();
        doors.mails.clear();
        if (Files.notExists(outside)) return;
        for (String line : Files.readAllLines(outside)) {
            String[] cells = line.split("\t", -1);
            switch (cells[0]) {
                case "sheet" ->
                    doors.sheets
                            .computeIfAbsent(cells[1], all -> new ArrayList<>())
                            .add(Boolean.parseBoolean(cells[2]));
                case "mail" ->
                    doors.mails.add(new FaultyDoors.Received(
                            cells[1], Boolean.parseBoolean(cells[2]), Integer.parseInt(cells[3])));
                default -> doors.labels.add(label(cells));
            }
        }
    }

    private static FaultyDoors.Out label(String[] cells) {
        Optional<ElementString> elements =
                cells[5].isEmpty() ? Optional.empty() : Optional.of(ElementString.read(cells[5]));
        return new FaultyDoors.Out(
                cells[1],
                cells[2],
                Integer.parseInt(cells[3]),
                Boolean.parseBoolean(cells[4]),
                new LabelText(Map.of(), elements),
                Instant.EPOCH);
    }
}

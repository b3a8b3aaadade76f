package dawnkettle.night;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Every step once a business date, whatever the clocks do: the nights they change, leap days, week 53, closed days, power
 * cuts. Expected instants come from the JDK's own rules (tzdb of the JDK that runs the test). The suite plays the special
 * nights; {@code -Dnights=3650} plays ten years on end in each zone.
 */
class TenYearsOfStepsTest {
    private static final Integer NIGHTS = Integer.getInteger("nights");

    /** First days of the short form, 11 nights each: year's end with week 53, clocks change, a closing, a leap day. */
    private static final List<String> SPECIAL =
            List.of("2026-12-24", "2027-03-08", "2027-03-22", "2026-10-22", "2026-09-28", "2026-07-30", "2028-02-23");

    @ParameterizedTest
    @ValueSource(
            strings = {"America/New_York", "Europe/Berlin", "Asia/Tokyo", "Australia/Lord_Howe", "Africa/Casablanca"})
    void every_step_is_done_once_or_skipped_where_it_came_too_late(String zone) throws Exception {
        List<String> wrong = new ArrayList<>();
        if (NIGHTS != null) wrong.addAll(wrong(zone, LocalDate.of(2026, 1, 1), NIGHTS));
        else for (String from : SPECIAL) wrong.addAll(wrong(zone, LocalDate.parse(from), 11));
        assertThat(wrong.stream().limit(30))
                .as(wrong.size() + " wrong in " + zone)
                .isEmpty();
    }

    private static List<String> wrong(String zone, LocalDate from, int nights) throws Exception {
        try (SwiftFolder folder = SwiftFolder.make()) {
            Path file = folder.path().resolve("ledger.db");
            StepYears years = new StepYears(file, ZoneId.of(zone), from, nights);
            years.play();
            Map<String, String> expected = expected(years);
            Map<String, String> found = found(file);
            List<String> wrong = new ArrayList<>();
            expected.forEach((key, how) -> {
                if (!how.equals(found.get(key))) wrong.add(key + " must be " + how + " and is " + found.get(key));
            });
            found.forEach((key, how) -> {
                if (!expected.containsKey(key) && !how.startsWith("due"))
                    wrong.add(key + " is " + how + ", uncalled for");
            });
            years.ran.forEach((key, times) -> {
                int repeated = years.cutOff.getOrDefault(key, 0) - years.cutOff.getOrDefault(key + " before", 0);
                if (times != 1 + repeated && found.getOrDefault(key, "").startsWith("done"))
                    wrong.add(key + " ran " + times + " times with " + repeated + " cuts");
            });
            System.out.printf(
                    "%s from %s: %d nights, %d looks, %d steps once each, %d skipped, %d restarts, %d outages, %d clock steps, %d cuts in a step, %d wrong%n",
                    zone,
                    from,
                    nights,
                    years.looks.size(),
                    expected.values().stream()
                            .filter(how -> how.startsWith("done"))
                            .count(),
                    expected.values().stream()
                            .filter(how -> how.startsWith("skipped"))
                            .count(),
                    years.restarts,
                    years.outages,
                    years.clockSteps,
                    years.cutOff.keySet().stream()
                            .filter(key -> !key.endsWith(" before"))
                            .count(),
                    wrong.size());
            return wrong;
        }
    }

    /**
     * By the looks that were really taken: the first one at or after the time does it, or skips it where that is too late. By
     * a clock that shows an earlier time than the ledger was written to only the self-test is done, and what goes by a plan.
     */
    private static Map<String, String> expected(StepYears years) {
        Map<String, String> expected = new TreeMap<>();
        Instant first = years.looks.get(0);
        for (ExpectedSteps.Slot slot : years.expected.slots(years.from, years.until.plusDays(16))) {
            boolean isOfANight = !slot.step().equals("costs") && !slot.step().equals("recall drill");
            Instant counted = isOfANight ? close(years, slot.date()) : slot.due();
            if (counted.isBefore(first)) continue;
            Optional<Instant> look = first(years, slot, slot.due(), expected);
            if (look.isEmpty()) continue;
            boolean noPlan = slot.step().equals("labels")
                    && expected.getOrDefault("plan " + slot.date(), "skipped").startsWith("skipped");
            if (noPlan) look = first(years, slot, slot.latest().plusMillis(1), expected);
            if (look.isEmpty()) continue;
            expected.put(
                    slot.step() + " " + slot.date(),
                    (look.get().isAfter(slot.latest()) ? "skipped at " : "done at ") + look.get());
        }
        return expected;
    }

    private static Instant close(StepYears years, LocalDate day) {
        return years.expected.slots(day, day.plusDays(1)).stream()
                .filter(slot -> slot.step().equals("close"))
                .findFirst()
                .orElseThrow()
                .due();
    }

    /** Looks come in the order they were taken; a wrong clock can show an earlier time after a later one. */
    private static Optional<Instant> first(
            StepYears years, ExpectedSteps.Slot slot, Instant from, Map<String, String> expected) {
        List<Instant> looks = years.looks;
        int low = 0;
        int high = looks.size();
        Instant surelyBefore = from.minus(Duration.ofHours(4));
        while (low < high) {
            int middle = (low + high) / 2;
            if (looks.get(middle).isBefore(surelyBefore)) low = middle + 1;
            else high = middle;
        }
        for (int i = Math.max(0, low - 200); i < looks.size(); i++)
            if (!looks.get(i).isBefore(from)
                    && (!years.doubted.contains(i) || isDoneInDoubt(looks.get(i), slot, expected)))
                return Optional.of(looks.get(i));
        return Optional.empty();
    }

    private static boolean isDoneInDoubt(Instant look, ExpectedSteps.Slot slot, Map<String, String> expected) {
        if (look.isAfter(slot.latest())) return false;
        if (slot.step().equals("self test")) return true;
        String plan = expected.getOrDefault("plan " + slot.date(), "");
        return List.of("dawn check", "labels", "summary").contains(slot.step())
                && plan.startsWith("done at ")
                && Instant.parse(plan.substring("done at ".length())).isBefore(look);
    }

    private static Map<String, String> found(Path file) throws SQLException {
        Map<String, String> found = new TreeMap<>();
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement()) {
            try (ResultSet rows = statement.executeQuery("""
                    SELECT step, business_date, s.state, changed_at, ends FROM step AS s JOIN
                        (SELECT step, business_date, sum(state IN ('done', 'skipped')) AS ends FROM step_event
                         GROUP BY 1, 2) USING (step, business_date)
                    WHERE step <> 'first start'""")) {
                while (rows.next()) {
                    String ends = rows.getInt("ends") > 1 ? " " + rows.getInt("ends") + " times" : "";
                    found.put(
                            rows.getString("step") + " " + rows.getString("business_date"),
                            rows.getString("state") + " at " + Instant.ofEpochMilli(rows.getLong("changed_at")) + ends);
                }
            }
        }
        return found;
    }

    @Test
    void the_reckoning_is_checked_at_nights_that_are_known() {
        ExpectedSteps berlin = new ExpectedSteps(ZoneId.of("Europe/Berlin"), day -> true);
        assertThat(berlin.firstShowing(LocalDate.of(2026, 3, 29).atTime(2, 30)))
                .as("skipped by the clocks")
                .isEqualTo("2026-03-29T01:00:00Z");
        assertThat(berlin.firstShowing(LocalDate.of(2026, 10, 25).atTime(2, 30)))
                .as("shown twice")
                .isEqualTo("2026-10-25T00:30:00Z");
    }
}

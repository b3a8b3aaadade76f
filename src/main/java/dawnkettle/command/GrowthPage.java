package dawnkettle.command;

import dawnkettle.plan.Growth;
import dawnkettle.plan.GrowthPoint;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/** What growth does, as a page of plain text: a table for a day, what runs out, and how far each way carries. */
final class GrowthPage {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEE d MMM uuuu", Locale.ENGLISH);
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("EEE HH:mm", Locale.ENGLISH);
    private static final int MOST_LOADS = 3;

    private final ZoneId zone;
    private final StringBuilder page = new StringBuilder();

    GrowthPage(ZoneId zone) {
        this.zone = zone;
    }

    String text() {
        return page.toString();
    }

    private void line(String format, Object... words) {
        page.append(String.format(Locale.ROOT, format, words).stripTrailing()).append('\n');
    }

    void day(String what, Growth.Answer answer) {
        line(
                "%s, %s: %d packs",
                DAY.format(day(answer)), what, answer.day().book().packs());
        line("");
        line(
                "  %6s %7s %8s %8s  %-9s %6s %6s   %s",
                "orders", "packs", "kettles", "beans", "ready by", "late", "short", "most used");
        for (GrowthPoint point : answer.points())
            line(
                    "  %4d %% %7d %8d %5s kg  %-9s %6s %6s   %s",
                    point.percent(),
                    point.packs().ordered(),
                    point.batches(),
                    point.beans().inKilograms(0, RoundingMode.HALF_UP).toPlainString(),
                    TIME.format(point.finish().atZone(zone)),
                    dash(point.lateMinutes()),
                    dash(point.packs().missing()),
                    loads(point));
        line("  late: minutes of all vans together; short: packs that can't be had");
        line("  most used: until the first late van leaves, else the last one");
        line("");
    }

    private static LocalDate day(Growth.Answer answer) {
        return answer.day().book().productionDate();
    }

    private static String dash(long count) {
        return count == 0 ? "-" : Long.toString(count);
    }

    private static String loads(GrowthPoint point) {
        return point.loads().stream()
                .limit(MOST_LOADS)
                .map(load -> load.what() + " " + load.percent() + " %")
                .collect(Collectors.joining(", "));
    }

    /** What gives way first, and from when on each van is full. */
    void limit(Growth.Answer answer, Map<String, Integer> fullVans) {
        line("%s", sentence(answer));
        answer.broken().ifPresent(broken -> {
            broken.reasons().stream().limit(MOST_LOADS).forEach(reason -> line("  short because %s", reason));
            broken.late().entrySet().stream()
                    .sorted(Map.Entry.comparingByKey())
                    .forEach(van -> line("  van %s is %d min late", van.getKey(), van.getValue()));
        });
        if (fullVans.isEmpty()) line("No van is full with that.");
        fullVans.forEach((van, percent) -> line("Van %s is full from %d %% on.", van, percent));
        line("");
    }

    private static String sentence(Growth.Answer answer) {
        if (answer.broken().isEmpty()) return "It goes to the end of the table.";
        int broken = answer.broken().get().percent();
        return answer.last()
                .map(last -> "It goes to " + last.percent() + " %; with " + broken + " % it does not.")
                .orElse("Not even " + broken + " % goes.");
    }

    /** How far each way carries, as a bar, and what it breaks on; a row a way and day. */
    void ways(List<Growth.Answer> answers) {
        line("How far each way carries (a # for each 10 %% above 100 %%)");
        for (Growth.Answer answer : answers) {
            int percent = answer.last().map(GrowthPoint::percent).orElse(0);
            line(
                    "  %-34s %s  %-16s %-10s %s",
                    answer.way().name(),
                    DAY.format(day(answer)).substring(0, 10),
                    percent == 0
                            ? "not at all"
                            : percent + " %" + (answer.broken().isEmpty() ? " and more" : ""),
                    "#".repeat(Math.max(0, (percent - 100) / 10)),
                    answer.broken().map(GrowthPage::breaks).orElse(""));
        }
        line("");
    }

    /** For days of which the orders are not known. */
    void rebuilt() {
        line(
                "Days without orders in the ledger are rebuilt from what was packed, as if all of it went with the next van:");
        line("a careful reading, for some of it was for stock.");
    }

    private static String breaks(GrowthPoint point) {
        String late = point.late().entrySet().stream()
                .sorted(Map.Entry.comparingByKey())
                .map(van -> van.getKey() + " " + van.getValue() + " min late")
                .collect(Collectors.joining(", "));
        String missing = point.packs().missing() == 0 ? "" : point.packs().missing() + " packs short";
        return point.percent() + " %: "
                + (late.isEmpty() || missing.isEmpty() ? late + missing : late + ", " + missing);
    }
}

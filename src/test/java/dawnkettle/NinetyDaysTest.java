package dawnkettle;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.intake.DropFolder;
import dawnkettle.label.LabelRun;
import dawnkettle.measure.Celsius;
import dawnkettle.night.Edges;
import dawnkettle.night.Night;
import dawnkettle.night.Office;
import dawnkettle.night.SwiftFolder;
import dawnkettle.plan.Temperatures;
import dawnkettle.store.Ledger;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * One service that runs on and on: its memory, its files, the ledger's write-ahead file and what it says stay as they are.
 * {@code -Ddays=90} runs so many days.
 */
class NinetyDaysTest {
    private static final int DAYS = Integer.getInteger("days", 6);
    private static final ZoneId ZONE = FewOrders.SHOP.house().zone();

    /** What the ledger cuts its write-ahead file back to, and a transaction more. */
    private static final long MOST_WAL_BYTES = 12 << 20;

    /** Counted after each day. */
    private record Count(long heapKilobytes, long files, long walKilobytes, long ledgerKilobytes, long saidBytes) {}

    private long said;
    private long copies;

    @Test
    void nothing_grows_but_the_ledger() throws Exception {
        List<Count> counts = new ArrayList<>();
        try (SwiftFolder folder = SwiftFolder.make()) {
            Path drop = Files.createDirectories(folder.path().resolve("drop"));
            LocalDate first = LocalDate.of(2026, 12, 28);
            MovedClock clock = new MovedClock(first.atTime(4, 0).atZone(ZONE).toInstant(), ZONE);
            try (Ledger ledger = Ledger.open(folder.path().resolve("ledger.db"))) {
                Night night = new Night(new Office(
                        FewOrders.papers(folder.path()),
                        ledger,
                        clock,
                        edges(drop),
                        (at, line) -> said += line.length()));
                for (int day = 0; day < DAYS; day++) {
                    long before = said;
                    play(night, clock, drop, first.plusDays(day));
                    counts.add(count(folder.path(), drop, said - before));
                }
            }
        }
        tell(counts);
        assertThat(counts).allSatisfy(count -> assertThat(count.walKilobytes()).isLessThan(MOST_WAL_BYTES >> 10));
        assertThat(counts.get(DAYS - 1).files()).isLessThanOrEqualTo(60);
        if (DAYS < 30) return;
        assertThat(percentADay(counts.stream().map(Count::heapKilobytes).toList()))
                .as("heap")
                .isLessThan(1);
        assertThat(percentADay(counts.stream().map(Count::saidBytes).toList()))
                .as("what it says")
                .isLessThan(1);
        assertThat(percentADay(counts.stream().map(Count::files).toList()))
                .as("files")
                .isLessThan(1);
    }

    private static void play(Night night, MovedClock clock, Path drop, LocalDate day) throws IOException {
        Instant end = day.plusDays(1).atTime(4, 0).atZone(ZONE).toInstant();
        boolean runs = !FewOrders.SHOP.calendar().closed().containsKey(day.plusDays(1));
        if (FewOrders.SHOP.calendar().isWorkDay(day.plusDays(1)) && runs) {
            Random dice = new Random(day.toEpochDay());
            String row = "N" + day.toEpochDay() + ",1," + FewOrders.SAME_DAY.get(dice.nextInt(4)) + ",FIRM-400,"
                    + (1 + dice.nextInt(40)) + "," + day.plusDays(1) + ",\n";
            Files.writeString(
                    drop.resolve("orders-" + day + ".csv"),
                    "order,line,customer,product,packs,delivery_date,action\n" + row);
        }
        while (clock.instant().isBefore(end)) {
            Instant later = clock.instant().plus(Duration.ofMinutes(45));
            Optional<Instant> wake = night.nextWake().filter(next -> next.isBefore(later));
            clock.moveTo(wake.orElse(later).isBefore(end) ? wake.orElse(later) : end);
            night.tick();
        }
    }

    private Edges edges(Path drop) {
        FewOrders.WordsOnly forgotten = new FewOrders.WordsOnly() {
            @Override
            public dawnkettle.label.Dots draw(dawnkettle.label.Design design, dawnkettle.label.LabelText text) {
                return dawnkettle.label.Dots.typed("#");
            }
        };
        return new Edges(
                new Edges.Senses(
                        new DroppedOrders(new DropFolder(drop, Duration.ZERO)),
                        at -> new Temperatures(Celsius.degrees(17), Celsius.degrees(9), "sensor"),
                        at -> Optional.empty()),
                new Edges.PaperDesk(sheet -> copies++, FewOrders.STYLE),
                new Edges.LabelDesk(
                        (LabelRun run, dawnkettle.label.LabelJournal journal) -> {
                            if (run.labels().stream().noneMatch(dawnkettle.label.LabelCopies::isCounted)) return;
                            dawnkettle.label.Confirmed all =
                                    new dawnkettle.label.Confirmed(run.lot(), run.product(), run.first(), run.last());
                            journal.intended(all);
                            journal.confirmed(all);
                        },
                        FewOrders.lots(forgotten)),
                new Edges.MailDesk((mail, date) -> copies++, FewOrders.CHARTS, sheet -> new byte[] {1}),
                FewOrders.FORM);
    }

    /** The drop folder's own files are the people's and are not counted. */
    private static Count count(Path folder, Path drop, long said) throws IOException {
        for (int i = 0; i < 3; i++) System.gc();
        long heap = Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory();
        long files;
        try (Stream<Path> all = Files.walk(folder)) {
            files = all.filter(file -> Files.isRegularFile(file) && !file.startsWith(drop))
                    .count();
        }
        return new Count(
                heap >> 10,
                files,
                Files.size(folder.resolve("ledger.db-wal")) >> 10,
                Files.size(folder.resolve("ledger.db")) >> 10,
                said);
    }

    private void tell(List<Count> counts) {
        Count first = counts.get(0);
        Count last = counts.get(counts.size() - 1);
        System.out.printf(
                "%d days, %d sheets and mails: heap %d to %d kB (%.2f %% a day), files %d to %d, write-ahead file at most %d kB,"
                        + " ledger %d to %d kB, said %d to %d bytes a day (%.2f %% a day)%n",
                counts.size(),
                copies,
                first.heapKilobytes(),
                last.heapKilobytes(),
                percentADay(counts.stream().map(Count::heapKilobytes).toList()),
                first.files(),
                last.files(),
                counts.stream().mapToLong(Count::walKilobytes).max().orElseThrow(),
                first.ledgerKilobytes(),
                last.ledgerKilobytes(),
                first.saidBytes(),
                last.saidBytes(),
                percentADay(counts.stream().map(Count::saidBytes).toList()));
    }

    /** The slope of the best straight line through the second half, in per cent of its mean a day. */
    private static double percentADay(List<Long> values) {
        List<Long> half = values.subList(values.size() / 2, values.size());
        double mean = half.stream().mapToLong(Long::longValue).average().orElseThrow();
        double middle = (half.size() - 1) / 2.0;
        double up = 0;
        double across = 0;
        for (int i = 0; i < half.size(); i++) {
            up += (i - middle) * (half.get(i) - mean);
            across += (i - middle) * (i - middle);
        }
        return across == 0 || mean == 0 ? 0 : 100 * up / across / mean;
    }
}

package dawnkettle;

import static java.nio.charset.StandardCharsets.UTF_8;

import dawnkettle.intake.DropFolder;
import dawnkettle.label.Confirmed;
import dawnkettle.label.LabelCopies;
import dawnkettle.label.LabelJournal;
import dawnkettle.label.LabelRun;
import dawnkettle.label.LabelText;
import dawnkettle.mail.Mail;
import dawnkettle.measure.Celsius;
import dawnkettle.night.BrokenRuns;
import dawnkettle.night.Edges;
import dawnkettle.night.Night;
import dawnkettle.night.Office;
import dawnkettle.night.Step;
import dawnkettle.plan.Temperatures;
import dawnkettle.sheet.Sheet;
import dawnkettle.store.Ledger;
import dawnkettle.store.LedgerWire;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A night in a process of its own, to be killed: it begins where the one before it was killed, plays on a clock that does not
 * wait, and writes what leaves the house into a file at once, as the world would keep it.
 */
final class NightInAProcess implements LedgerWire.Tap {
    private static final ZoneId ZONE = FewOrders.SHOP.house().zone();
    private static final int GROUP = 4;

    private final Path folder;
    private final LocalDate day;
    private final int stopAt;
    private final FewOrders.WordsOnly drawing = new FewOrders.WordsOnly();
    private final MovedClock clock;
    private final Ledger ledger;
    private int points;

    private NightInAProcess(Path folder, LocalDate day, int stopAt) throws IOException {
        this.folder = folder;
        this.day = day;
        this.stopAt = stopAt;
        Instant from = Files.exists(folder.resolve("clock"))
                ? Instant.parse(Files.readString(folder.resolve("clock")))
                : at(before(), 4, 31);
        this.clock = new MovedClock(from.plusSeconds(10), ZONE);
        this.ledger = Ledger.open(folder.resolve("ledger.db"));
    }

    /** @param args the folder, the day, and at which point to stand still and wait to be killed, 0 for none */
    public static void main(String[] args) throws IOException {
        new NightInAProcess(Path.of(args[0]), LocalDate.parse(args[1]), Integer.parseInt(args[2])).play();
        System.out.println("over");
    }

    private LocalDate before() {
        return FewOrders.SHOP.calendar().previous(day);
    }

    private static Instant at(LocalDate date, int hour, int minute) {
        return date.atTime(hour, minute).atZone(ZONE).toInstant();
    }

    private void play() throws IOException {
        LedgerWire.tap(ledger, this);
        Office office = new Office(FewOrders.papers(folder), ledger, clock, edges(), (at, line) -> {});
        System.out.println("playing");
        new BrokenRuns(office).interrupted();
        ledger.outbox().interrupted(clock.instant());
        Night night = new Night(
                office,
                slot -> slot.businessDate().equals(day)
                        && slot.step() != Step.COSTS
                        && slot.step() != Step.RECALL_DRILL);
        Instant end = at(day, 16, 0);
        for (Instant now = clock.instant(); now.isBefore(end); now = next(night, now)) {
            clock.moveTo(now);
            keepClock(now);
            comeIn(now);
            night.tick();
        }
        ledger.close();
    }

    private static Instant next(Night night, Instant now) {
        Instant later = now.plusSeconds(2_700);
        return night.nextWake().filter(wake -> wake.isBefore(later)).orElse(later);
    }

    private void keepClock(Instant now) throws IOException {
        Path part = folder.resolve("clock.part");
        Files.writeString(part, now.toString());
        Files.move(part, folder.resolve("clock"), StandardCopyOption.ATOMIC_MOVE);
    }

    private void comeIn(Instant now) throws IOException {
        try (Stream<Path> coming = Files.list(folder.resolve("coming"))) {
            for (Path file : coming.sorted().toList())
                if (!Files.getLastModifiedTime(file).toInstant().plusSeconds(15).isAfter(now))
                    Files.move(file, folder.resolve("drop").resolve(file.getFileName()));
        }
    }

    private Edges edges() {
        return new Edges(
                new Edges.Senses(
                        new DroppedOrders(new DropFolder(folder.resolve("drop"), Duration.ofSeconds(10))),
                        at -> new Temperatures(Celsius.degrees(17), Celsius.degrees(9), "sensor"),
                        at -> Optional.empty()),
                new Edges.PaperDesk(this::print, FewOrders.STYLE),
                new Edges.LabelDesk(this::print, FewOrders.lots(drawing)),
                new Edges.MailDesk((mail, date) -> send(mail), FewOrders.CHARTS, sheet -> new byte[] {1}),
                FewOrders.FORM);
    }

    /** One write, which a kill leaves whole or not at all. */
    private void outside(String line) {
        try {
            Files.write(
                    folder.resolve("outside"),
                    (line + "\n").getBytes(UTF_8),
                    StandardOpenOption.CREATE,
                    StandardOpenOption.APPEND);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void print(Sheet sheet) {
        point("before a sheet");
        String key;
        try (Asked asked = new Asked(folder.resolve("ledger.db"))) {
            key = asked.rows("""
                    SELECT key FROM effect JOIN (SELECT key, max(seq) AS seq FROM effect_event GROUP BY key) USING (key)
                    WHERE kind = 'sheet' AND state = 'sending' ORDER BY seq DESC LIMIT 1""").stream().findFirst().orElse("nothing");
        }
        outside("sheet\t" + key + "\t" + FaultyDoors.isMarked(sheet));
        point("after a sheet");
    }

    private void print(LabelRun run, LabelJournal journal) {
        List<LabelText> words = new ArrayList<>();
        for (LabelCopies copies : run.labels())
            for (int i = 0; copies.isCounted() && i < copies.copies(); i++) words.add(drawing.on(copies.picture()));
        for (int first = run.first(); !words.isEmpty() && first <= run.last(); first += GROUP) {
            Confirmed group = new Confirmed(run.lot(), run.product(), first, Math.min(first + GROUP - 1, run.last()));
            journal.intended(group);
            point("before labels");
            for (int number = first; number <= group.last(); number++) {
                String says = words.get(number - run.first())
                        .elements()
                        .map(Object::toString)
                        .orElse("");
                outside(String.join("\t", "label", run.lot(), run.product(), "" + number, "" + run.again(), says));
                point("between labels");
            }
            journal.confirmed(group);
            point("after labels");
        }
    }

    private void send(Mail mail) {
        point("before a mail");
        boolean again = mail.body().text().replaceAll("\\s+", " ").startsWith("This mail may have arrived before");
        outside("mail\t" + mail.id() + "\t" + again + "\t" + mail.subject().hashCode());
        point("after a mail");
    }

    private void point(String name) {
        if (++points != stopAt) return;
        System.out.println("at " + name.strip().split("\\R")[0]);
        try {
            Thread.sleep(60_000);
        } catch (InterruptedException killed) {
            Thread.currentThread().interrupt();
        }
    }

    private static boolean isWrite(String sql) {
        return !sql.stripLeading().startsWith("SELECT") && !sql.startsWith("PRAGMA");
    }

    @Override
    public void before(String sql) {
        if (isWrite(sql)) point("before " + sql);
    }

    @Override
    public void after(String sql) {
        if (isWrite(sql)) point("after " + sql);
    }
}

package dawnkettle;

import dawnkettle.intake.DropFolder;
import dawnkettle.label.LabelText;
import dawnkettle.measure.Celsius;
import dawnkettle.night.BrokenRuns;
import dawnkettle.night.Edges;
import dawnkettle.night.Night;
import dawnkettle.night.Office;
import dawnkettle.night.Step;
import dawnkettle.night.SwiftFolder;
import dawnkettle.plan.Temperatures;
import dawnkettle.stock.Fact;
import dawnkettle.stock.LotCode;
import dawnkettle.stock.Recorded;
import dawnkettle.store.Ledger;
import dawnkettle.store.LedgerWire;
import dawnkettle.trouble.DeviceAway;
import dawnkettle.trouble.DiskAway;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * One night of one seed: the real office, steps, drop folder and ledger file on a clock that is moved, with orders coming in
 * at any time and one to four mishaps. The same seed is the same night.
 */
final class FaultyNight implements AutoCloseable, FaultyDoors.Surroundings {
    private static final ZoneId ZONE = FewOrders.SHOP.house().zone();
    /** A ledger in which nothing happened yet; making one takes longer than copying it. */
    private static final byte[] EMPTY = empty();

    /** More than all four mishaps of a night can fail. */
    private static final int MOST_STARTS = 200;

    final long seed;
    final List<Mishap> mishaps;
    final LocalDate day;
    final boolean isHolding;
    final List<String> story = new ArrayList<>();
    int looks;
    private final Plant plant;
    private final SwiftFolder folder;
    private final Random dice;
    private final MovedClock clock;
    private final FaultyWire wire;
    private final FaultyDoors doors;
    private final DroppedByHand drops;
    private final Asked asked;
    private final NightLaws laws;
    private final MailedByHand mailed;
    private final MailLaws mailLaws;
    private final TreeSet<Instant> dropTimes = new TreeSet<>();
    private final TreeSet<Instant> mailTimes = new TreeSet<>();
    private final List<String> violations = new ArrayList<>();
    private Ledger ledger;
    private Office office;
    private Night night;
    private Duration wrong = Duration.ZERO;
    private Instant real;
    private Optional<LotCode> held = Optional.empty();
    private int minutes;
    private String lastChecked = "";

    FaultyNight(long seed) throws IOException {
        this(seed, null, Plant.NONE);
    }

    /** @param mishaps these instead of the seed's own; null for those */
    FaultyNight(long seed, List<Mishap> mishaps, Plant plant) throws IOException {
        this.seed = seed;
        this.plant = plant;
        this.dice = new Random(seed * 0x9E3779B97F4A7C15L + 1);
        this.day = anyWorkDay();
        this.isHolding = new Random(seed).nextInt(5) == 0 || plant.isHolding();
        this.mishaps = mishaps == null ? anyMishaps() : mishaps;
        this.wire = new FaultyWire(this.mishaps, plant);
        this.folder = SwiftFolder.make();
        Files.createDirectories(folder.path().resolve("drop"));
        Files.write(folder.path().resolve("ledger.db"), EMPTY);
        this.real = at(before(), 4, 31);
        this.clock = new MovedClock(real, ZONE);
        this.doors = new FaultyDoors(this, this.mishaps, dice);
        this.drops = new DroppedByHand(folder.path().resolve("drop"), day, dice);
        this.mailed = new MailedByHand(doors, this, day, new Random(seed + 1));
        try {
            open();
        } catch (PowerCut | DeviceAway | DiskAway | IllegalStateException atOnce) {
            restart();
        }
        this.asked = new Asked(folder.path().resolve("ledger.db"));
        this.laws = new NightLaws(asked, doors, drops, folder.path().resolve("drop"), day);
        this.mailLaws = new MailLaws(asked, mailed, day);
        for (int i = 1 + dice.nextInt(5); i > 0; i--) dropTimes.add(anyTime());
        for (int i = dice.nextInt(6); i > 0; i--) mailTimes.add(anyTime());
        if (dice.nextBoolean()) dropTimes.add(at(before(), 6, 0));
    }

    private Instant anyTime() {
        return at(before(), 4, 40)
                .plusSeconds(dice.nextInt((int) Duration.ofHours(20).toSeconds()));
    }

    private static byte[] empty() {
        try (SwiftFolder folder = SwiftFolder.make()) {
            Path file = folder.path().resolve("ledger.db");
            Ledger.open(file).close();
            return Files.readAllBytes(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A work day with one behind and before it, so that the orders' making dates need no calendar to be known. */
    private LocalDate anyWorkDay() {
        Set<LocalDate> closed = FewOrders.SHOP.calendar().closed().keySet();
        while (true) {
            LocalDate any = LocalDate.of(2026, 12, 1).plusDays(dice.nextInt(800));
            boolean isOpen = any.getDayOfWeek() != DayOfWeek.SUNDAY
                    && any.minusDays(3).datesUntil(any.plusDays(4)).noneMatch(closed::contains);
            if (isOpen) return any;
        }
    }

    private List<Mishap> anyMishaps() {
        List<Mishap> all = new ArrayList<>();
        for (int i = 1 + dice.nextInt(4); i > 0; i--) all.add(Mishap.any(dice));
        return List.copyOf(all);
    }

    private LocalDate before() {
        return FewOrders.SHOP.calendar().previous(day);
    }

    private static Instant at(LocalDate date, int hour, int minute) {
        return date.atTime(hour, minute).atZone(ZONE).toInstant();
    }

    /** As the service starts. */
    private void open() {
        wire.lightsOn();
        ledger = Ledger.open(folder.path().resolve("ledger.db"));
        plant.opened(ledger);
        String settings = LedgerWire.settings(ledger);
        if (!settings.equals("wal 2 1")) violations.add("S: the ledger is written as " + settings + ", not wal 2 1");
        LedgerWire.tap(ledger, wire);
        office = new Office(
                FewOrders.papers(folder.path()),
                ledger,
                clock,
                plant.edges(edges()),
                (at, line) -> story.add(at + " " + line));
        new BrokenRuns(office).interrupted();
        ledger.outbox().interrupted(clock.instant());
        night = new Night(
                office,
                slot -> slot.businessDate().equals(day)
                        && slot.step() != Step.COSTS
                        && slot.step() != Step.RECALL_DRILL);
    }

    private Edges edges() {
        return new Edges(
                new Edges.Senses(
                        new DroppedOrders(new DropFolder(folder.path().resolve("drop"), Duration.ofSeconds(10))),
                        this::temperatures,
                        at -> clockDoubt()),
                new Edges.PaperDesk(doors::print, FewOrders.STYLE),
                new Edges.LabelDesk(doors::print, FewOrders.lots(doors.drawing)),
                new Edges.MailDesk(
                        (mail, date) -> doors.send(mail), FewOrders.CHARTS, sheet -> new byte[] {1}, mailed.in()),
                FewOrders.FORM);
    }

    private Temperatures temperatures(Instant at) {
        boolean isAway = wire.isNow(Mishap.Device.THERMOMETER, minutes).isPresent();
        return new Temperatures(
                Celsius.degrees(isAway ? 18 : 17), Celsius.degrees(9), isAway ? "monthly norms" : "sensor");
    }

    @Override
    public Instant now() {
        return clock.instant();
    }

    @Override
    public Optional<String> clockDoubt() {
        return wrong.isZero() ? Optional.empty() : Optional.of("the clock is not known to be right");
    }

    @Override
    public LabelText printed(LabelText words) {
        return plant.printed(words);
    }

    @Override
    public void point(String name) {
        wire.point(name);
    }

    @Override
    public List<String> committed(String query) {
        return asked.rows(query);
    }

    /** Plays it to its end, heals everything, lets the service finish. @return what was broken, each by its law's number */
    List<String> play() throws IOException {
        Instant end = at(day, 12, 0);
        while (real.isBefore(end) && violations.isEmpty()) {
            step(next(end));
        }
        if (violations.isEmpty()) finish();
        return violations;
    }

    private Instant next(Instant end) {
        Instant next = real.plusSeconds(60 * (15 + dice.nextInt(60)));
        Optional<Instant> wake = wire.isDark() ? Optional.empty() : wake();
        if (wake.isPresent() && wake.get().isAfter(real) && wake.get().isBefore(next)) next = wake.get();
        Instant drop = dropTimes.higher(real);
        if (drop != null && drop.plusSeconds(15).isBefore(next)) next = drop.plusSeconds(15);
        return next.isBefore(end) ? next : end;
    }

    private Optional<Instant> wake() {
        try {
            return night.nextWake().map(wake -> wake.minus(wrong));
        } catch (PowerCut | RuntimeException later) {
            return Optional.empty();
        }
    }

    private void step(Instant to) throws IOException {
        for (Instant drop : List.copyOf(dropTimes))
            if (!drop.isAfter(to)) {
                dropTimes.remove(drop);
                drops.drop(drop);
            }
        while (!mailTimes.isEmpty() && !mailTimes.first().isAfter(to)) mailed.send(mailTimes.pollFirst());
        real = to;
        minutes = (int) Duration.between(at(before(), 4, 31), real).toMinutes();
        moveClock();
        if (isHolding && !wire.isHealed() && !wire.isDark() && held.isEmpty() && !real.isBefore(at(day, 1, 0))) hold();
        look();
    }

    /** Somebody holds the first lot before it is labelled; it is let go at noon. */
    private void hold() {
        held = office.plan(day).map(plan -> plan.labels().get(0).lot());
        held.ifPresent(lot -> record(new Fact.Held(lot, "it smells"), "hold:1"));
    }

    private void record(Fact fact, String origin) {
        wire.undisturbed(() -> ledger.records().add(new Recorded(fact, clock.instant(), clock.instant(), origin)));
    }

    @Override
    public boolean isHeld(String lot) {
        return held.filter(one -> one.text().equals(lot)).isPresent();
    }

    private void moveClock() {
        Optional<Mishap> mishap = wire.isNow(Mishap.Device.CLOCK, minutes);
        Duration was = wrong;
        wrong = mishap.map(one -> switch (one.kind()) {
                    case CLOCK_IN_1970 -> Duration.between(real, Instant.EPOCH.plusSeconds(90));
                    case CLOCK_BACK -> Duration.ofHours(-3);
                    case CLOCK_AHEAD -> Duration.ofHours(5);
                    default -> Duration.ofDays(400);
                })
                .orElse(Duration.ZERO);
        if (!was.equals(wrong)) laws.clockWentBack();
        clock.moveTo(real.plus(wrong));
    }

    private void look() throws IOException {
        looks++;
        if (dice.nextInt(60) == 0 && !wire.isDark()) restart();
        int errors = wire.diskErrors;
        boolean isOver = false;
        try {
            night.tick();
        } catch (PowerCut cut) {
            story.add(clock.instant() + " " + cut.getMessage());
        } catch (DiskAway gone) { // the process ends, and the init system starts it again
            story.add(clock.instant() + " the service ended: " + gone.getMessage());
            isOver = true;
        } catch (DeviceAway | IllegalStateException failed) {
            story.add(clock.instant() + " the look ended: " + failed);
        }
        if (isOver || wire.isDark() || wire.diskErrors > errors && dice.nextBoolean()) restart();
        check();
    }

    /** Another cut may come while the service recovers from the first, and a disk that fails may do so forty times in a row. */
    private void restart() {
        for (int tries = 0; ; tries++) {
            if (tries > MOST_STARTS) throw new IllegalStateException("it does not come up again");
            ledger.close();
            LedgerWire.letGo(ledger);
            real = real.plusSeconds(tries == 0 ? dice.nextInt(8) == 0 ? dice.nextInt(9_000) : 10 : 10);
            clock.moveTo(real.plus(wrong));
            try {
                open();
                return;
            } catch (PowerCut cut) {
                story.add(clock.instant() + " while it starts: " + cut.getMessage());
            } catch (DeviceAway | DiskAway | IllegalStateException failed) {
                story.add(clock.instant() + " it does not start: " + failed);
            }
        }
    }

    private void check() throws IOException {
        String now = asked.rows("PRAGMA data_version") + " " + doors.labels.size() + " " + doors.mails.size() + " "
                + doors.sheets.size() + " " + mailed.sent.size() + " " + drops.files.size()
                + laws.taken().size();
        if (now.equals(lastChecked)) return;
        lastChecked = now;
        violations.addAll(laws.broken());
        violations.addAll(mailLaws.broken());
    }

    private void finish() throws IOException {
        wire.heal();
        doors.heal();
        wrong = Duration.ZERO;
        restart();
        if (held.isPresent()) record(new Fact.Released(held.get(), "Q. Millrace", "it is fine"), "hold:2");
        held = Optional.empty();
        for (int i = 0; i < 40 && violations.isEmpty() && !(i > 3 && isQuiet()); i++) step(real.plusSeconds(900));
        if (!violations.isEmpty()) return;
        violations.addAll(atEnd());
        String before = state();
        look();
        if (!state().equals(before)) violations.add("P: a second look changed\n" + before + "\n" + state());
    }

    private boolean isQuiet() {
        return asked.rows("SELECT 1 FROM step WHERE state NOT IN ('done', 'skipped') AND step <> 'first start'")
                        .isEmpty()
                && asked.rows("SELECT 1 FROM outbox WHERE state <> 'sent'").isEmpty();
    }

    private String state() {
        return asked.rows("SELECT * FROM step") + "\n" + asked.rows("SELECT * FROM effect") + "\n"
                + asked.rows("SELECT message_id, state, attempts FROM outbox") + "\n"
                + asked.rows("SELECT count(*) FROM label_group") + doors.labels.size() + " " + doors.sheets + " "
                + doors.mails.size();
    }

    private List<String> atEnd() throws IOException {
        boolean isLong = mishaps.stream().anyMatch(mishap -> mishap.times() > 39);
        int labelTroubles = doors.failures(Mishap.Device.LABELS) + wire.cuts + wire.diskErrors;
        int paperTroubles = doors.failures(Mishap.Device.PAPER) + wire.cuts + wire.diskErrors;
        NightsEnd.Course course = new NightsEnd.Course(day, isLong, paperTroubles, labelTroubles);
        List<String> broken = new NightsEnd(asked, drops, course).broken(laws.taken());
        broken.addAll(mailLaws.brokenAtEnd(isLong));
        ledger.chain().broken().forEach(said -> broken.add("I8: " + said));
        return broken;
    }

    /** What lies in the folder of refused files: why, where that was not expected. */
    List<String> reasons() throws IOException {
        List<String> reasons = new ArrayList<>();
        try (Stream<Path> files = Files.walk(folder.path().resolve("drop"))) {
            for (Path file : files.filter(one -> one.toString().endsWith(".txt"))
                    .sorted()
                    .toList()) reasons.add(file.getFileName() + ": " + Files.readString(file));
        }
        return reasons;
    }

    /** By which the ledger knows the sheets that came out. */
    Set<String> sheets() {
        return Set.copyOf(doors.sheets.keySet());
    }

    int count(String query) {
        return Integer.parseInt(asked.rows(query).get(0));
    }

    /** How it went, in figures. */
    NightCounts counts() {
        return new NightCounts(
                looks,
                wire.cuts,
                wire.points,
                drops.files.size(),
                count("SELECT count(*) FROM order_line WHERE source = 'file'"),
                mailed.box().size(),
                count("SELECT count(*) FROM order_line WHERE source = 'mail'"),
                doors.labels.size(),
                doors.sheets.values().stream().mapToInt(List::size).sum(),
                doors.mails.size(),
                count("SELECT count(*) FROM effect WHERE kind = 'sheet' AND state = 'ambiguous'"),
                count("SELECT count(*) FROM label_group WHERE outcome = 'uncertain'"),
                count("SELECT count(*) FROM outbox WHERE maybe_sent = 1"));
    }

    @Override
    public void close() throws IOException {
        asked.close();
        ledger.close();
        folder.close();
    }

    @Override
    public String toString() {
        return "seed " + seed + ", night of " + day + ", " + mishaps;
    }
}

package dawnkettle.night;

import dawnkettle.conf.Configuration;
import dawnkettle.conf.ReadConfiguration;
import dawnkettle.plan.DayFloor;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.Heading;
import dawnkettle.shop.House;
import dawnkettle.shop.Shop;
import dawnkettle.shop.ShopCalendar;
import dawnkettle.store.Ledger;
import java.lang.reflect.Field;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.zone.ZoneOffsetTransition;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * Days, or years, of one shop in one time zone: the real night, ledger and timetable, whose works only note that they were
 * called; with restarts, crashes in the midst of a step, hours without power and a clock that is wrong for a while.
 */
final class StepYears {
    private static final Configuration CONF = ReadConfiguration.from(Path.of("conf"));
    private static final Duration DAY = Duration.ofDays(1);

    final ZoneId zone;
    final LocalDate from;
    final LocalDate until;
    final ExpectedSteps expected;
    final List<Instant> looks = new ArrayList<>();
    /** Looks, by their place, in which the clock showed an earlier time than the ledger was last written to. */
    final Set<Integer> doubted = new HashSet<>();

    final Map<String, Integer> ran = new HashMap<>();
    final Map<String, Integer> cutOff = new HashMap<>();
    int restarts;
    int outages;
    int clockSteps;
    private final Path file;
    private final Random dice;
    private final Set<DayOfWeek> workDays;
    private Instant now;
    private int callsUntilCut = -1;
    private Connection asked;
    private Ledger ledger;
    private Night night;
    private Office office;
    private Instant darkUntil = Instant.MIN;
    private Instant wrongUntil = Instant.MIN;
    private Duration wrong = Duration.ZERO;

    StepYears(Path file, ZoneId zone, LocalDate from, int nights) {
        this.file = file;
        this.zone = zone;
        this.from = from;
        this.until = from.plusDays(nights);
        this.dice = new Random(zone.getId().hashCode() * 31L + from.toEpochDay());
        this.workDays = zone.getId().startsWith("Asia/")
                ? EnumSet.range(DayOfWeek.MONDAY, DayOfWeek.SATURDAY)
                : EnumSet.allOf(DayOfWeek.class);
        this.expected = new ExpectedSteps(zone, this::isWorkDay);
    }

    /** Closed at New Year and Christmas, two weeks in August, and on a day now and then. */
    private static boolean isClosed(LocalDate day) {
        return day.getDayOfYear() == 1
                || day.getMonthValue() == 12 && (day.getDayOfMonth() == 25 || day.getDayOfMonth() == 26)
                || day.getMonthValue() == 8 && day.getDayOfMonth() >= 3 && day.getDayOfMonth() <= 16
                || day.toEpochDay() % 97 == 13;
    }

    private boolean isWorkDay(LocalDate day) {
        return workDays.contains(day.getDayOfWeek()) && !isClosed(day);
    }

    /** A machine that goes dark. */
    private static final class PowerCut extends Error {
        private static final long serialVersionUID = 1L;
    }

    void play() throws SQLException {
        List<ExpectedSteps.Slot> slots = expected.slots(from, until.plusDays(16));
        open();
        asked = DriverManager.getConnection("jdbc:sqlite:" + file);
        for (LocalDate day = from; day.isBefore(until); day = day.plusDays(1)) {
            Instant start = day.atStartOfDay(zone).toInstant();
            Instant end = day.plusDays(1).atStartOfDay(zone).toInstant();
            for (Instant look : looksOf(slots, start, end)) look(look);
        }
        asked.close();
        ledger.close();
    }

    /** The minute after each thing that is due, some at random, and each minute around a change of the clocks. */
    private TreeSet<Instant> looksOf(List<ExpectedSteps.Slot> slots, Instant start, Instant end) {
        TreeSet<Instant> looks = new TreeSet<>();
        looks.add(start.plusSeconds(17));
        for (ExpectedSteps.Slot slot : slots)
            if (!slot.due().isBefore(start) && slot.due().isBefore(end))
                looks.add(slot.due().plusSeconds(dice.nextInt(60)));
        for (int i = 0; i < 3; i++)
            looks.add(start.plusSeconds(
                    dice.nextInt((int) Duration.between(start, end).toSeconds())));
        ZoneOffsetTransition change = zone.getRules().nextTransition(start.minusSeconds(1));
        if (change != null && change.getInstant().isBefore(end))
            for (int minute = -150; minute < 150; minute++)
                looks.add(change.getInstant().plusSeconds(60L * minute + 7));
        return looks;
    }

    private void look(Instant real) {
        if (real.isBefore(darkUntil)) return;
        disturb(real);
        if (real.isBefore(darkUntil)) return;
        now = real.isBefore(wrongUntil) ? real.plus(wrong) : real;
        looks.add(now);
        if (isBehindTheLedger()) doubted.add(looks.size() - 1);
        if (dice.nextInt(40) == 0) restart();
        callsUntilCut = dice.nextInt(60) == 0 ? dice.nextInt(4) : -1;
        while (true) {
            try {
                night.tick();
                return;
            } catch (PowerCut cut) {
                callsUntilCut = -1;
                restart();
                if (!isBehindTheLedger()) doubted.remove(looks.size() - 1);
            }
        }
    }

    /** The ledger's own file is asked, with the minute and a half that two programs may differ by. */
    private boolean isBehindTheLedger() {
        try (Statement statement = asked.createStatement();
                ResultSet rows = statement.executeQuery("SELECT at FROM step_event ORDER BY seq DESC LIMIT 1")) {
            return rows.next() && now.plusSeconds(90).isBefore(Instant.ofEpochMilli(rows.getLong(1)));
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    private void disturb(Instant real) {
        if (looks.size() < 40) return;
        if (dice.nextInt(300) == 0) {
            int hours = dice.nextInt(12) == 0 ? 24 + dice.nextInt(140) : 1 + dice.nextInt(9);
            darkUntil = real.plus(Duration.ofHours(hours));
            outages++;
        }
        if (dice.nextInt(200) == 0) {
            wrongUntil = real.plus(Duration.ofMinutes(dice.nextInt(600)));
            wrong = Duration.ofMinutes(dice.nextInt(180) - 90);
            clockSteps++;
        }
    }

    private void restart() {
        ledger.close();
        restarts++;
        open();
    }

    private void open() {
        if (now == null) now = from.atStartOfDay(zone).toInstant();
        ledger = Ledger.open(file);
        office = office(ledger);
        new BrokenRuns(office).interrupted();
        night = new Night(office);
        standIn(night);
    }

    /** The works of the night only note that they ran; what is due, and the ledger, stay the real ones. */
    private void standIn(Night night) {
        try {
            Field field = Night.class.getDeclaredField("work");
            field.setAccessible(true);
            @SuppressWarnings("unchecked")
            Map<Step, Work> work = (Map<Step, Work>) field.get(night);
            for (Step step : Step.values()) if (step != Step.LABELS) work.put(step, day -> note(step, day));
            Field doubt = Night.class.getDeclaredField("doubt");
            doubt.setAccessible(true);
            doubt.set(night, new InDoubt(office, Map.of()));
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException("the night's works can't be replaced", e);
        }
    }

    private String note(Step step, LocalDate day) {
        String key = step.word() + " " + day;
        if (callsUntilCut-- == 0) {
            cutOff.merge(key, 1, Integer::sum);
            if (dice.nextBoolean()) ran.merge(key, 1, Integer::sum);
            else cutOff.merge(key + " before", 1, Integer::sum);
            throw new PowerCut();
        }
        ran.merge(key, 1, Integer::sum);
        if (step == Step.PLAN) office.ledger().plans().keep(plan(day), "{\"day\":\"" + day + "\"}");
        return "noted";
    }

    private DayPlan plan(LocalDate day) {
        return new DayPlan(
                new Heading(day, 1, OptionalInt.empty(), now, zone, 1, Heading.Mode.FULL, List.of()),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                new DayFloor(List.of(), List.of(), List.of(), List.of(), List.of(), List.of()),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                Optional.empty());
    }

    private Office office(Ledger ledger) {
        PlanForm form = new PlanForm() {
            @Override
            public String write(DayPlan plan) {
                return "{\"day\":\"" + plan.heading().productionDate() + "\"}";
            }

            @Override
            public DayPlan read(String text) {
                return plan(LocalDate.parse(text.substring(8, 18)));
            }
        };
        Edges edges = new Edges(
                new Edges.Senses(at -> List.of(), null, at -> Optional.empty()),
                null,
                null,
                new Edges.MailDesk((mail, date) -> {}, null, null),
                form);
        NightSettings was = CONF.night();
        NightSettings settings =
                new NightSettings(ExpectedSteps.TIMES, was.places(), was.search(), NightSettings.Mailing.NONE);
        return new Office(new Office.Papers(shop(), List.of(), settings), ledger, new Shown(), edges, (at, line) -> {});
    }

    private Shop shop() {
        Shop shop = CONF.shop();
        House was = shop.house();
        House house = new House(
                was.name(),
                was.address(),
                zone,
                was.language(),
                was.currency(),
                was.units(),
                was.paper(),
                was.market());
        Map<LocalDate, String> closed = new HashMap<>();
        Stream.iterate(from.minusDays(70), day -> day.plusDays(1))
                .limit(from.until(until, java.time.temporal.ChronoUnit.DAYS) + 140)
                .filter(StepYears::isClosed)
                .forEach(day -> closed.put(day, "closed"));
        return new Shop(
                house,
                shop.products(),
                shop.recipes(),
                shop.floor(),
                shop.routes(),
                shop.customers(),
                new ShopCalendar(workDays, closed),
                shop.materials(),
                shop.prices(),
                shop.climate(),
                shop.costs());
    }

    private final class Shown extends Clock {
        @Override
        public ZoneId getZone() {
            return zone;
        }

        @Override
        public Clock withZone(ZoneId other) {
            throw new UnsupportedOperationException("the shop has one zone");
        }

        @Override
        public Instant instant() {
            return now;
        }
    }
}

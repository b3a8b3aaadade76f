package dawnkettle;

import dawnkettle.command.Wiring;
import dawnkettle.conf.Configuration;
import dawnkettle.export.PlanJson;
import dawnkettle.measure.Celsius;
import dawnkettle.night.Night;
import dawnkettle.night.Office;
import dawnkettle.night.Step;
import dawnkettle.night.Thermometer;
import dawnkettle.night.Timetable;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.Temperatures;
import dawnkettle.store.Ledger;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/** A night of one production day on a clock that the test moves: a real ledger, doors into a folder. */
final class PlayedNight implements AutoCloseable {
    final LocalDate day;
    final Path folder;
    final List<String> told = new ArrayList<>();
    private final CopiedShop shop;
    private final Configuration conf;
    private final MovedClock clock;
    private Ledger ledger;
    private Office office;
    private Predicate<Step> steps = step -> step != Step.COSTS;
    private Night night;

    PlayedNight(CopiedShop shop, LocalDate day, String from) throws IOException {
        this.shop = shop;
        this.day = day;
        this.folder = Files.createDirectories(shop.out());
        this.conf = new Main().configuration(shop.conf());
        this.clock = new MovedClock(instant(from), conf.shop().house().zone());
        open();
    }

    private void open() {
        ledger = Ledger.open(folder.resolve("ledger.db"));
        Thermometer warm = now -> new Temperatures(Celsius.degrees(25), Celsius.degrees(9), "set by hand");
        office = new Main()
                .rehearsal(
                        conf,
                        new Wiring.Stage(
                                shop.conf(), folder, ledger, clock, (at, line) -> told.add(line), Optional.of(warm)));
        night = new Night(office, this::isMine);
    }

    private boolean isMine(Timetable.Slot slot) {
        return slot.businessDate().equals(day) && steps.test(slot.step());
    }

    /** As after a power cut: everything in memory is gone, the ledger is opened again. */
    void restart() {
        ledger.close();
        open();
        ledger.effects().interrupted(clock.instant());
        ledger.outbox().interrupted(clock.instant());
    }

    void without(Step step) {
        steps = steps.and(other -> other != step);
    }

    void with(Step step) {
        steps = steps.or(other -> other == step);
    }

    Instant instant(String local) {
        return LocalDateTime.parse(local).atZone(conf.shop().house().zone()).toInstant();
    }

    /** Looks once at this local time. */
    void tickAt(String local) {
        clock.moveTo(instant(local));
        night.tick();
    }

    /** Looks whenever there is something to do, until this local time and at it. */
    void until(String local) {
        until(local, () -> {});
    }

    /** @param before what happens before each look */
    void until(String local, Runnable before) {
        Instant end = instant(local);
        for (Optional<Instant> wake = Optional.of(clock.instant());
                wake.filter(next -> !next.isAfter(end)).isPresent();
                wake = night.nextWake()) {
            clock.moveTo(wake.get());
            before.run();
            night.tick();
        }
        tickAt(local);
    }

    void drop(String name, String text) throws IOException {
        Files.createDirectories(folder.resolve("drop"));
        Files.writeString(folder.resolve("drop").resolve(name), text);
    }

    Ledger ledger() {
        return ledger;
    }

    Office office() {
        return office;
    }

    Configuration conf() {
        return conf;
    }

    DayPlan plan() {
        return office.plan(day).orElseThrow();
    }

    /** The plan in force as it is written. */
    String planText() {
        return PlanJson.write(plan(), conf.shop());
    }

    @Override
    public void close() {
        ledger.close();
    }
}

package dawnkettle.command;

import dawnkettle.conf.Configuration;
import dawnkettle.measure.Celsius;
import dawnkettle.night.Night;
import dawnkettle.night.Office;
import dawnkettle.night.PlanTomorrow;
import dawnkettle.night.ReportWeek;
import dawnkettle.night.Step;
import dawnkettle.night.Thermometer;
import dawnkettle.night.Timetable;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.Temperatures;
import dawnkettle.store.Ledger;
import java.io.PrintWriter;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** A whole night into a folder, on a clock of its own; nothing leaves the machine. */
@Command(
        name = "rehearse",
        mixinStandardHelpOptions = true,
        description = "Play a whole night into a folder: orders, soak call, close, plan, sheets, labels, mails.")
final class Rehearse implements Callable<Integer> {
    private final Wiring wiring;

    @Mixin
    private ConfOnly folder;

    @Option(
            names = "--out",
            paramLabel = "DIR",
            defaultValue = "out",
            description = "Folder for what is made. Default: ${DEFAULT-VALUE}")
    private Path out;

    @Option(
            names = "--at",
            paramLabel = "TIME",
            defaultValue = "2026-12-03T15:00",
            description = "Local time of the rehearsed cut-off or before it. Default: ${DEFAULT-VALUE}")
    private LocalDateTime at;

    @Option(
            names = "--room",
            paramLabel = "DEGREES",
            description = "Temperature of the soak room in °C. Default: the thermometer or the norm of the month")
    private BigDecimal room;

    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec;

    Rehearse(Wiring wiring) {
        this.wiring = wiring;
    }

    /** The ledger of a rehearsal lies in its folder; one that is named is copied there, and stays as it is. */
    static final class ConfOnly {
        @Option(
                names = "--ledger",
                paramLabel = "FILE",
                description =
                        "A ledger to rehearse on a copy of. Default: the shop's invented history, where it has one")
        private Path ledger;

        @Option(
                names = "--conf",
                paramLabel = "DIR",
                description =
                        "Folder in which the owner wrote the shop down. Default: conf, or the shop that comes along")
        private Path conf;
    }

    @Override
    public Integer call() {
        PrintWriter terminal = spec.commandLine().getOut();
        Path confFolder = Admission.toRead(wiring.shopFolder(Optional.ofNullable(folder.conf)));
        Configuration conf = wiring.configuration(confFolder);
        RehearsalFolder files = new RehearsalFolder(out);
        files.clear();
        files.dropAll(confFolder.resolve("rehearsal"));
        if (folder.ledger != null) copy(files.ledger());
        try (Ledger ledger = Ledger.open(files.ledger())) {
            if (folder.ledger == null) wiring.loadHistory(conf, confFolder, ledger);
            return play(conf, confFolder, files, ledger, terminal);
        }
    }

    private void copy(Path into) {
        if (Files.notExists(folder.ledger))
            throw new Dawnkettle.Refused("--ledger \"" + folder.ledger + "\" is not there; name a ledger that is");
        try (Ledger original = Ledger.open(folder.ledger)) {
            original.copyTo(into);
        }
    }

    private int play(Configuration conf, Path confFolder, RehearsalFolder files, Ledger ledger, PrintWriter terminal) {
        Timetable timetable = new Timetable(
                conf.shop().calendar(), conf.shop().house().zone(), conf.night().times());
        Instant asked = at.atZone(conf.shop().house().zone()).toInstant();
        LocalDate day = timetable.closingFrom(asked);
        Instant from = timetable.soakCall(day).isBefore(asked) ? timetable.soakCall(day) : asked;
        RehearsalClock clock = new RehearsalClock(from, conf.shop().house().zone());
        NightTale tale = new NightTale(conf.shop().house().zone(), terminal, System.console() != null);
        Office office = wiring.rehearsal(
                conf, new Wiring.Stage(confFolder, files.root(), ledger, clock, tale, thermometer(conf)));
        long started = System.nanoTime();
        Instant end = timetable.at(day, conf.night().times().summary());
        Night night = new Night(office, slot -> slot.businessDate().equals(day) && slot.step() != Step.COSTS);
        night.tick();
        for (Optional<Instant> wake = night.nextWake();
                wake.filter(next -> !next.isAfter(end)).isPresent();
                wake = night.nextWake()) {
            clock.moveTo(wake.get());
            night.tick();
        }
        printRest(night, office, clock, day);
        tale.tell(clock.instant(), "cost report: " + new ReportWeek(office).run(day));
        return finish(
                conf, files, office, day, new Ending(tale, terminal, Duration.ofNanos(System.nanoTime() - started)));
    }

    /** Lots that are packed after the summary get their labels too. */
    private static void printRest(Night night, Office office, RehearsalClock clock, LocalDate day) {
        Instant lastly = office.plan(day)
                .map(plan -> plan.operations().get(plan.operations().size() - 1).start())
                .orElse(clock.instant());
        for (Optional<Instant> wake = night.nextWake();
                wake.filter(next -> !next.isAfter(lastly)).isPresent();
                wake = night.nextWake()) {
            clock.moveTo(wake.get());
            night.tick();
        }
    }

    private record Ending(NightTale tale, PrintWriter terminal, Duration took) {}

    private int finish(Configuration conf, RehearsalFolder files, Office office, LocalDate day, Ending ending) {
        Optional<DayPlan> plan = office.plan(day);
        if (plan.isEmpty()) {
            files.write("story.txt", ending.tale().text());
            ending.terminal().print(ending.tale().text());
            ending.terminal().flush();
            return Dawnkettle.LOOK;
        }
        files.write("plan.json", new PlanTomorrow(office).written(plan.get()));
        String page = new NightPage(plan.get(), conf.shop()).text() + "\n"
                + ending.tale().text() + "\n"
                + new LineTimes(files.root().resolve("labels"), conf.labels()).text() + files.listing()
                + "Computed and written in "
                + ending.took().toMillis() / 1000.0 + " s.\n";
        files.write("story.txt", page);
        ending.terminal().print(page);
        ending.terminal().flush();
        return plan.get().shortages().isEmpty() && plan.get().lateRoutes() == 0 ? Dawnkettle.DONE : Dawnkettle.LOOK;
    }

    private Optional<Thermometer> thermometer(Configuration conf) {
        if (room == null) return Optional.empty();
        return Optional.of(now -> new Temperatures(
                Celsius.of(room),
                conf.shop().climate().tap(now.atZone(conf.shop().house().zone()).getMonth()),
                "set for this rehearsal"));
    }
}

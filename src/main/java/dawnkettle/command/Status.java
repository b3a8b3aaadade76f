package dawnkettle.command;

import dawnkettle.conf.Configuration;
import dawnkettle.night.BrokenRun;
import dawnkettle.night.BrokenRuns;
import dawnkettle.night.Night;
import dawnkettle.night.Office;
import dawnkettle.store.Ledger;
import dawnkettle.store.StepRow;
import java.io.PrintWriter;
import java.time.Instant;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Says in a line whether all is well, then the steps, what is in doubt, and what happens next. */
@Command(
        name = "status",
        mixinStandardHelpOptions = true,
        description = "Say whether all is well, what was done, what is in doubt, and what happens next.")
final class Status implements Callable<Integer> {
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("EEE d MMM HH:mm", Locale.ENGLISH);

    private final Wiring wiring;

    @Mixin
    private Folder folder;

    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec;

    Status(Wiring wiring) {
        this.wiring = wiring;
    }

    @Override
    public Integer call() {
        Configuration conf = wiring.configuration(folder.conf());
        try (Ledger ledger = folder.ledger(conf)) {
            Office office = wiring.service(conf, ledger, (at, line) -> {});
            return tell(conf, ledger, office);
        }
    }

    private int tell(Configuration conf, Ledger ledger, Office office) {
        PrintWriter out = spec.commandLine().getOut();
        Instant now = office.clock().instant();
        LocalDate today = now.atZone(conf.shop().house().zone()).toLocalDate();
        LocalDate next = office.timetable().closingFrom(now);
        List<StepRow> steps = new java.util.ArrayList<>(ledger.steps().of(today));
        if (!next.equals(today)) steps.addAll(ledger.steps().of(next));
        long failed = steps.stream()
                .filter(step -> step.state() == StepRow.State.FAILED || step.state() == StepRow.State.SKIPPED)
                .count();
        List<BrokenRun> broken = new BrokenRuns(office).open();
        boolean isWell = failed == 0 && broken.isEmpty();
        out.println(
                isWell
                        ? "All is well."
                        : "Look at this: " + failed + " steps failed or skipped, " + broken.size()
                                + " runs of labels broken off.");
        for (StepRow step : steps)
            out.println("  " + step.key().businessDate() + "  " + step.key().step() + ": "
                    + step.state().name().toLowerCase(Locale.ROOT)
                    + (step.note().isEmpty() ? "" : ", " + step.note()));
        broken.forEach(run -> out.println("  in doubt: " + run.said()));
        new Night(office)
                .nextWake()
                .ifPresent(wake -> out.println(
                        "Next: " + TIME.format(wake.atZone(conf.shop().house().zone()))));
        out.flush();
        return isWell ? Dawnkettle.DONE : Dawnkettle.LOOK;
    }
}

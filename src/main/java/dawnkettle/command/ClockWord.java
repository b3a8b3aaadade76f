package dawnkettle.command;

import dawnkettle.conf.Configuration;
import dawnkettle.night.ClockGate;
import dawnkettle.store.Ledger;
import java.time.LocalDate;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Says whether the clock is trusted, and takes a person's word that it is right. */
@Command(
        name = "clock",
        mixinStandardHelpOptions = true,
        description = "Say whether the clock is trusted; \"clock confirm DATE\" takes your word that it is right.",
        footer = {"", "Example: dawnkettle clock confirm 2026-12-04"})
final class ClockWord implements Callable<Integer> {
    private final Wiring wiring;

    @Mixin
    private Folder folder;

    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec;

    ClockWord(Wiring wiring) {
        this.wiring = wiring;
    }

    static CommandLine with(Wiring wiring) {
        return new CommandLine(new ClockWord(wiring)).addSubcommand(new Confirm(wiring));
    }

    @Override
    public Integer call() {
        Configuration conf = wiring.configuration(folder.conf());
        try (Ledger ledger = folder.ledger(conf)) {
            ClockGate gate = new ClockGate(wiring.service(conf, ledger, (at, line) -> {}));
            spec.commandLine().getOut().println(gate.told());
            return gate.isTrusted() ? Dawnkettle.DONE : Dawnkettle.LOOK;
        }
    }

    /** Takes a person's word for it. */
    @Command(
            name = "confirm",
            mixinStandardHelpOptions = true,
            description = "Say that the clock is right, by writing today's date. Labels are dated again.")
    static final class Confirm implements Callable<Integer> {
        private final Wiring wiring;

        @Mixin
        private Folder folder;

        @Parameters(paramLabel = "DATE", description = "Today's date from a calendar or a telephone, as 2026-12-04.")
        private LocalDate day;

        @CommandLine.Spec
        private CommandLine.Model.CommandSpec spec;

        Confirm(Wiring wiring) {
            this.wiring = wiring;
        }

        @Override
        public Integer call() {
            Configuration conf = wiring.configuration(folder.conf());
            try (Ledger ledger = folder.ledger(conf)) {
                ClockGate gate = new ClockGate(wiring.service(conf, ledger, (at, line) -> {}));
                spec.commandLine().getOut().println(gate.confirm(day));
                return Dawnkettle.DONE;
            }
        }
    }
}

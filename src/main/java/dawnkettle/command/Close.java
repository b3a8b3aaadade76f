package dawnkettle.command;

import dawnkettle.conf.Configuration;
import dawnkettle.night.ClockGate;
import dawnkettle.night.CloseBook;
import dawnkettle.night.Office;
import dawnkettle.store.Ledger;
import java.time.LocalDate;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Closes the book of a production day by hand. */
@Command(
        name = "close",
        mixinStandardHelpOptions = true,
        description = "Close the book of a production day; what comes after is marked late.")
final class Close implements Callable<Integer> {
    private final Wiring wiring;

    @Mixin
    private Folder folder;

    @Option(names = "--day", paramLabel = "DATE", description = "The production day. Default: the one that closes next")
    private LocalDate day;

    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec;

    Close(Wiring wiring) {
        this.wiring = wiring;
    }

    @Override
    public Integer call() {
        Configuration conf = wiring.configuration(folder.conf());
        try (Ledger ledger = folder.ledger(conf)) {
            Office office = wiring.service(conf, ledger, (at, line) -> {});
            LocalDate closing =
                    day == null ? office.timetable().closingFrom(office.clock().instant()) : day;
            if (!conf.shop().calendar().isWorkDay(closing))
                throw new Dawnkettle.Refused(
                        "--day \"" + closing + "\" is not a making day; name a day on which the shop makes");
            ClockGate clock = new ClockGate(office);
            if (!clock.isTrusted()) {
                spec.commandLine().getOut().println("No book is closed. " + clock.told());
                return Dawnkettle.LOOK;
            }
            spec.commandLine().getOut().println(closing + ": " + new CloseBook(office).run(closing));
        }
        return Dawnkettle.DONE;
    }
}

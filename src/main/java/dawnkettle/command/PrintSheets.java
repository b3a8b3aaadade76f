package dawnkettle.command;

import dawnkettle.conf.Configuration;
import dawnkettle.night.SheetsAgain;
import dawnkettle.store.Ledger;
import java.time.LocalDate;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Prints the sheets of a day by hand. */
@Command(
        name = "sheets",
        mixinStandardHelpOptions = true,
        description = "Print all sheets of the plan in force once more, each marked at its foot.")
final class PrintSheets implements Callable<Integer> {
    private final Wiring wiring;

    @Mixin
    private Folder folder;

    @Option(names = "--day", paramLabel = "DATE", description = "The production day. Default: the last that has a plan")
    private LocalDate day;

    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec;

    PrintSheets(Wiring wiring) {
        this.wiring = wiring;
    }

    @Override
    public Integer call() {
        Configuration conf = wiring.configuration(folder.conf());
        try (Ledger ledger = folder.ledger(conf)) {
            SheetsAgain sheets = new SheetsAgain(wiring.service(conf, ledger, (at, line) -> {}));
            spec.commandLine().getOut().println(sheets.print(Optional.ofNullable(day)));
        }
        return Dawnkettle.DONE;
    }
}

package dawnkettle.command;

import dawnkettle.conf.Configuration;
import dawnkettle.night.BrokenRuns;
import dawnkettle.night.Night;
import dawnkettle.night.Office;
import dawnkettle.store.Ledger;
import dawnkettle.trouble.BadFile;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** The service: it wakes every minute and does what the ledger says is due. */
@Command(
        name = "run",
        mixinStandardHelpOptions = true,
        description = "Run the service until it is told to stop. Exit status 78 where conf/ is wrong.")
final class Run implements Callable<Integer> {
    /** By which the init system knows that starting again is of no use (EX_CONFIG of sysexits.h, from memory). */
    private static final int CONF_IS_WRONG = 78;

    private final Wiring wiring;

    @Mixin
    private Folder folder;

    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec;

    Run(Wiring wiring) {
        this.wiring = wiring;
    }

    @Override
    public Integer call() {
        Configuration conf;
        try {
            conf = wiring.configuration(folder.conf());
        } catch (BadFile bad) {
            spec.commandLine().getErr().println(bad.getMessage());
            return CONF_IS_WRONG;
        }
        try (Ledger ledger = folder.ledger(conf)) {
            Office office = wiring.service(
                    conf, ledger, (at, line) -> spec.commandLine().getOut().println(line));
            new BrokenRuns(office).interrupted();
            ledger.outbox().interrupted(office.clock().instant());
            wiring.serve(new Night(office)::tick);
        }
        return Dawnkettle.DONE;
    }
}

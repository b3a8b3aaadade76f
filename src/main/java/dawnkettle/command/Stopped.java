package dawnkettle.command;

import dawnkettle.conf.Configuration;
import dawnkettle.night.Office;
import dawnkettle.night.TellStopped;
import dawnkettle.store.Ledger;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Writes to a person that the service has stopped for good; the init system calls it when that happens. */
@Command(
        name = "stopped",
        hidden = true,
        mixinStandardHelpOptions = true,
        description = "Write a mail that the service has stopped for good.")
final class Stopped implements Callable<Integer> {
    private final Wiring wiring;

    @Mixin
    private Folder folder;

    @Parameters(paramLabel = "UNIT", description = "What has stopped.")
    private String unit;

    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec;

    Stopped(Wiring wiring) {
        this.wiring = wiring;
    }

    @Override
    public Integer call() {
        Configuration conf = wiring.configuration(folder.conf());
        try (Ledger ledger = folder.ledger(conf)) {
            Office office = wiring.service(conf, ledger, (at, line) -> {});
            spec.commandLine().getOut().println(new TellStopped(office).of(unit));
        }
        return Dawnkettle.DONE;
    }
}

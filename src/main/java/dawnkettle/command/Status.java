package dawnkettle.command;

import dawnkettle.conf.Configuration;
import dawnkettle.store.Ledger;
import java.io.PrintWriter;
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
            StatusPage page = new StatusPage(wiring.service(conf, ledger, (at, line) -> {}));
            PrintWriter out = spec.commandLine().getOut();
            page.lines().forEach(out::println);
            out.flush();
            return page.isWell() ? Dawnkettle.DONE : Dawnkettle.LOOK;
        }
    }
}

package dawnkettle.command;

import dawnkettle.conf.Configuration;
import dawnkettle.night.LabelsAgain;
import dawnkettle.store.Ledger;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Prints labels of a lot by hand, or takes a person's word that they are there. */
@Command(
        name = "labels",
        mixinStandardHelpOptions = true,
        description = "Print labels of a lot once more, each marked as a copy.",
        footer = {"", "Example: dawnkettle print labels --lot 261204-FI01 --from 41 --to 60 --why \"the ribbon tore\""})
final class PrintLabels implements Callable<Integer> {
    private final Wiring wiring;

    @Mixin
    private Folder folder;

    @Option(names = "--lot", required = true, paramLabel = "LOT", description = "The lot, as 261204-FI01.")
    private String lot;

    @Option(names = "--product", paramLabel = "CODE", description = "Needed where the lot fills more than one product.")
    private String product;

    @Option(names = "--from", required = true, paramLabel = "N", description = "Number of the first label.")
    private int from;

    @Option(names = "--to", required = true, paramLabel = "M", description = "Number of the last label.")
    private int to;

    @Option(names = "--why", required = true, paramLabel = "TEXT", description = "What happened; it is kept.")
    private String why;

    @Option(names = "--found", description = "Print none: these were in doubt, and you hold them in your hand.")
    private boolean found;

    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec;

    PrintLabels(Wiring wiring) {
        this.wiring = wiring;
    }

    @Override
    public Integer call() {
        Configuration conf = wiring.configuration(folder.conf());
        LabelsAgain.Asked asked = new LabelsAgain.Asked(lot, Optional.ofNullable(product), from, to, why);
        try (Ledger ledger = folder.ledger(conf)) {
            LabelsAgain labels = new LabelsAgain(wiring.service(
                    conf, ledger, (at, line) -> spec.commandLine().getErr().println(line)));
            spec.commandLine().getOut().println(found ? labels.found(asked) : labels.print(asked));
        }
        return Dawnkettle.DONE;
    }
}

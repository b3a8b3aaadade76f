package dawnkettle.command;

import picocli.CommandLine;
import picocli.CommandLine.Command;

/** Prints by hand what the night has printed, or could not. */
@Command(
        name = "print",
        mixinStandardHelpOptions = true,
        description = "Print labels or sheets once more, marked as copies and noted in the ledger.",
        customSynopsis = {
            "dawnkettle print labels --lot LOT [--product CODE] --from N --to M --why TEXT [--found]",
            "       dawnkettle print sheets [--day DATE]"
        },
        synopsisSubcommandLabel = "COMMAND")
final class Print implements Runnable {
    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec;

    private Print() {}

    static CommandLine with(Wiring wiring) {
        return new CommandLine(new Print())
                .addSubcommand(new PrintLabels(wiring))
                .addSubcommand(new PrintSheets(wiring));
    }

    @Override
    public void run() {
        throw new CommandLine.ParameterException(spec.commandLine(), "print what? Write \"labels\" or \"sheets\"");
    }
}

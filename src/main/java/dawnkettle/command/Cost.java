package dawnkettle.command;

import picocli.CommandLine;
import picocli.CommandLine.Command;

/** What a week cost, and what prices must be. */
@Command(
        name = "cost",
        mixinStandardHelpOptions = true,
        description = "Say what a week cost, or what prices must be to hold the margin.",
        synopsisSubcommandLabel = "COMMAND")
final class Cost implements Runnable {
    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec;

    private Cost() {}

    static CommandLine with(Wiring wiring) {
        return new CommandLine(new Cost()).addSubcommand(new CostWeek(wiring)).addSubcommand(new CostPrices(wiring));
    }

    @Override
    public void run() {
        spec.commandLine().usage(spec.commandLine().getOut());
    }
}

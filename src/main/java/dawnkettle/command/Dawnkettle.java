package dawnkettle.command;

import dawnkettle.trouble.BadFile;
import dawnkettle.trouble.DeviceAway;
import dawnkettle.trouble.DiskAway;
import java.io.PrintWriter;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** All commands, and what their exit status means: 0 done, 1 the shop has a problem to look at, 2 the command or conf/ is wrong. */
@Command(
        name = "dawnkettle",
        mixinStandardHelpOptions = true,
        versionProvider = Dawnkettle.Version.class,
        description = "The night clerk of a small workshop that makes tofu by hand.",
        synopsisSubcommandLabel = "COMMAND",
        sortOptions = false)
public final class Dawnkettle implements Runnable {
    static final int DONE = 0;
    static final int LOOK = 1;
    static final int WRONG = 2;

    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec;

    @Option(names = "--trace", hidden = true, description = "Show where a mistake of ours happened.")
    private boolean trace;

    private Dawnkettle() {}

    /** Runs the command that {@code args} name, and returns its exit status. */
    public static int run(Wiring wiring, String... args) {
        Dawnkettle top = new Dawnkettle();
        CommandLine line = new CommandLine(top)
                .addSubcommand(new Rehearse(wiring))
                .addSubcommand(new Run(wiring))
                .addSubcommand(new Check(wiring))
                .addSubcommand(new Order(wiring))
                .addSubcommand(typed(new Receive(wiring)))
                .addSubcommand(typed(new Record(wiring)))
                .addSubcommand(new Stock(wiring))
                .addSubcommand(new Trace(wiring))
                .addSubcommand(new Close(wiring))
                .addSubcommand(new Plan(wiring))
                .addSubcommand(new Grow(wiring))
                .addSubcommand(Cost.with(wiring))
                .addSubcommand(Print.with(wiring))
                .addSubcommand(new Status(wiring))
                .addSubcommand(new Stopped(wiring))
                .addSubcommand(new Manual())
                .addSubcommand(new SelfTestNow(wiring))
                .addSubcommand(ClockWord.with(wiring))
                .addSubcommand(new Restore(wiring))
                .addSubcommand(new Erase(wiring))
                .addSubcommand(new Bundle(wiring))
                .setCaseInsensitiveEnumValuesAllowed(true)
                .setExecutionExceptionHandler((mistake, failed, parsed) -> top.answer(mistake, failed));
        return line.execute(args);
    }

    /** A command whose words may begin with a minus, so that a number below zero gets the answer it deserves. */
    private static CommandLine typed(Object command) {
        return new CommandLine(command).setUnmatchedOptionsArePositionalParams(true);
    }

    private int answer(Exception mistake, CommandLine failed) {
        PrintWriter err = failed.getErr();
        if (mistake instanceof BadFile bad) {
            err.println(bad.getMessage());
            return WRONG;
        }
        if (mistake instanceof DeviceAway || mistake instanceof DiskAway || mistake instanceof Refused) {
            err.println(mistake.getMessage());
            return mistake instanceof Refused ? WRONG : LOOK;
        }
        err.println("a mistake of ours: " + mistake
                + "; please send this line and what you did to whoever looks after Dawnkettle");
        if (trace) mistake.printStackTrace(err);
        return LOOK;
    }

    @Override
    public void run() {
        spec.commandLine().usage(spec.commandLine().getOut());
    }

    /** The version that the jar says. */
    static final class Version implements CommandLine.IVersionProvider {
        @Override
        public String[] getVersion() {
            String version = Dawnkettle.class.getPackage().getImplementationVersion();
            return new String[] {"dawnkettle " + (version == null ? "(not packaged)" : version)};
        }
    }

    /** The command's words were wrong. */
    static final class Refused extends RuntimeException {
        private static final long serialVersionUID = 1L;

        Refused(String message) {
            super(message);
        }
    }
}

package dawnkettle.command;

import dawnkettle.conf.Configuration;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Reads everything that the owner wrote and says all that is wrong with it. */
@Command(
        name = "check",
        mixinStandardHelpOptions = true,
        description = "Check conf/ and labels/, and say all that is wrong.")
final class Check implements Callable<Integer> {
    private final Wiring wiring;

    @Mixin
    private Folder folder;

    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec;

    Check(Wiring wiring) {
        this.wiring = wiring;
    }

    @Override
    public Integer call() {
        Configuration conf = wiring.configuration(folder.conf());
        spec.commandLine()
                .getOut()
                .println(conf.shop().house().name() + ": "
                        + conf.shop().products().size() + " products, "
                        + conf.shop().recipes().size() + " recipes, "
                        + conf.shop().customers().size() + " customers, "
                        + conf.shop().routes().size() + " routes. Nothing is wrong with it.");
        return Dawnkettle.DONE;
    }
}

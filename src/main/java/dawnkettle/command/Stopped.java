package dawnkettle.command;

import dawnkettle.conf.Configuration;
import dawnkettle.night.TellStopped;
import dawnkettle.store.Ledger;
import dawnkettle.trouble.Trouble;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
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

    @CommandLine.Option(names = "--again", description = "It dies, is started and dies again.")
    private boolean again;

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
            tell(conf, ledger);
        } catch (Trouble unusable) {
            spec.commandLine().getErr().println(unusable.getMessage());
            tellWithoutLedger(conf);
        }
        return Dawnkettle.DONE;
    }

    private void tell(Configuration conf, Ledger ledger) {
        TellStopped telling = new TellStopped(wiring.service(conf, ledger, (at, line) -> {}));
        spec.commandLine().getOut().println(again ? telling.diesAgain(unit) : telling.of(unit));
    }

    /** The ledger may be the very thing that it dies of: the mail is then tried once, from one that is thrown away. */
    private void tellWithoutLedger(Configuration conf) {
        Path file = null;
        try {
            file = Files.createTempDirectory("dawnkettle").resolve("ledger.db");
            try (Ledger ledger = Ledger.open(file)) {
                tell(conf, ledger);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } finally {
            if (file != null) delete(file);
        }
    }

    private static void delete(Path file) {
        try (Stream<Path> all = Files.walk(file.getParent())) {
            for (Path one : all.sorted(Comparator.reverseOrder()).toList()) Files.delete(one);
        } catch (IOException litterInACache) {
            // The folder for what passes is cleared away with the service.
        }
    }
}

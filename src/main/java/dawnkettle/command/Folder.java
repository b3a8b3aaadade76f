package dawnkettle.command;

import dawnkettle.conf.Configuration;
import dawnkettle.store.Ledger;
import dawnkettle.trouble.DeviceAway;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import picocli.CommandLine.Option;

/** Which shop, and which ledger. */
final class Folder {
    @Option(
            names = "--conf",
            paramLabel = "DIR",
            defaultValue = "${sys:dawnkettle.conf:-conf}",
            description = "Folder in which the owner wrote the shop down. Default: ${DEFAULT-VALUE}")
    private Path conf;

    @Option(names = "--ledger", paramLabel = "FILE", description = "The ledger. Default: the one that shop.toml names")
    private Path ledger;

    Path conf() {
        return Admission.toRead(conf);
    }

    /** Where the ledger lies. */
    Path file(Configuration read) {
        Path file = (ledger == null ? read.night().places().ledger() : ledger).toAbsolutePath();
        Admission.toWrite(file);
        return made(file);
    }

    /** The ledger, made with its folder where there is none yet. */
    Ledger ledger(Configuration read) {
        return Ledger.open(file(read));
    }

    private static Path made(Path file) {
        try {
            Files.createDirectories(file.getParent());
            return file;
        } catch (IOException e) {
            throw DeviceAway.clean(
                    "ledger " + file
                            + ": its folder can't be made; see that you may write there, or name another with --ledger",
                    e);
        }
    }
}

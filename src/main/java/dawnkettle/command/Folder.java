package dawnkettle.command;

import dawnkettle.conf.Configuration;
import dawnkettle.store.Ledger;
import java.nio.file.Path;
import picocli.CommandLine.Option;

/** Which shop, and which ledger. */
final class Folder {
    @Option(
            names = "--conf",
            paramLabel = "DIR",
            defaultValue = "conf",
            description = "Folder in which the owner wrote the shop down. Default: ${DEFAULT-VALUE}")
    private Path conf;

    @Option(names = "--ledger", paramLabel = "FILE", description = "The ledger. Default: the one that shop.toml names")
    private Path ledger;

    Path conf() {
        return conf;
    }

    Ledger ledger(Configuration read) {
        return Ledger.open(ledger == null ? read.night().places().ledger() : ledger);
    }
}

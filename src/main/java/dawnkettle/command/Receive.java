package dawnkettle.command;

import dawnkettle.conf.Configuration;
import dawnkettle.night.Office;
import dawnkettle.night.TakeWords;
import dawnkettle.store.Ledger;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Writes down what came in. */
@Command(
        name = "receive",
        mixinStandardHelpOptions = true,
        description = {
            "Write down what came in: MATERIAL, the supplier's LOT, QUANTITY, PRICE for all of it, and the DATE where it"
                    + " was not today.",
            "The same lot once more adds to it; a wrong quantity is put right with: record count MATERIAL LOT QUANTITY"
        },
        footer = {"", "Example: dawnkettle receive BEAN-YEL YEL-261201 1500kg 1620.00 2026-12-01"})
final class Receive implements Callable<Integer> {
    private final Wiring wiring;

    @Mixin
    private Folder folder;

    @Parameters(arity = "1..*", paramLabel = "WORD", description = "Material, lot, quantity, price, date.")
    private List<String> words;

    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec;

    Receive(Wiring wiring) {
        this.wiring = wiring;
    }

    @Override
    public Integer call() {
        Configuration conf = wiring.configuration(folder.conf());
        try (Ledger ledger = folder.ledger(conf)) {
            Office office = wiring.service(conf, ledger, (at, line) -> {});
            String told = ledger.inTransaction(() -> TakeWords.typed(office).receive(words));
            spec.commandLine().getOut().println(told);
        }
        return Dawnkettle.DONE;
    }
}

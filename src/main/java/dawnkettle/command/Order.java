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

/** Takes an order from the command line. */
@Command(
        name = "order",
        mixinStandardHelpOptions = true,
        description = "Take an order: CUSTOMER, PRODUCT and PACKS as often as needed, and the delivery date.",
        footer = {"", "Example: dawnkettle order C002 FIRM-400 24 MILK-1L 12 2026-12-05"})
final class Order implements Callable<Integer> {
    private final Wiring wiring;

    @Mixin
    private Folder folder;

    @Parameters(arity = "3..*", paramLabel = "WORD", description = "Customer, products with packs, delivery date.")
    private List<String> words;

    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec;

    Order(Wiring wiring) {
        this.wiring = wiring;
    }

    @Override
    public Integer call() {
        Configuration conf = wiring.configuration(folder.conf());
        try (Ledger ledger = folder.ledger(conf)) {
            Office office = wiring.service(conf, ledger, (when, line) -> {});
            String told = ledger.inTransaction(() -> TakeWords.typed(office).order(words));
            spec.commandLine().getOut().println(told);
        }
        return Dawnkettle.DONE;
    }
}

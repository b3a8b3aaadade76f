package dawnkettle.command;

import dawnkettle.conf.Configuration;
import dawnkettle.night.Forget;
import dawnkettle.shop.Customer;
import dawnkettle.store.Ledger;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Takes a customer's name and addresses out of what is kept, where the law asks for it. */
@Command(
        name = "erase",
        mixinStandardHelpOptions = true,
        description = {
            "Take a customer's name and addresses out of the mails and papers that are kept.",
            "What was made and who got it stays, by the customer's code. It can't be taken back."
        },
        footer = {"", "Example: dawnkettle erase C002 --yes"})
final class Erase implements Callable<Integer> {
    private final Wiring wiring;

    @Mixin
    private Folder folder;

    @Parameters(paramLabel = "CUSTOMER", description = "The customer's code.")
    private String code;

    @Option(names = "--yes", description = "Do it.")
    private boolean yes;

    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec;

    Erase(Wiring wiring) {
        this.wiring = wiring;
    }

    @Override
    public Integer call() {
        Configuration conf = wiring.configuration(folder.conf());
        Customer customer = conf.shop()
                .findCustomer(code)
                .orElseThrow(() -> new Dawnkettle.Refused("\"" + code + "\" is no customer's code; "
                        + "write it as in customers.csv, before you take the row out there"));
        if (!yes) throw new Dawnkettle.Refused("erase " + code + " can't be taken back; add --yes to do it");
        try (Ledger ledger = folder.ledger(conf)) {
            new Forget(wiring.service(conf, ledger, (at, line) -> {}))
                    .customer(customer)
                    .forEach(line -> spec.commandLine().getOut().println(line));
            return Dawnkettle.DONE;
        }
    }
}

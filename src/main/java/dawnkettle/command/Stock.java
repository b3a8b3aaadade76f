package dawnkettle.command;

import dawnkettle.conf.Configuration;
import dawnkettle.night.Office;
import dawnkettle.night.StoreBook;
import dawnkettle.stock.Quantity;
import dawnkettle.store.Ledger;
import java.io.PrintWriter;
import java.time.LocalDate;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Says what is in the house by lot, what to order by when, and how many containers each customer has. */
@Command(
        name = "stock",
        mixinStandardHelpOptions = true,
        description = "Say what is in the house by lot, and what to order by when, how much, and why.")
final class Stock implements Callable<Integer> {
    private final Wiring wiring;

    @Mixin
    private Folder folder;

    @Option(names = "--containers", description = "How many returnable containers each customer has, instead.")
    private boolean containers;

    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec;

    Stock(Wiring wiring) {
        this.wiring = wiring;
    }

    @Override
    public Integer call() {
        Configuration conf = wiring.configuration(folder.conf());
        try (Ledger ledger = folder.ledger(conf)) {
            Office office = wiring.service(conf, ledger, (when, line) -> {});
            LocalDate today = LocalDate.ofInstant(
                    office.clock().instant(), conf.shop().house().zone());
            StoreBook book = new StoreBook(office, conf.shop().calendar().next(today));
            PrintWriter out = spec.commandLine().getOut();
            if (containers) tellContainers(book, out);
            else tell(book, out);
            out.flush();
        }
        return Dawnkettle.DONE;
    }

    private static void tellContainers(StoreBook book, PrintWriter out) {
        out.println("Containers, by customer: out, back, by count, there");
        book.containers()
                .forEach(one -> out.println("  " + one.customer() + "  " + one.product() + "  " + one.out() + "  "
                        + one.back() + "  " + one.difference() + "  " + one.there()));
    }

    private static void tell(StoreBook book, PrintWriter out) {
        out.println("To order, the most urgent first");
        book.advice().forEach(line -> out.println("  " + line.said()));
        out.println("Bought lots, what must go first before the others");
        book.materials().holdings().stream()
                .filter(lot -> lot.left() > 0)
                .forEach(lot -> out.println("  " + lot.material() + "  " + lot.lot() + "  "
                        + RecordTold.text(new Quantity(lot.left(), lot.unit())) + "  came in " + lot.receivedOn()
                        + lot.bestBefore()
                                .map(day -> "  to be used until " + day)
                                .orElse("")));
        out.println("Packs in the cold room that are promised to nobody");
        book.packs()
                .forEach(lot -> out.println("  " + lot.product() + "  " + lot.lot() + "  " + lot.packs()
                        + (lot.packs() == 1 ? " pack" : " packs") + "  until " + lot.bestBefore()
                        + (lot.expected() ? "  expected, not counted" : "")));
    }
}

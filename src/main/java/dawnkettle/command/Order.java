package dawnkettle.command;

import dawnkettle.book.Admission;
import dawnkettle.book.OrderLine;
import dawnkettle.book.OrderNumber;
import dawnkettle.book.ReadOrderText;
import dawnkettle.conf.Configuration;
import dawnkettle.store.Ledger;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
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
        Clock clock = wiring.clock(conf);
        LocalDate today =
                LocalDate.ofInstant(clock.instant(), conf.shop().house().zone());
        ReadOrderText.Asked asked = ReadOrderText.read(words, new Admission(conf.shop(), today));
        try (Ledger ledger = folder.ledger(conf)) {
            OrderNumber number = ledger.orders().freeNumber(today);
            List<OrderLine> lines = lines(asked, number, clock.instant());
            ledger.inTransaction(() -> ledger.orders().add(lines));
            spec.commandLine()
                    .getOut()
                    .println("Order " + number + " is taken: " + lines.size() + " lines for " + asked.delivery()
                            + late(conf, ledger, lines));
        }
        return Dawnkettle.DONE;
    }

    private static String late(Configuration conf, Ledger ledger, List<OrderLine> lines) {
        var book = ledger.book(
                conf.shop(), conf.standing(), lines.get(0).deliveryDate().minusDays(7));
        boolean closed = lines.stream()
                .anyMatch(
                        line -> book.productionDate(line).filter(book::isClosed).isPresent());
        return closed ? ". The book of that day is closed: it counts as late, and is planned if there is room." : ".";
    }

    private static List<OrderLine> lines(ReadOrderText.Asked asked, OrderNumber number, Instant now) {
        List<OrderLine> lines = new ArrayList<>();
        for (ReadOrderText.Item item : asked.items())
            lines.add(new OrderLine(
                    number,
                    lines.size() + 1,
                    asked.customer(),
                    item.product(),
                    item.packs(),
                    asked.delivery(),
                    OrderLine.Source.COMMAND,
                    "command line",
                    now));
        return lines;
    }
}

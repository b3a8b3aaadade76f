package dawnkettle.command;

import dawnkettle.conf.Configuration;
import dawnkettle.night.FindLots;
import dawnkettle.night.Office;
import dawnkettle.stock.Desk;
import dawnkettle.stock.ReadFact;
import dawnkettle.stock.Recorded;
import dawnkettle.store.Ledger;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Writes down what happened; what was written before stays, and the later record counts. */
@Command(
        name = "record",
        mixinStandardHelpOptions = true,
        description = {
            "Write down what happened:",
            "  yield LOT KG                        what a batch gave, before trimming",
            "  cooked LOT CELSIUS MINUTES          what it reached in the cooker, and for how long",
            "  cooled LOT CELSIUS                  what it had come down to",
            "  lost LOT WHY                        the whole batch; not taken back",
            "  lost LOT PRODUCT PACKS WHY          some packs of it",
            "  count LOT PRODUCT PACKS             in the cold room, once the day's vans are gone",
            "  count MATERIAL LOT QUANTITY         what is left of a supplier's lot",
            "  sold LOT PRODUCT PACKS              to somebody who had not ordered",
            "  returned CUSTOMER PRODUCT COUNT WHY goods; with the one word \"containers\" for WHY, empties",
            "Nothing is changed: the last yield, temperature or count of a lot counts. What was sold or lost adds up, and",
            "a count puts it right."
        },
        footer = {"", "Example: dawnkettle record yield 261204-FI01 212.4 --at 2026-12-04T06:10"})
final class Record implements Callable<Integer> {
    private final Wiring wiring;

    @Mixin
    private Folder folder;

    @Option(names = "--at", paramLabel = "TIME", description = "When it happened, local time. Default: now")
    private LocalDateTime at;

    @Parameters(arity = "1..*", paramLabel = "WORD", description = "What happened, as above.")
    private List<String> words;

    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec;

    Record(Wiring wiring) {
        this.wiring = wiring;
    }

    @Override
    public Integer call() {
        Configuration conf = wiring.configuration(folder.conf());
        try (Ledger ledger = folder.ledger(conf)) {
            Office office = wiring.service(conf, ledger, (when, line) -> {});
            Recorded recorded = ledger.inTransaction(() -> keep(office));
            spec.commandLine().getOut().println(new RecordTold(conf.shop()).of(recorded));
        }
        return Dawnkettle.DONE;
    }

    private Recorded keep(Office office) {
        Desk desk = new Desk(office.shop(), office.clock().instant(), new FindLots(office).of(words));
        Recorded recorded = ReadFact.read(words, Optional.ofNullable(at), desk);
        office.ledger().records().add(recorded);
        return recorded;
    }
}

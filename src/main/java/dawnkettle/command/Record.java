package dawnkettle.command;

import dawnkettle.conf.Configuration;
import dawnkettle.night.Office;
import dawnkettle.night.TakeWords;
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
            "  soak TUB ready|not ready            how the beans in it felt",
            "  soaked TUB LOT KG [DAY]             beans of a supplier's lot that went into it, for a production day",
            "  packed LOT PRODUCT PACKS            what was filled from it",
            "  waste LOT KG WHY                    thrown away before packing",
            "  lost LOT WHY · found LOT WHY        the whole batch · it is there again",
            "  lost LOT PRODUCT PACKS WHY          some packs of it",
            "  lost MATERIAL LOT QUANTITY WHY · used …    some of a supplier's lot",
            "  count LOT PRODUCT PACKS [WHY]       in the cold room, once the day's vans are gone",
            "  count MATERIAL LOT QUANTITY [WHY]   what is left of a supplier's lot",
            "  sold LOT PRODUCT PACKS              to somebody who had not ordered",
            "  returned CUSTOMER PRODUCT COUNT [of LOT] WHY    goods; with the one word \"containers\" for WHY, empties",
            "  destroyed LOT PRODUCT PACKS WHY     those that came back first",
            "  containers CUSTOMER PRODUCT out|back|count COUNT [WHY]",
            "  loaded ROUTE [DAY]                  a van, with what was planned for it",
            "  short CUSTOMER PRODUCT COUNT [of LOT] WHY       goods that never got there, for a credit",
            "  hold LOT WHY · release LOT by NAME WHY    nothing of it leaves until a person lets it go; a supplier's lot",
            "                                      holds all that was made with it",
            "  away HANDS FROM UNTIL [DAY] [WHY]   who is not there, as 1 05:00 09:00; the day is planned again without",
            "  down STATION FROM [UNTIL] [DAY] [WHY] · up STATION [TIME]    it stands · it works again; now and end are times",
            "  price PRODUCT AMOUNT from DATE [LIST]   what a pack costs from a day on",
            "  hours DAY HOURS                     of all hands together, as 41.5; else the scheduled ones are paid",
            "  cancel NUMBER WHY                   an earlier record was wrong and counts no more",
            "Nothing is changed: the last yield, temperature or count of a lot counts. What was sold or lost adds up, and",
            "a count puts it right. A cook or a cooling out of the recipe's limits holds the lot at once."
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
            String told = ledger.inTransaction(() -> TakeWords.typed(office).record(words, Optional.ofNullable(at)));
            spec.commandLine().getOut().println(told);
        }
        return Dawnkettle.DONE;
    }
}

package dawnkettle.command;

import static java.nio.charset.StandardCharsets.UTF_8;

import dawnkettle.conf.Configuration;
import dawnkettle.mail.TraceCsv;
import dawnkettle.night.Office;
import dawnkettle.night.Tracing;
import dawnkettle.sheet.Sheet;
import dawnkettle.sheet.TraceSheet;
import dawnkettle.stock.RecallPage;
import dawnkettle.store.Ledger;
import dawnkettle.trouble.DeviceAway;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Says where a lot came from and where all of it went. */
@Command(
        name = "trace",
        mixinStandardHelpOptions = true,
        description = {
            "Say what a lot was made of and where all of it went: beans, coagulant and packaging; batches, routes, customers",
            "and quantities; what is still here. LOT is one of ours or a supplier's."
        },
        footer = {
            "",
            "Examples: dawnkettle trace 261204-FI01        dawnkettle trace YEL-261201 --out recall",
            "          dawnkettle trace --customer C002 --day 2026-12-04"
        })
final class Trace implements Callable<Integer> {
    private final Wiring wiring;

    @Mixin
    private Folder folder;

    @Parameters(arity = "0..1", paramLabel = "LOT", description = "A lot of ours, or a supplier's.")
    private String lot;

    @Option(names = "--customer", paramLabel = "CODE", description = "Instead: all lots that a customer got …")
    private String customer;

    @Option(names = "--day", paramLabel = "DATE", description = "… on this day of delivery.")
    private LocalDate day;

    @Option(names = "--out", paramLabel = "DIR", description = "Leave it as text, PDF and CSV there as well.")
    private Path out;

    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec;

    Trace(Wiring wiring) {
        this.wiring = wiring;
    }

    @Override
    public Integer call() {
        boolean byCustomer = lot == null && customer != null && day != null;
        boolean byLot = lot != null && customer == null && day == null;
        if (byCustomer == byLot)
            throw new Dawnkettle.Refused("trace: name one thing; write a LOT, or both --customer and --day");
        Configuration conf = wiring.configuration(folder.conf());
        try (Ledger ledger = folder.ledger(conf)) {
            Office office = wiring.service(conf, ledger, (when, line) -> {});
            Tracing tracing = new Tracing(office);
            RecallPage page = byLot ? tracing.ofLot(lot) : tracing.ofCustomer(customer, day);
            PrintWriter told = spec.commandLine().getOut();
            told.print(page.text());
            if (out != null) keep(page, office, told);
            told.flush();
            return page.reconciliation().isWhole() ? Dawnkettle.DONE : Dawnkettle.LOOK;
        }
    }

    private void keep(RecallPage page, Office office, PrintWriter told) {
        Sheet sheet = TraceSheet.of(
                page, office.edges().paper().style(), office.clock().instant());
        try {
            Files.createDirectories(out);
            Files.writeString(out.resolve(sheet.name() + ".txt"), page.text());
            Files.write(out.resolve(sheet.name() + ".csv"), TraceCsv.of(page).getBytes(UTF_8));
            Files.write(out.resolve(sheet.name() + ".pdf"), wiring.drawing().draw(sheet));
        } catch (IOException e) {
            throw DeviceAway.clean("the folder \"" + out + "\" can't be written; name another with --out", e);
        }
        told.println("\nLeft as " + out.resolve(sheet.name()) + ".txt, .csv and .pdf.");
    }
}

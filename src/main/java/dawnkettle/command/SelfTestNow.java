package dawnkettle.command;

import dawnkettle.conf.Configuration;
import dawnkettle.night.Office;
import dawnkettle.night.SelfTest;
import dawnkettle.store.Ledger;
import java.io.PrintWriter;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Asks everything that the night will need, and says what it answered, a line each. */
@Command(
        name = "selftest",
        mixinStandardHelpOptions = true,
        description =
                "Ask printers, mail, disk, clock, copies and ledger how they are. Exit status 1 where one is not well.")
final class SelfTestNow implements Callable<Integer> {
    private final Wiring wiring;

    @Mixin
    private Folder folder;

    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec;

    SelfTestNow(Wiring wiring) {
        this.wiring = wiring;
    }

    @Override
    public Integer call() {
        Configuration conf = wiring.configuration(folder.conf());
        try (Ledger ledger = folder.ledger(conf)) {
            Office office = wiring.service(conf, ledger, (at, line) -> {}).asking(ConfProbe.of(wiring, folder.conf()));
            List<SelfTest.Finding> found = new SelfTest(office)
                    .look(office.timetable().closingFrom(office.clock().instant()));
            return tell(found);
        }
    }

    private int tell(List<SelfTest.Finding> found) {
        PrintWriter out = spec.commandLine().getOut();
        for (SelfTest.Finding one : found) {
            out.println((one.isWell() ? "well  " : "LOOK  ") + one.what() + ": " + one.said());
            if (!one.todo().isEmpty()) out.println("      " + one.todo());
        }
        long wrong = found.stream().filter(one -> !one.isWell()).count();
        out.println(
                wrong == 0
                        ? "All is well for the night."
                        : wrong + (wrong == 1 ? " thing" : " things") + " to look at.");
        out.flush();
        return wrong == 0 ? Dawnkettle.DONE : Dawnkettle.LOOK;
    }
}

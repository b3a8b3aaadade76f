package dawnkettle.command;

import dawnkettle.conf.Configuration;
import dawnkettle.night.BrokenRuns;
import dawnkettle.night.ClockGate;
import dawnkettle.night.ClockWatch;
import dawnkettle.night.DiskWatch;
import dawnkettle.night.LastWords;
import dawnkettle.night.Night;
import dawnkettle.night.Office;
import dawnkettle.night.Starts;
import dawnkettle.store.Ledger;
import dawnkettle.store.LedgerHold;
import dawnkettle.trouble.BadFile;
import dawnkettle.trouble.DeviceAway;
import dawnkettle.trouble.DiskAway;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** The service: it wakes every minute and does what the ledger says is due. */
@Command(
        name = "run",
        mixinStandardHelpOptions = true,
        description =
                "Run the service until it is told to stop. Exit status 78 where conf/ is wrong, 74 where the disk fails.")
final class Run implements Callable<Integer> {
    /** By which the init system knows that starting again is of no use (EX_CONFIG of sysexits.h, from memory). */
    private static final int CONF_IS_WRONG = 78;

    /** The disk failed: starting again is the only thing to try (EX_IOERR of sysexits.h, from memory). */
    static final int DISK_IS_GONE = 74;

    private final Wiring wiring;

    @Mixin
    private Folder folder;

    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec;

    Run(Wiring wiring) {
        this.wiring = wiring;
    }

    @Override
    public Integer call() {
        Configuration conf;
        try {
            conf = wiring.configuration(folder.conf());
        } catch (BadFile bad) {
            spec.commandLine().getErr().println(bad.getMessage());
            return CONF_IS_WRONG;
        }
        Path file = folder.file(conf);
        try (LedgerHold hold = LedgerHold.take(file).orElseThrow(() -> isHeld(file));
                Ledger ledger = folder.ledger(conf)) {
            return serve(conf, ledger, hold);
        } catch (DiskAway gone) {
            spec.commandLine().getErr().println(gone.getMessage());
            return DISK_IS_GONE;
        }
    }

    private static DeviceAway isHeld(Path file) {
        return DeviceAway.clean(
                "ledger " + file
                        + ": another service is at work on it; stop that one first (systemctl stop dawnkettle)",
                null);
    }

    /** @param hold which is kept as long as the service runs */
    private int serve(Configuration conf, Ledger ledger, LedgerHold hold) {
        Office office = wiring.service(
                        conf, ledger, (at, line) -> spec.commandLine().getOut().println(line))
                .asking(ConfProbe.of(wiring, folder.conf()));
        Starts starts = new Starts(office);
        starts.begun();
        new ClockGate(office).lookBack();
        new BrokenRuns(office).interrupted();
        ledger.outbox().interrupted(office.clock().instant());
        Watchful watchful = new Watchful(office, ledger);
        try {
            wiring.serve(watchful::tick);
        } catch (DiskAway gone) {
            // Only where it ran before: a machine that starts again and again must not write each time.
            if (watchful.hasTicked()) new LastWords(office).say(gone);
            throw gone;
        }
        starts.ended();
        return Dawnkettle.DONE;
    }

    /** A tick between two looks at clock and disk; what the disk refuses for want of room is done at the next. */
    private static final class Watchful {
        private final Office office;
        private final Ledger ledger;
        private final Night night;
        private final ClockWatch clock;
        private final DiskWatch disk;
        private boolean ticked;

        Watchful(Office office, Ledger ledger) {
            this.office = office;
            this.ledger = ledger;
            this.night = new Night(office);
            this.clock = new ClockWatch(office, System::nanoTime);
            this.disk = new DiskWatch(office);
        }

        boolean hasTicked() {
            return ticked;
        }

        void tick() {
            try {
                disk.look();
                clock.look();
                night.tick();
                ticked = true;
            } catch (DeviceAway away) {
                office.story().tell(office.clock().instant(), away.getMessage());
                disk.look();
            }
            ledger.gone().ifPresent(gone -> {
                throw gone;
            });
        }
    }
}

package dawnkettle;

import dawnkettle.command.Wiring;
import dawnkettle.conf.Configuration;
import dawnkettle.night.Office;
import dawnkettle.night.Story;
import dawnkettle.store.Ledger;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Optional;

/** The door as it is, but for the clock: the commands believe that it is the time that a test says. */
record SetClock(Main main, Clock clock) implements Wiring {
    @Override
    public Clock clock(Configuration conf) {
        return clock;
    }

    @Override
    public Path shopFolder(Optional<Path> named) {
        return main.shopFolder(named);
    }

    @Override
    public Configuration configuration(Path folder) {
        return main.configuration(folder);
    }

    @Override
    public Office rehearsal(Configuration conf, Stage stage) {
        return main.rehearsal(conf, stage);
    }

    @Override
    public Office service(Configuration conf, Ledger ledger, Story story) {
        Office office = main.service(conf, ledger, story);
        return new Office(office.papers(), ledger, clock, office.edges(), story);
    }

    @Override
    public void loadHistory(Configuration conf, Path confFolder, Ledger ledger) {
        main.loadHistory(conf, confFolder, ledger);
    }

    @Override
    public dawnkettle.sheet.SheetDrawing drawing() {
        return main.drawing();
    }

    @Override
    public void serve(Runnable tick) {
        main.serve(tick);
    }
}

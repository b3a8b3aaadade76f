package dawnkettle.command;

import dawnkettle.conf.Configuration;
import dawnkettle.night.Office;
import dawnkettle.night.Story;
import dawnkettle.night.Thermometer;
import dawnkettle.sheet.SheetDrawing;
import dawnkettle.store.Ledger;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Optional;

/** What the commands need built; the door builds it. */
public interface Wiring {
    /** The machine's clock, in the given shop's zone. */
    Clock clock(Configuration conf);

    /** The folder that was named, or {@code conf}, or, where there is none, the shop that comes along. */
    Path shopFolder(Optional<Path> named);

    /**
     * Reads {@code conf/} and the label designs beside it, and looks at both together.
     *
     * @throws dawnkettle.trouble.BadFile with every problem of every file
     */
    Configuration configuration(Path folder);

    /** An office whose doors lead into {@code folder}. */
    Office rehearsal(Configuration conf, Stage stage);

    /** An office whose doors lead to the devices that {@code conf/} names. */
    Office service(Configuration conf, Ledger ledger, Story story);

    /** Invented history for a rehearsal, where {@code conf/} has some. */
    void loadHistory(Configuration conf, Path confFolder, Ledger ledger);

    /** Draws sheets as they are printed. */
    SheetDrawing drawing();

    /**
     * Calls {@code tick} every minute until the service is told to stop.
     *
     * @throws dawnkettle.trouble.DiskAway as soon as {@code tick} does
     */
    void serve(Runnable tick);

    /** Where a rehearsal plays. */
    record Stage(Path conf, Path folder, Ledger ledger, Clock clock, Story story, Optional<Thermometer> thermometer) {}
}

package dawnkettle.night;

import dawnkettle.trouble.DeviceAway;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;

/** Copies the ledger, proves that the copy opens, and only then clears old copies away. */
final class BackUp implements Work {
    private final Office office;

    BackUp(Office office) {
        this.office = office;
    }

    @Override
    public String run(LocalDate productionDate) {
        Path folder = office.papers().settings().places().backups();
        Path copy = folder.resolve("ledger-" + productionDate + ".db");
        try {
            Files.createDirectories(folder);
            Files.deleteIfExists(copy);
        } catch (IOException e) {
            throw DeviceAway.clean(
                    "the folder for copies \"" + folder + "\" can't be written; see that it is there", e);
        }
        office.ledger().copyTo(copy);
        return "the ledger is copied and the copy was opened" + clear(folder, copy);
    }

    /** A copy that stays too long harms nobody: the night's own copy is made, and that is what counts. */
    private static String clear(Path folder, Path made) {
        try {
            int cleared = new OldCopies(folder).clear(made);
            return cleared == 0 ? "" : ", " + cleared + (cleared == 1 ? " old copy" : " old copies") + " cleared away";
        } catch (IOException | UncheckedIOException e) {
            return "; old copies in \"" + folder + "\" can't be cleared away (" + e.getMessage()
                    + "), see who owns them";
        }
    }
}

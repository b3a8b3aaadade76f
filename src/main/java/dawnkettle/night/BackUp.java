package dawnkettle.night;

import dawnkettle.trouble.DeviceAway;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;

/** Copies the ledger and proves that the copy opens. */
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
        return "the ledger is copied and the copy was opened";
    }
}

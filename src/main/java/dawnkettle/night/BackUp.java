package dawnkettle.night;

import dawnkettle.store.LedgerCopy;
import dawnkettle.store.LockedCopy;
import dawnkettle.trouble.DeviceAway;
import dawnkettle.trouble.Trouble;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** Copies the ledger, proves that the copy opens, gives it to a second folder, and only then clears old copies away. */
final class BackUp implements Work {
    private final Office office;

    BackUp(Office office) {
        this.office = office;
    }

    @Override
    public String run(LocalDate productionDate) {
        Copies copies = new Copies(office.papers().settings().places().backups());
        office.ledger().chain().add(office.now());
        LedgerCopy made = made(copies, productionDate);
        List<String> changed = made.changed(productionDate);
        office.ledger().checkpoint();
        return "the ledger is copied and the copy was opened" + told(changed) + clear(copies.folder(), made.file())
                + second(made, productionDate)
                + new Forget(office).run();
    }

    /** The copy is kept all the same: there is no better one. */
    private static String told(List<String> changed) {
        return changed.isEmpty() ? "" : "; LOOK: " + String.join("; ", changed);
    }

    /** The copy of that day that may be there already goes only when the new one is whole. */
    private LedgerCopy made(Copies copies, LocalDate productionDate) {
        Path copy = copies.named(productionDate);
        Path part = copy.resolveSibling(copy.getFileName() + ".part");
        try {
            Files.createDirectories(copies.folder());
            Files.deleteIfExists(part);
            refuseWithoutRoom(copies.folder());
        } catch (IOException e) {
            throw DeviceAway.clean(
                    "the folder for copies \"" + copies.folder() + "\" can't be written; see that it is there", e);
        }
        office.ledger().copyTo(part).seal();
        return new LedgerCopy(part).movedTo(copy);
    }

    /** A copy that fills the disk would stop the night that it is made for. */
    private void refuseWithoutRoom(Path folder) throws IOException {
        long wanted = Files.size(office.ledger().file());
        if (Files.getFileStore(folder).getUsableSpace() > 2 * wanted) return;
        throw DeviceAway.clean(
                "there is no room in \"" + folder + "\" for a copy of " + wanted / 1_000_000 + " MB; make room", null);
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

    /** A stick that was pulled out must not fail the copy that is there; the self-test says that it is missing. */
    private String second(LedgerCopy made, LocalDate productionDate) {
        NightSettings.Copies settings = office.papers().settings().care().copies();
        Optional<Path> folder = settings.second();
        if (folder.isEmpty()) return "";
        if (!Files.isDirectory(folder.get()))
            return "; no second copy: folder \"" + folder.get() + "\" is not there, plug it in";
        Path copy = new Copies(folder.get()).named(productionDate);
        try {
            Path second = settings.key().isPresent()
                    ? locked(made, copy, settings.key().get())
                    : open(made, copy);
            return ", also in \"" + folder.get() + "\"" + clear(folder.get(), second);
        } catch (IOException | Trouble e) {
            return "; no second copy: " + e.getMessage();
        }
    }

    private static Path open(LedgerCopy made, Path copy) {
        return made.copiedTo(copy).file();
    }

    private static Path locked(LedgerCopy made, Path copy, Path keyFile) throws IOException {
        Path locked = copy.resolveSibling(copy.getFileName() + Copies.LOCKED);
        new LockedCopy(locked).lock(made.file(), LockedCopy.key(keyFile));
        return locked;
    }
}

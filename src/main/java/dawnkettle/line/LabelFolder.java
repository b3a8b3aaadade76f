package dawnkettle.line;

import dawnkettle.label.Confirmed;
import dawnkettle.label.Dots;
import dawnkettle.label.LabelBytes;
import dawnkettle.label.LabelJournal;
import dawnkettle.label.LabelPrinter;
import dawnkettle.label.LabelRun;
import dawnkettle.label.Preview;
import dawnkettle.label.PrinterProfile;
import dawnkettle.trouble.DeviceAway;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Optional;

/** A rehearsal's label printer: a picture and the bytes of every run, in a folder. */
public final class LabelFolder implements LabelPrinter {
    private final Path folder;
    private final LabelBytes labels;
    private final Preview preview;

    /** @param group most labels that a group would have on the line, so that the bytes are the same */
    public LabelFolder(Path folder, PrinterProfile profile, Preview preview, int group) {
        this.folder = folder;
        this.labels = new LabelBytes(profile, group);
        this.preview = preview;
    }

    @Override
    public void print(LabelRun run, LabelJournal journal) {
        Confirmed all = new Confirmed(run.lot(), run.product(), run.first(), run.last());
        byte[] bytes = labels.of(run);
        boolean isCounted = run.last() >= run.first();
        if (isCounted) journal.intended(all);
        Optional<Dots> shown = run.shown();
        if (shown.isPresent()) write(name(run) + ".png", preview.png(shown.get()));
        write(name(run) + ".bin", bytes);
        if (isCounted) journal.confirmed(all);
    }

    private static String name(LabelRun run) {
        String name = (run.lot() + "-" + run.product()).replaceAll("[^A-Za-z0-9._-]", "_");
        if (run.last() < run.first()) return name + "-slip";
        if (run.again()) return name + "-copy-" + run.first() + "-to-" + run.last();
        return run.first() == 1 ? name : name + "-from-" + run.first();
    }

    private void write(String name, byte[] bytes) {
        try {
            Files.createDirectories(folder);
            Path part = folder.resolve(name + ".part");
            Files.write(part, bytes);
            Files.move(part, folder.resolve(name), StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } catch (IOException e) {
            throw DeviceAway.clean("label folder \"" + folder + "\" cannot be written; see that the disk has room", e);
        }
    }
}

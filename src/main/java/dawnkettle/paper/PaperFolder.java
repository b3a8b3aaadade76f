package dawnkettle.paper;

import dawnkettle.sheet.Printer;
import dawnkettle.sheet.Sheet;
import dawnkettle.sheet.SheetDrawing;
import dawnkettle.trouble.DeviceAway;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/** The out-tray: every sheet as a PDF in a folder, whole or not at all. */
public final class PaperFolder implements Printer {
    private final Path folder;
    private final SheetDrawing drawing;

    public PaperFolder(Path folder, SheetDrawing drawing) {
        this.folder = folder;
        this.drawing = drawing;
    }

    @Override
    public void print(Sheet sheet) {
        Path file = folder.resolve(sheet.name() + ".pdf");
        try {
            put(file, drawing.draw(sheet));
        } catch (IOException e) {
            throw DeviceAway.clean(
                    "out-tray: sheet \"" + sheet.name() + "\" could not be written to \"" + file
                            + "\"; see that the folder can be written and the disk has room",
                    e);
        }
    }

    /** Beside it, onto the disk, then into its place: a reader never sees half a sheet, nor does a power cut leave one. */
    private void put(Path file, byte[] pdf) throws IOException {
        Files.createDirectories(folder);
        Path beside = Files.createTempFile(folder, "." + file.getFileName(), ".part");
        try {
            try (FileChannel channel = FileChannel.open(beside, StandardOpenOption.WRITE)) {
                ByteBuffer bytes = ByteBuffer.wrap(pdf);
                while (bytes.hasRemaining()) channel.write(bytes);
                channel.force(true);
            }
            Files.move(beside, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } finally {
            Files.deleteIfExists(beside);
        }
        try (FileChannel directory = FileChannel.open(folder, StandardOpenOption.READ)) {
            directory.force(true);
        }
    }
}

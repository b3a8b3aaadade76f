package dawnkettle.post;

import dawnkettle.mail.Mail;
import dawnkettle.mail.Post;
import dawnkettle.trouble.DeviceAway;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.time.Instant;

/** Leaves each mail as a file in a folder, whole or not at all. */
public final class PostFolder implements Post {
    private final Path folder;
    private final MimeForm form;

    public PostFolder(Path folder, MimeForm form) {
        this.folder = folder;
        this.form = form;
    }

    @Override
    public void send(Mail mail, Instant date) {
        byte[] message = form.bytes(mail, date);
        Path file = folder.resolve(mail.id() + ".eml");
        Path part = folder.resolve(mail.id() + ".eml.part");
        try {
            Files.createDirectories(folder);
            write(part, message);
            Files.move(part, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } catch (IOException e) {
            throw DeviceAway.clean(
                    "mail " + mail.id() + ": could not be written to \"" + folder
                            + "\"; see that the folder can be written to and that the disk has room",
                    e);
        }
    }

    private static void write(Path file, byte[] bytes) throws IOException {
        try (FileChannel channel = FileChannel.open(
                file, StandardOpenOption.CREATE, StandardOpenOption.TRUNCATE_EXISTING, StandardOpenOption.WRITE)) {
            ByteBuffer rest = ByteBuffer.wrap(bytes);
            while (rest.hasRemaining()) channel.write(rest);
            channel.force(true);
        }
    }
}

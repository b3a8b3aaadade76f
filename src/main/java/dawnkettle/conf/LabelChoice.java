package dawnkettle.conf;

import dawnkettle.line.LineSettings;
import java.nio.file.Path;

/**
 * What the owner chose for case labels.
 *
 * @param folder where the label designs lie, and below it in {@code printers} the printer profiles
 * @param design label design of products that name none
 * @param line the line to the label printer, with the name of its profile; its device is empty where labels only go to
 *     the out-tray
 */
public record LabelChoice(Path folder, String design, LineSettings line) {
    /** Name of the printer profile. */
    public String profile() {
        return line.profile();
    }

    /** Bits per second on the line. */
    public int baud() {
        return line.baud();
    }
}

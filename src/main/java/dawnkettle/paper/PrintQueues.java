package dawnkettle.paper;

import dawnkettle.sheet.Printer;
import dawnkettle.sheet.Sheet;
import dawnkettle.sheet.SheetDrawing;
import dawnkettle.trouble.DeviceAway;
import java.net.URI;
import java.util.HashMap;
import java.util.Map;

/** The printers of the shop: each kind of sheet goes to its own, or to the one that all others go to. */
public final class PrintQueues implements Printer {
    private final PaperSettings settings;
    private final SheetDrawing drawing;
    private final Map<URI, PrintQueue> queues = new HashMap<>();

    public PrintQueues(PaperSettings settings, SheetDrawing drawing) {
        this.settings = settings;
        this.drawing = drawing;
    }

    /** A kind for which no printer is named stays in the out-tray. */
    @Override
    public void print(Sheet sheet) {
        settings.queueOf(sheet.kind().word())
                .ifPresent(
                        address -> queues.computeIfAbsent(address, this::queue).print(sheet));
    }

    /**
     * Asks the printer of every queue how it is.
     *
     * @return what they say, in words
     * @throws DeviceAway clean, where one does not answer or stands still
     */
    public String answers() {
        for (URI address : settings.addresses()) {
            IppQueue queue = new IppQueue(address, settings.patience());
            PrinterReport report = queue.printer();
            if (!report.answers())
                throw DeviceAway.clean(
                        "print queue " + queue.shown() + " does not answer; switch the printer on, look at its cable",
                        null);
            if (report.standsStill())
                throw DeviceAway.clean(
                        "print queue " + queue.shown() + " stands still" + report.told() + "; go and look at it", null);
        }
        return "answers";
    }

    private PrintQueue queue(URI address) {
        return new PrintQueue(address, settings, drawing);
    }
}

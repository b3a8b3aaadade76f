package dawnkettle.paper;

import dawnkettle.sheet.Printer;
import dawnkettle.sheet.Sheet;
import dawnkettle.sheet.SheetDrawing;
import dawnkettle.trouble.DeviceAway;
import java.io.IOException;
import java.net.ConnectException;
import java.net.URI;
import java.net.http.HttpConnectTimeoutException;
import java.util.Locale;
import java.util.OptionalInt;

/** A print queue or printer that is spoken to by IPP; a job is followed to its end, up to our own deadline. */
final class PrintQueue implements Printer {
    private static final String BROKE_OFF = "broke off while taking it; look in the tray before it is printed again";

    private final PaperSettings settings;
    private final SheetDrawing drawing;
    private final IppQueue queue;

    PrintQueue(URI address, PaperSettings settings, SheetDrawing drawing) {
        this.settings = settings;
        this.drawing = drawing;
        this.queue = new IppQueue(address, settings.patience());
    }

    @Override
    public void print(Sheet sheet) {
        if (settings.copiesOf(sheet.kind().word()) < 1) return;
        byte[] pdf = drawing.draw(sheet);
        JobTicket ticket = JobTicket.of(sheet, settings, pdf);
        try {
            queue.clearGhosts(ticket);
            new FollowedJob(queue, ticket, hand(ticket, pdf), settings.patience()).toItsEnd();
        } catch (DeviceAway away) {
            String said = "print queue " + queue.shown() + ", sheet \"" + sheet.name() + "\": " + away.getMessage();
            throw away.isAmbiguous() ? DeviceAway.ambiguous(said, away) : DeviceAway.clean(said, away);
        }
    }

    /** Hands the sheet over and returns the number of its job. */
    private int hand(JobTicket ticket, byte[] pdf) {
        IppAnswer answer;
        try {
            answer = queue.hand(ticket, pdf);
        } catch (ConnectException | HttpConnectTimeoutException | IppLine.Refused e) {
            throw DeviceAway.clean(
                    "does not take it (" + reason(e) + "); switch the printer on or look at the queue", e);
        } catch (IOException e) {
            // Its number was lost, perhaps not the job: then it is followed as any other.
            return queue.find(ticket).orElseThrow(() -> DeviceAway.ambiguous(BROKE_OFF, e));
        }
        if (!answer.wentWell())
            throw DeviceAway.clean(
                    String.format(
                            Locale.ROOT,
                            "refused it with status 0x%04x %s; look at the queue's settings",
                            answer.status(),
                            String.join(" ", answer.words("status-message"))),
                    null);
        OptionalInt job = answer.number("job-id");
        return job.orElseThrow(() ->
                DeviceAway.ambiguous("took it but named no job; look in the tray before it is printed again", null));
    }

    private static String reason(IOException e) {
        return e.getMessage() == null ? "no connection" : e.getMessage();
    }
}

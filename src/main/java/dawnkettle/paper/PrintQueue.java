package dawnkettle.paper;

import dawnkettle.sheet.Printer;
import dawnkettle.sheet.Sheet;
import dawnkettle.sheet.SheetDrawing;
import dawnkettle.trouble.DeviceAway;
import java.io.IOException;
import java.net.ConnectException;
import java.net.URI;
import java.net.http.HttpConnectTimeoutException;
import java.time.Duration;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;

/** A print queue or printer that is spoken to by IPP; a job is followed to its end, up to our own deadline. */
public final class PrintQueue implements Printer {
    private final PaperSettings settings;
    private final SheetDrawing drawing;
    private final IppLine line;
    private final Duration pause;

    public PrintQueue(PaperSettings settings, SheetDrawing drawing) {
        this(settings, drawing, Duration.ofSeconds(2));
    }

    /** @param pause between two questions after a job */
    PrintQueue(PaperSettings settings, SheetDrawing drawing, Duration pause) {
        this.settings = settings;
        this.drawing = drawing;
        this.pause = pause;
        URI queue = settings.queue().orElseThrow(() -> new IllegalArgumentException("a print queue needs an address"));
        this.line = new IppLine(queue, settings.patience());
    }

    @Override
    public void print(Sheet sheet) {
        int copies = settings.copies().getOrDefault(sheet.kind().word(), 1);
        if (copies < 1) return;
        int job = hand(sheet, copies);
        follow(sheet, job);
    }

    /** Hands the sheet over and returns the number of its job. */
    private int hand(Sheet sheet, int copies) {
        byte[] pdf = drawing.draw(sheet);
        IppAnswer answer;
        try {
            answer = line.ask(IppRequest.print(line.printer(), sheet.imprint().title(), copies, pdf));
        } catch (ConnectException | HttpConnectTimeoutException | IppLine.Refused e) {
            throw DeviceAway.clean(
                    said(sheet, "does not take it (" + reason(e) + "); switch the printer on or look at the queue"), e);
        } catch (IOException e) {
            throw DeviceAway.ambiguous(
                    said(sheet, "broke off while taking it; look in the tray before it is printed again"), e);
        }
        if (!answer.wentWell())
            throw DeviceAway.clean(
                    said(
                            sheet,
                            String.format(
                                    Locale.ROOT,
                                    "refused it with status 0x%04x %s; look at the queue's settings",
                                    answer.status(),
                                    String.join(" ", answer.words("status-message")))),
                    null);
        OptionalInt job = answer.number("job-id");
        if (job.isEmpty())
            throw DeviceAway.ambiguous(
                    said(sheet, "took it but named no job; look in the tray before it is printed again"), null);
        return job.getAsInt();
    }

    private void follow(Sheet sheet, int job) {
        long deadline = System.nanoTime() + settings.patience().toNanos();
        JobState last = JobState.UNKNOWN;
        while (System.nanoTime() < deadline) {
            last = state(job).orElse(last);
            if (last == JobState.COMPLETED) return;
            if (last.isOver())
                throw DeviceAway.ambiguous(
                        said(
                                sheet,
                                "ended the job as " + last.word() + "; look in the tray before it is printed again"),
                        null);
            rest(sheet);
        }
        giveUp(sheet, job, last);
    }

    private Optional<JobState> state(int job) {
        try {
            IppAnswer answer = line.ask(IppRequest.aboutJob(IppRequest.GET_JOB_ATTRIBUTES, line.printer(), job));
            if (!answer.wentWell()) return Optional.empty();
            return answer.number("job-state").stream().mapToObj(JobState::of).findFirst();
        } catch (IOException e) {
            return Optional.empty(); // It may come back before the deadline; the job is not lost by one lost answer.
        }
    }

    /** A job that stays in the queue would come out hours later, with yesterday's numbers on it: take it back. */
    private void giveUp(Sheet sheet, int job, JobState last) {
        String why = reasons();
        JobState before = state(job).orElse(last);
        boolean takenBack = cancelled(job);
        if (before == JobState.COMPLETED || state(job).orElse(before) == JobState.COMPLETED) return;
        String waited =
                "was still " + before.word() + " after " + settings.patience().toSeconds() + " s" + why;
        if (takenBack && before == JobState.WAITING)
            throw DeviceAway.clean(said(sheet, waited + "; the job was taken back, nothing came out"), null);
        String back = takenBack ? "the job was taken back" : "the job could not be taken back, cancel it at the queue";
        throw DeviceAway.ambiguous(
                said(sheet, waited + "; " + back + "; look in the tray before it is printed again"), null);
    }

    private boolean cancelled(int job) {
        try {
            return line.ask(IppRequest.aboutJob(IppRequest.CANCEL_JOB, line.printer(), job))
                    .wentWell();
        } catch (IOException e) {
            return false;
        }
    }

    /** What the printer says is wrong: an empty tray keeps its job "processing", only the reasons tell. */
    private String reasons() {
        try {
            IppAnswer answer = line.ask(IppRequest.aboutPrinter(line.printer()));
            var words = answer.words("printer-state-reasons").stream()
                    .filter(reason -> !reason.equals("none"))
                    .map(reason -> reason.replaceFirst("-(report|warning|error)$", ""))
                    .distinct()
                    .toList();
            return words.isEmpty() ? "" : " (the printer says " + String.join(", ", words) + ")";
        } catch (IOException e) {
            return " (the printer no longer answers)";
        }
    }

    private void rest(Sheet sheet) {
        try {
            Thread.sleep(pause.toMillis());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw DeviceAway.ambiguous(said(sheet, "was left while its job ran; look in the tray"), e);
        }
    }

    private String said(Sheet sheet, String what) {
        return "print queue " + line.shown() + ", sheet \"" + sheet.name() + "\": " + what;
    }

    private static String reason(IOException e) {
        return e.getMessage() == null ? "no connection" : e.getMessage();
    }
}

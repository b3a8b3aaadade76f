package dawnkettle.paper;

import dawnkettle.trouble.DeviceAway;
import java.time.Duration;

/** A job that is followed to its end, up to our own deadline. */
final class FollowedJob {
    private static final String LOOK = "; look in the tray before it is printed again";

    /** Milliseconds between two questions (common practice, no source). */
    private static final long SHORTEST_PAUSE = 20;

    private static final long LONGEST_PAUSE = 2_000;

    private final IppQueue queue;
    private final JobTicket ticket;
    private final int job;
    private final Duration patience;

    FollowedJob(IppQueue queue, JobTicket ticket, int job, Duration patience) {
        this.queue = queue;
        this.ticket = ticket;
        this.job = job;
        this.patience = patience;
    }

    /**
     * Returns when the sheet is out as far as the queue knows.
     *
     * @throws DeviceAway where it is not; the message begins with what the queue did
     */
    void toItsEnd() {
        long deadline = System.nanoTime() + patience.toNanos();
        JobReport last = JobReport.NONE;
        PrinterReport printer = PrinterReport.SILENT;
        while (System.nanoTime() < deadline) {
            last = queue.job(job).orElse(last);
            if (last.state() == JobState.COMPLETED) {
                refuseShort(last);
                printer = queue.printer();
                if (last.counted(ticket.pages()) || !printer.standsStill()) return;
            } else if (last.state().isOver())
                throw DeviceAway.ambiguous("ended the job as " + last.state().word() + LOOK, null);
            rest();
        }
        if (last.state() == JobState.COMPLETED) throw tooSoon(printer);
        giveUp(last.state());
    }

    private void refuseShort(JobReport report) {
        if (report.isShortOf(ticket))
            throw DeviceAway.ambiguous(
                    "says completed, but counts " + report.impressions().getAsInt() + " of " + ticket.pages() + " pages"
                            + LOOK,
                    null);
    }

    /** A queue is done when its last byte has left; the printer may still stand there without paper. */
    private DeviceAway tooSoon(PrinterReport printer) {
        return DeviceAway.ambiguous(
                "says completed, but nothing can have come out for " + patience.toSeconds() + " s" + printer.told()
                        + LOOK,
                null);
    }

    /** A job that stays in the queue would come out hours later, with yesterday's numbers on it: take it back. */
    private void giveUp(JobState last) {
        String why = queue.printer().told();
        JobState before = now(last);
        boolean takenBack = queue.cancelled(job);
        if (before == JobState.COMPLETED || now(before) == JobState.COMPLETED) return;
        String waited = "was still " + before.word() + " after " + patience.toSeconds() + " s" + why;
        if (takenBack && before == JobState.WAITING)
            throw DeviceAway.clean(waited + "; the job was taken back, nothing came out", null);
        String back = takenBack ? "the job was taken back" : "the job could not be taken back, cancel it at the queue";
        throw DeviceAway.ambiguous(waited + "; " + back + LOOK, null);
    }

    private JobState now(JobState last) {
        return queue.job(job).map(JobReport::state).orElse(last);
    }

    /** Between two questions: seldom enough for a printer that has work to do. */
    private void rest() {
        try {
            Thread.sleep(Math.max(SHORTEST_PAUSE, Math.min(LONGEST_PAUSE, patience.toMillis() / 50)));
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw DeviceAway.ambiguous("was left while its job ran; look in the tray", e);
        }
    }
}

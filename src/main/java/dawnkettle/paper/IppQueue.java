package dawnkettle.paper;

import java.io.IOException;
import java.net.URI;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** What can be asked of a print queue; a question that is not answered is answered by "nobody knows". */
final class IppQueue {
    private final IppLine line;
    private final Duration patience;

    IppQueue(URI address, Duration patience) {
        this.line = new IppLine(address, patience);
        this.patience = patience;
    }

    String shown() {
        return line.shown();
    }

    IppAnswer hand(JobTicket ticket, byte[] pdf) throws IOException {
        return line.ask(IppRequest.print(line.printer(), ticket, pdf));
    }

    Optional<JobReport> job(int job) {
        try {
            IppAnswer answer = line.ask(IppRequest.aboutJob(IppRequest.GET_JOB_ATTRIBUTES, line.printer(), job));
            if (!answer.wentWell()) return Optional.empty();
            OptionalInt state = answer.number("job-state");
            if (state.isEmpty()) return Optional.empty();
            return Optional.of(
                    new JobReport(JobState.of(state.getAsInt()), answer.number("job-impressions-completed")));
        } catch (IOException e) {
            return Optional.empty(); // It may come back before the deadline; the job is not lost by one lost answer.
        }
    }

    PrinterReport printer() {
        try {
            IppAnswer answer = line.ask(IppRequest.aboutPrinter(line.printer()));
            return new PrinterReport(
                    true,
                    answer.number("printer-state").orElse(0) == PrinterReport.STOPPED,
                    answer.words("printer-state-reasons"));
        } catch (IOException e) {
            return PrinterReport.SILENT;
        }
    }

    boolean cancelled(int job) {
        try {
            return line.ask(IppRequest.aboutJob(IppRequest.CANCEL_JOB, line.printer(), job))
                    .wentWell();
        } catch (IOException e) {
            return false;
        }
    }

    /** The job that a try made, though its number never arrived. */
    OptionalInt find(JobTicket ticket) {
        for (String which : List.of("not-completed", "completed"))
            for (IppAnswer.Group job : jobs(which))
                if (job.word("job-name").equals(ticket.name())) return job.number("job-id");
        return OptionalInt.empty();
    }

    /**
     * Takes back what earlier tries of the same sheet left in the queue, of whatever revision, and whatever else of ours
     * has stood there for longer than anybody follows a job: it would come out with numbers that no longer hold.
     */
    void clearGhosts(JobTicket ticket) {
        for (IppAnswer.Group job : jobs("not-completed")) {
            String name = job.word("job-name");
            boolean ghost = ticket.isSameSheet(name) || JobTicket.isOurs(name) && isForgotten(job);
            if (ghost) job.number("job-id").ifPresent(this::cancelled);
        }
    }

    /** Both times are of the printer's own clock (RFC 8011, 5.3.14). */
    private boolean isForgotten(IppAnswer.Group job) {
        OptionalInt made = job.number("time-at-creation");
        OptionalInt now = job.number("job-printer-up-time");
        return made.isPresent()
                && now.isPresent()
                && (now.getAsInt() - made.getAsInt()) * 1_000L > 2 * patience.toMillis();
    }

    private List<IppAnswer.Group> jobs(String which) {
        try {
            return line.ask(IppRequest.jobs(line.printer(), which)).jobs();
        } catch (IOException e) {
            return List.of();
        }
    }
}

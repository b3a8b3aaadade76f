package dawnkettle.label;

import dawnkettle.trouble.DeviceAway;
import java.time.Duration;

/** Asks a label printer how it is, and sends it nothing that it could print. */
public final class AskPrinter {
    /** For an answer to the question how it is (common practice, no source). */
    private static final Duration PATIENCE = Duration.ofSeconds(6);

    private final PrinterProfile profile;
    private final LabelLine line;

    public AskPrinter(PrinterProfile profile, LabelLine line) {
        this.profile = profile;
        this.line = line;
    }

    /**
     * What it answers, in words.
     *
     * @throws DeviceAway clean, where it does not answer or would not print
     */
    public String answer() {
        try (LabelLine.Link link = line.open()) {
            GroupPrinting.Pace pace = new GroupPrinting.Pace(1, Duration.ofMillis(500), PATIENCE, PATIENCE);
            PrinterTalk.Outcome outcome = new PrinterTalk(profile, link, pace).untilReady(stop -> {});
            if (outcome.ending() == PrinterTalk.Ending.DONE) return "is ready";
            Condition stop = outcome.last().flatMap(PrinterState::stop).orElse(null);
            if (stop != null) throw DeviceAway.clean(line.name() + " " + stop.said() + "; " + stop.remedy(), null);
            if (outcome.last().isPresent()) return "is busy";
            throw DeviceAway.clean(line.name() + " does not answer; switch it on and look at its cable", null);
        }
    }
}

package dawnkettle.line;

import dawnkettle.label.GroupPrinting;
import dawnkettle.label.LabelJournal;
import dawnkettle.label.LabelPrinter;
import dawnkettle.label.LabelRun;
import dawnkettle.label.PrinterProfile;
import java.time.Duration;

/** The label printer on its serial line. */
public final class SerialLabels implements LabelPrinter {
    private static final Duration POLL = Duration.ofMillis(500);
    private static final Duration SILENCE = Duration.ofSeconds(30);

    private final GroupPrinting printing;

    public SerialLabels(LineSettings settings, PrinterProfile profile) {
        this(settings, profile, POLL, SILENCE);
    }

    SerialLabels(LineSettings settings, PrinterProfile profile, Duration poll, Duration silence) {
        this.printing = new GroupPrinting(
                profile,
                new SerialLine(settings),
                new GroupPrinting.Pace(settings.group(), poll, silence, settings.patience()));
    }

    @Override
    public void print(LabelRun run, LabelJournal journal) {
        printing.print(run, journal);
    }
}

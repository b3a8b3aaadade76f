package dawnkettle.command;

import dawnkettle.night.Story;
import java.io.PrintWriter;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The night as it is told: shown as it happens on a terminal, kept for the page. */
final class NightTale implements Story {
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("EEE HH:mm", Locale.ENGLISH);

    private final ZoneId zone;
    private final PrintWriter terminal;
    private final boolean live;
    private final List<String> lines = new ArrayList<>();

    NightTale(ZoneId zone, PrintWriter terminal, boolean live) {
        this.zone = zone;
        this.terminal = terminal;
        this.live = live;
    }

    @Override
    public void tell(Instant at, String line) {
        String told = TIME.format(at.atZone(zone)) + "  " + line;
        lines.add(told);
        if (!live) return;
        terminal.println(told);
        terminal.flush();
    }

    String text() {
        return "The night, step by step\n" + String.join("\n", lines) + "\n";
    }
}

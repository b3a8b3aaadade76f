package dawnkettle.label;

import dawnkettle.conf.PrinterProfiles;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;

/** The profiles that come with the program. */
public final class SampleProfiles {
    private static final Map<String, PrinterProfile> ALL = PrinterProfiles.read(Path.of("labels/printers"));

    private SampleProfiles() {}

    public static List<PrinterProfile> all() {
        return List.copyOf(ALL.values());
    }

    public static PrinterProfile profile(String name) {
        return ALL.get(name);
    }

    /** The profile on a head of the same width in millimetres at another pitch. */
    public static PrinterProfile at(PrinterProfile profile, Pitch pitch) {
        return profile.with(new PrinterProfile.Head(pitch, pitch.dots(104_000), pitch.dots(300_000)));
    }
}

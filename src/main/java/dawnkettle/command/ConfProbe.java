package dawnkettle.command;

import dawnkettle.night.Probe;
import dawnkettle.trouble.BadFile;
import java.nio.file.Path;

/** Whether what the owner wrote still reads: a change that was made in the afternoon comes to light at the next start, at night. */
final class ConfProbe {
    private ConfProbe() {}

    static Probe of(Wiring wiring, Path conf) {
        return new Probe(
                "what you wrote in conf/",
                "The service goes on with what it read when it started.",
                "Correct it, then try the command \"check\".",
                () -> {
                    try {
                        wiring.configuration(conf);
                        return "reads well";
                    } catch (BadFile bad) {
                        throw new BadFile(bad.problems().subList(0, 1));
                    }
                });
    }
}

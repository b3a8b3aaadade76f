package dawnkettle;

import static java.nio.charset.StandardCharsets.UTF_8;

import dawnkettle.command.Dawnkettle;
import dawnkettle.command.Wiring;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.util.function.IntSupplier;

/** Runs a command as somebody at a terminal would, in this process, and keeps what it says. */
final class Terminal {
    /** What the command line library asks for the charset of what it writes. */
    private static final String CHARSET = "sun.stdout.encoding";

    private static final String ERROR_CHARSET = "sun.stderr.encoding";

    private Terminal() {}

    /** What a command left behind: its exit status, what it printed, and what it complained of. */
    record Told(int status, String out, String err) {}

    static Told run(Object... words) {
        return runWith(new Main(), words);
    }

    static Told runWith(Wiring wiring, Object... words) {
        String[] args = new String[words.length];
        for (int i = 0; i < words.length; i++) args[i] = words[i].toString();
        return listening(() -> Dawnkettle.run(wiring, args));
    }

    private static synchronized Told listening(IntSupplier command) {
        PrintStream out = System.out;
        PrintStream err = System.err;
        String charset = System.getProperty(CHARSET, "");
        String errorCharset = System.getProperty(ERROR_CHARSET, "");
        ByteArrayOutputStream said = new ByteArrayOutputStream();
        ByteArrayOutputStream complained = new ByteArrayOutputStream();
        try {
            System.setProperty(CHARSET, UTF_8.name());
            System.setProperty(ERROR_CHARSET, UTF_8.name());
            System.setOut(new PrintStream(said, true, UTF_8));
            System.setErr(new PrintStream(complained, true, UTF_8));
            int status = command.getAsInt();
            return new Told(status, said.toString(UTF_8), complained.toString(UTF_8));
        } finally {
            System.setOut(out);
            System.setErr(err);
            restore(CHARSET, charset);
            restore(ERROR_CHARSET, errorCharset);
        }
    }

    private static void restore(String property, String value) {
        if (value.isEmpty()) System.clearProperty(property);
        else System.setProperty(property, value);
    }
}

package dawnkettle.label;

import java.time.Duration;
import java.util.function.Predicate;

/** A line to a label printer: bytes out, bytes in, and waiting. */
public interface LabelLine {
    /** The printer's name in messages, as "label printer on /dev/ttyUSB0". */
    String name();

    /** @throws dawnkettle.trouble.DeviceAway clean, where there is no line */
    Link open();

    /** An open line. */
    interface Link extends AutoCloseable {
        /**
         * Sends all of {@code bytes}.
         *
         * @throws dawnkettle.trouble.DeviceAway clean where not one was taken, ambiguous where some were
         */
        void send(byte[] bytes);

        /** Sends {@code question} and gathers what comes until {@code isWhole} or for {@code patience}. */
        byte[] ask(byte[] question, Predicate<byte[]> isWhole, Duration patience);

        /** Waits. */
        void rest(Duration howLong);

        @Override
        void close();
    }
}

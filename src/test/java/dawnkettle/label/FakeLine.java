package dawnkettle.label;

import dawnkettle.trouble.DeviceAway;
import java.io.ByteArrayOutputStream;
import java.time.Duration;
import java.util.Arrays;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;

/** A line to a {@link FakePrinter} on which time passes at once and things go wrong where a test wants. */
final class FakeLine implements LabelLine {
    private final FakePrinter printer;
    private final ByteArrayOutputStream heard = new ByteArrayOutputStream();
    private final ByteArrayOutputStream sent = new ByteArrayOutputStream();
    private UnaryOperator<byte[]> onTheWay = bytes -> bytes;
    private int bytesUntilCut = Integer.MAX_VALUE;
    private long millisUntilRefill = Long.MAX_VALUE;
    private Runnable refill = () -> {};
    private long elapsed;

    FakeLine(FakePrinter printer) {
        this.printer = printer;
    }

    FakeLine cutAfter(int bytes) {
        bytesUntilCut = bytes;
        return this;
    }

    FakeLine mend() {
        bytesUntilCut = Integer.MAX_VALUE;
        onTheWay = bytes -> bytes;
        return this;
    }

    FakeLine refillAfter(Duration time) {
        return afterwards(time, printer::newRoll);
    }

    /** What a person does once the line has been rested on for so long. */
    FakeLine afterwards(Duration time, Runnable what) {
        millisUntilRefill = time.toMillis();
        refill = what;
        return this;
    }

    /** What becomes of answers on their way. */
    FakeLine answers(UnaryOperator<byte[]> change) {
        onTheWay = change;
        return this;
    }

    /** All that was sent, a character a byte. */
    String heard() {
        return sent.toString(java.nio.charset.StandardCharsets.ISO_8859_1);
    }

    long elapsedMillis() {
        return elapsed;
    }

    @Override
    public String name() {
        return "label printer on /dev/fake";
    }

    @Override
    public Link open() {
        return new Link() {
            @Override
            public void send(byte[] bytes) {
                sent.writeBytes(bytes);
                int taken = Math.min(bytes.length, bytesUntilCut);
                bytesUntilCut -= bytesUntilCut == Integer.MAX_VALUE ? 0 : taken;
                heard.writeBytes(onTheWay.apply(printer.take(Arrays.copyOf(bytes, taken))));
                if (taken == bytes.length) return;
                String message = name() + " was unplugged or switched off";
                throw taken == 0 ? DeviceAway.clean(message, null) : DeviceAway.ambiguous(message, null);
            }

            @Override
            public byte[] ask(byte[] question, Predicate<byte[]> isWhole, Duration patience) {
                send(question);
                byte[] answer = heard.toByteArray();
                heard.reset();
                return answer;
            }

            @Override
            public void rest(Duration howLong) {
                elapsed += howLong.toMillis();
                if (elapsed >= millisUntilRefill) {
                    millisUntilRefill = Long.MAX_VALUE;
                    refill.run();
                }
                heard.writeBytes(onTheWay.apply(printer.pass(howLong.toMillis())));
            }

            @Override
            public void close() {
                heard.reset();
            }
        };
    }
}

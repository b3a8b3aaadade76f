package dawnkettle.label;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** A printer of one profile: takes bytes in their order, prints a label a while, runs out of labels, answers. */
public final class FakePrinter {
    private static final int WIDTH = 64;
    private static final int HEIGHT = 24;

    /** What every label of these tests looks like. */
    public static final Dots PICTURE = picture();

    private final PrinterProfile profile;
    private final List<Dots> printed = new ArrayList<>();
    private final Deque<Object> jobs = new ArrayDeque<>();
    private int width = WIDTH;
    private int height = HEIGHT;
    private byte[] received = new byte[0];
    private Dots kept;
    private final Map<String, Dots> memory = new HashMap<>();
    private int room = Integer.MAX_VALUE;
    private boolean isListing = true;
    private long millisToLabel = 200;
    private long busyMillis;
    private int labelsOnRoll = Integer.MAX_VALUE;

    public FakePrinter(PrinterProfile profile) {
        this.profile = profile;
    }

    private static Dots picture() {
        Dots.Ink ink = new Dots.Ink(WIDTH, HEIGHT);
        ink.fill(3, 2, 17, 3);
        ink.fill(1, 12, 60, 5);
        return ink.dry();
    }

    /** The size of the labels in it, where they are not of the usual one. */
    public FakePrinter stock(int dotsAcross, int dotsDown) {
        width = dotsAcross;
        height = dotsDown;
        return this;
    }

    /** How many pictures it has room for. */
    public FakePrinter room(int pictures) {
        room = pictures;
        return this;
    }

    /** It does not say which pictures it keeps. */
    public FakePrinter listsNothing() {
        isListing = false;
        return this;
    }

    public FakePrinter roll(int labels) {
        labelsOnRoll = labels;
        return this;
    }

    public FakePrinter millisALabel(long millis) {
        millisToLabel = millis;
        return this;
    }

    public void newRoll() {
        labelsOnRoll = Integer.MAX_VALUE;
    }

    /** Whether it has begun to read something that is not whole yet. */
    public boolean isAmid() {
        return received.length > 0;
    }

    /** Switched off and on again: all that had not come out is gone. */
    public void restart() {
        received = new byte[0];
        jobs.clear();
        kept = null;
        memory.clear();
        busyMillis = 0;
    }

    public List<Dots> printed() {
        return List.copyOf(printed);
    }

    /** Takes bytes and gives what it answers at once. */
    public byte[] take(byte[] bytes) {
        ByteArrayOutputStream answer = new ByteArrayOutputStream();
        byte[] all = Arrays.copyOf(received, received.length + bytes.length);
        System.arraycopy(bytes, 0, all, received.length, bytes.length);
        received = all;
        clearAmid();
        while (step(answer)) settle(answer);
        return answer.toByteArray();
    }

    /** Time passes; gives what it says in its turn. */
    public byte[] pass(long millis) {
        busyMillis += millis;
        ByteArrayOutputStream answer = new ByteArrayOutputStream();
        settle(answer);
        return answer.toByteArray();
    }

    private boolean step(ByteArrayOutputStream answer) {
        if (received.length == 0) return false;
        if (begins(profile.asking().question().bytes())) {
            answer.writeBytes(status());
            return true;
        }
        if (begins(profile.sending().after().clear().bytes())) {
            jobs.clear();
            busyMillis = 0;
            return true;
        }
        if (profile.asking().inTurn().isPresent()
                && begins(profile.asking().inTurn().get().question().bytes())) {
            jobs.add("say");
            return true;
        }
        Optional<PrinterProfile.Listing> listing = profile.coding().keeping().map(PrinterProfile.Keeping::listing);
        if (listing.isPresent() && begins(listing.get().question().bytes())) {
            if (isListing) answer.writeBytes(listing(listing.get()));
            return true;
        }
        ProfileReader reader = new ProfileReader(profile, received, width, height)
                .keeping(kept)
                .memory(memory);
        Set<String> before = Set.copyOf(memory.keySet());
        if (reader.keeps()) {
            if (memory.size() > room) memory.keySet().retainAll(before);
            received = Arrays.copyOfRange(received, reader.consumed(), received.length);
            return true;
        }
        Optional<ProfileReader.Printed> one = reader.one();
        if (one.isEmpty()) return false;
        kept = one.get().picture();
        for (int i = 0; i < one.get().copies(); i++) jobs.add(one.get().picture());
        received = Arrays.copyOfRange(received, reader.consumed(), received.length);
        return true;
    }

    /** Where all bytes are printable, the command that drops everything is heard in the middle of another too. */
    private void clearAmid() {
        byte[] clear = profile.sending().after().clear().bytes();
        boolean isText = profile.coding().form() == PrinterProfile.Form.HEX_RUNS
                || profile.coding().form() == PrinterProfile.Form.DEFLATED;
        int at = new String(received, StandardCharsets.ISO_8859_1)
                .lastIndexOf(new String(clear, StandardCharsets.ISO_8859_1));
        if (isText && at > 0) received = Arrays.copyOfRange(received, at, received.length);
    }

    private boolean begins(byte[] with) {
        if (with.length == 0 || received.length < with.length) return false;
        if (!Arrays.equals(Arrays.copyOf(received, with.length), with)) return false;
        received = Arrays.copyOfRange(received, with.length, received.length);
        return true;
    }

    private void settle(ByteArrayOutputStream answer) {
        while (!jobs.isEmpty()) {
            if (jobs.peek() instanceof String) {
                jobs.remove();
                answer.write(profile.asking().inTurn().orElseThrow().is());
                continue;
            }
            if (labelsOnRoll == 0) {
                busyMillis = 0;
                return;
            }
            if (busyMillis < millisToLabel) return;
            busyMillis -= millisToLabel;
            labelsOnRoll--;
            printed.add((Dots) jobs.remove());
        }
        busyMillis = 0;
    }

    private int remaining() {
        return (int) jobs.stream().filter(Dots.class::isInstance).count();
    }

    private byte[] status() {
        Set<Condition> conditions = EnumSet.noneOf(Condition.class);
        if (remaining() > 0) conditions.add(Condition.BUSY);
        if (labelsOnRoll == 0) conditions.add(Condition.PAPER_OUT);
        return profile.asking().reply() instanceof StatusReply.Bits bits
                ? inBits(bits, conditions)
                : inFields((StatusReply.Fields) profile.asking().reply(), conditions);
    }

    private byte[] listing(PrinterProfile.Listing listing) {
        StringBuilder answer = new StringBuilder("\u0002\r\n");
        for (String name : new TreeSet<>(memory.keySet()))
            answer.append(listing.answer().text().replace("{name}", name)).append(" 56000\r\n");
        answer.append((char) listing.tail());
        return answer.toString().getBytes(StandardCharsets.ISO_8859_1);
    }

    private byte[] inBits(StatusReply.Bits bits, Set<Condition> conditions) {
        byte[] answer = new byte[bits.length()];
        for (StatusReply.Flag flag : bits.fixed()) answer[flag.at()] |= (byte) flag.is();
        for (StatusReply.Flag flag : bits.flags())
            if (conditions.contains(flag.means())) answer[flag.at()] |= (byte) flag.is();
        return answer;
    }

    private byte[] inFields(StatusReply.Fields reply, Set<Condition> conditions) {
        String[] fields = new String[reply.count()];
        Arrays.fill(fields, "0");
        for (StatusReply.Field field : reply.fields()) {
            boolean holds = conditions.contains(field.means());
            if (field.is().startsWith("!"))
                fields[field.at()] = holds ? "001" : field.is().substring(1);
            else if (holds) fields[field.at()] = field.is();
        }
        fields[reply.remaining()] = String.format("%08d", remaining());
        String joined = String.join(",", fields);
        int first = joined.indexOf(',', joined.length() / 3);
        int second = joined.indexOf(',', 2 * joined.length() / 3);
        String lines = "\u0002" + joined.substring(0, first) + "\u0003\r\n\u0002" + joined.substring(first + 1, second)
                + "\u0003\r\n\u0002" + joined.substring(second + 1) + "\u0003\r\n";
        return lines.getBytes(StandardCharsets.US_ASCII);
    }
}

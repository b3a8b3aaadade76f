package dawnkettle.label;

import dawnkettle.trouble.BadFile;
import dawnkettle.trouble.Place;
import dawnkettle.trouble.Problem;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Puts pictures into the bytes of one printer profile. */
public final class Framing {
    private final PrinterProfile profile;

    public Framing(PrinterProfile profile) {
        this.profile = profile;
    }

    /** Why the head cannot print {@code fed}, with the millimetres; empty where it can. */
    public Optional<String> objection(Dots fed) {
        PrinterProfile.Head head = profile.head();
        if (fed.width() > head.dots())
            return Optional.of("label is " + millimetres(fed.width()) + " mm across and the head prints "
                    + within(head.dots()) + " mm");
        if (fed.height() > head.mostRows())
            return Optional.of("label is " + millimetres(fed.height()) + " mm long and the printer takes "
                    + within(head.mostRows()) + " mm");
        return Optional.empty();
    }

    /** A need in millimetres, rounded up. */
    private String millimetres(int dots) {
        return shown((profile.head().pitch().micrometres(dots) + 99) / 100);
    }

    /** Room in millimetres; a dot more or less is not told apart. */
    private String within(int dots) {
        return shown(profile.head().pitch().micrometres(dots) / 100);
    }

    private static String shown(int tenths) {
        return tenths / 10 + "." + tenths % 10;
    }

    /** Most copies that one sending of a picture can bring out. */
    public int mostCopies() {
        return profile.sending().limits().mostCopies();
    }

    /** All bytes for so many copies of a picture as fed, the question answered in its turn after them. */
    public byte[] group(Dots fed, int copies) {
        objection(fed).ifPresent(objection -> {
            throw new BadFile(List.of(new Problem(
                    Place.of("labels/printers/" + profile.name() + ".toml"),
                    objection,
                    "choose a smaller design, or name a profile with a wider head")));
        });
        ByteRoll bytes = new ByteRoll();
        for (int left = copies; left > 0; left -= mostCopies())
            if (left == copies || !profile.keeps()) picture(bytes, fed, Math.min(left, mostCopies()));
            else again(bytes, Math.min(left, mostCopies()));
        return asking(bytes);
    }

    /** All bytes for so many more copies of the picture that the printer keeps from the group before. */
    byte[] again(int copies) {
        ByteRoll bytes = new ByteRoll();
        for (int left = copies; left > 0; left -= mostCopies()) again(bytes, Math.min(left, mostCopies()));
        return asking(bytes);
    }

    private void again(ByteRoll bytes, int copies) {
        profile.sending().after().again().write(bytes, Map.of("copies", copies), new byte[0]);
    }

    private byte[] asking(ByteRoll bytes) {
        profile.asking()
                .inTurn()
                .ifPresent(inTurn -> bytes.add(inTurn.question().bytes()));
        return bytes.toBytes();
    }

    /**
     * Most labels of a group: {@code wanted}, or as many as it repeats where the printer says how many are to come, since
     * then nothing is less certain for it, and the picture crosses the line once.
     */
    int mostInGroup(int wanted) {
        return profile.counts() && profile.repeats() ? mostCopies() : wanted;
    }

    /** All bytes of a run in groups of at most {@code wanted} labels, the questions between them left out. */
    public byte[] run(LabelRun run, int wanted) {
        ByteRoll bytes = new ByteRoll();
        int group = mostInGroup(wanted);
        for (LabelCopies copies : run.labels()) {
            Dots fed = copies.fed();
            for (int left = copies.copies(); left > 0; left -= group) {
                boolean isKept = left < copies.copies() && profile.keeps();
                int count = Math.min(left, group);
                bytes.add(isKept ? again(count) : group(fed, count));
            }
        }
        bytes.add(cut());
        return bytes.toBytes();
    }

    public byte[] question() {
        return profile.asking().question().bytes();
    }

    /** Cuts or tears after a run; empty where nothing does, or each label's end. */
    byte[] cut() {
        return profile.sending().after().cut().bytes();
    }

    /** Drops what the printer still has; empty where the family has no such command. */
    public byte[] clear() {
        return profile.sending().after().clear().bytes();
    }

    private void picture(ByteRoll bytes, Dots fed, int copies) {
        PrinterProfile.Sending sending = profile.sending();
        Map<String, Integer> numbers = numbers(fed, copies);
        sending.start().write(bytes, numbers, new byte[0]);
        switch (profile.coding().form()) {
            case ROWS -> rows(bytes, fed, numbers);
            case BAND -> bands(bytes, fed, numbers);
            case HEX_RUNS -> hexRuns(bytes, fed, numbers);
        }
        sending.after().end().write(bytes, numbers, new byte[0]);
        if (sending.after().isKeptFirst()) again(bytes, copies);
    }

    private Map<String, Integer> numbers(Dots fed, int copies) {
        Pitch pitch = profile.head().pitch();
        Map<String, Integer> numbers = new HashMap<>();
        numbers.put("copies", copies);
        numbers.put("widthDots", fed.width());
        numbers.put("heightDots", fed.height());
        numbers.put("widthMm", (pitch.micrometres(fed.width()) + 500) / 1_000);
        numbers.put("heightMm", (pitch.micrometres(fed.height()) + 500) / 1_000);
        numbers.put("darkness", profile.sending().limits().darkness());
        numbers.put("speed", profile.sending().limits().speed());
        return numbers;
    }

    private void rows(ByteRoll bytes, Dots fed, Map<String, Integer> numbers) {
        int blank = 0;
        for (int y = 0; y < fed.height(); y++) {
            if (fed.isBlank(y)) {
                blank++;
                continue;
            }
            feed(bytes, blank, numbers);
            blank = 0;
            byte[] row = inked(fed, y, inkedBytes(fed.row(y)));
            numbers.put("y", y);
            numbers.put("bytes", row.length);
            numbers.put("rowBytes", row.length);
            profile.sending().row().write(bytes, numbers, row);
        }
        // Rows below the last ink are not sent: the end command goes to the next label.
    }

    private void feed(ByteRoll bytes, int blank, Map<String, Integer> numbers) {
        int most = profile.sending().limits().mostFeed();
        for (int left = blank; left > 0; left -= most) {
            numbers.put("feed", Math.min(left, most));
            profile.sending().feed().write(bytes, numbers, new byte[0]);
        }
    }

    private void bands(ByteRoll bytes, Dots fed, Map<String, Integer> numbers) {
        ByteTemplate command = profile.sending().row();
        int overhead = command.text().length() / 2;
        for (Band band : Band.cheapest(fed, overhead, command.gaps().contains("x"))) {
            ByteRoll data = new ByteRoll();
            for (int y = band.top(); y < band.until(); y++)
                data.add(Arrays.copyOfRange(inked(fed, y, band.right()), band.left(), band.right()));
            numbers.put("x", 8 * band.left());
            numbers.put("y", band.top());
            numbers.put("rows", band.rows());
            numbers.put("rowBytes", band.rowBytes());
            numbers.put("bytes", data.length());
            command.write(bytes, numbers, data.toBytes());
        }
    }

    private void hexRuns(ByteRoll bytes, Dots fed, Map<String, Integer> numbers) {
        int from = 0;
        while (from < fed.height() && fed.isBlank(from)) from++;
        int until = fed.height();
        while (until > from && fed.isBlank(until - 1)) until--;
        if (from == until) return;
        HexRuns runs = new HexRuns();
        for (int y = from; y < until; y++) runs.row(inked(fed, y, fed.rowBytes()));
        numbers.put("y", from);
        numbers.put("rows", until - from);
        numbers.put("rowBytes", fed.rowBytes());
        numbers.put("bytes", (until - from) * fed.rowBytes());
        profile.sending().row().write(bytes, numbers, runs.bytes());
    }

    /** Bytes up to the last one with ink. */
    private static int inkedBytes(byte[] row) {
        int length = row.length;
        while (length > 1 && row[length - 1] == 0) length--;
        return length;
    }

    private byte[] inked(Dots fed, int y, int length) {
        byte[] row = Arrays.copyOf(fed.row(y), length);
        if (!profile.coding().blackIsOne()) for (int i = 0; i < row.length; i++) row[i] = (byte) ~row[i];
        return row;
    }
}

package dawnkettle.label;

import dawnkettle.trouble.BadFile;
import dawnkettle.trouble.Place;
import dawnkettle.trouble.Problem;
import java.util.ArrayList;
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
            case HEX_RUNS, DEFLATED -> block(bytes, sending.row(), fed, numbers);
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

    /** One command for all rows from the first to the last with ink; none where there is no ink. */
    private void block(ByteRoll bytes, ByteTemplate command, Dots fed, Map<String, Integer> numbers) {
        Optional<Band> found = Band.around(fed, command.gaps().contains("x"));
        if (found.isEmpty()) return;
        Band band = found.get();
        List<byte[]> rows = new ArrayList<>();
        for (int y = band.top(); y < band.until(); y++)
            rows.add(Arrays.copyOfRange(inked(fed, y, band.right()), band.left(), band.right()));
        byte[] data = coded(rows);
        numbers.put("x", 8 * band.left());
        numbers.put("y", band.top());
        numbers.put("rows", band.rows());
        numbers.put("rowBytes", band.rowBytes());
        numbers.put("bytes", band.rows() * band.rowBytes());
        numbers.put("crc", Deflated.checksum(data));
        command.write(bytes, numbers, data);
    }

    private byte[] coded(List<byte[]> rows) {
        if (profile.coding().form() == PrinterProfile.Form.DEFLATED) return Deflated.text(rows);
        if (profile.coding().form() == PrinterProfile.Form.HEX_RUNS) {
            HexRuns runs = new HexRuns();
            rows.forEach(runs::row);
            return runs.bytes();
        }
        ByteRoll plain = new ByteRoll();
        rows.forEach(plain::add);
        return plain.toBytes();
    }

    /** Has the printer keep a picture by name. */
    byte[] store(KeptPictures.Base base) {
        ByteRoll bytes = new ByteRoll();
        block(bytes, keeping().store().named(base.name()), base.picture(), numbers(base.picture(), 1));
        return bytes.toBytes();
    }

    /** All bytes for so many copies of a picture, by what differs from one that the printer keeps. */
    byte[] from(KeptPictures.Base base, Dots fed, int copies) {
        ByteRoll bytes = new ByteRoll();
        for (int left = copies; left > 0; left -= mostCopies()) {
            Map<String, Integer> numbers = numbers(fed, Math.min(left, mostCopies()));
            profile.sending().start().write(bytes, numbers, new byte[0]);
            numbers.put("y", Band.around(base.picture(), false).map(Band::top).orElse(0));
            keeping().recall().named(base.name()).write(bytes, numbers, new byte[0]);
            block(bytes, keeping().differ(), fed.unlike(base.picture()), numbers);
            profile.sending().after().end().write(bytes, numbers, new byte[0]);
        }
        return asking(bytes);
    }

    /** Has the printer drop all pictures that it keeps by name. */
    byte[] drop() {
        return keeping().room().drop().bytes();
    }

    private PrinterProfile.Keeping keeping() {
        return profile.coding().keeping().orElseThrow();
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

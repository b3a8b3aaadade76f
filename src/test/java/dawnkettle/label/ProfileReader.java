package dawnkettle.label;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Base64;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;

/**
 * The other side of a printer profile: from the bytes back to pictures and counts. It walks the templates of the profile
 * on its own and shares no code with what writes them.
 */
public final class ProfileReader {
    /** A picture and how often it is wanted. */
    public record Printed(Dots picture, int copies) {}

    private static final String SIXTY_FOUR = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/=";

    private final PrinterProfile profile;
    private final byte[] bytes;
    private final int width;
    private final int height;
    private final List<String> structure = new ArrayList<>();
    private int at;
    private Dots kept;
    private Map<String, Dots> memory = new HashMap<>();
    private String name = "";

    public ProfileReader(PrinterProfile profile, byte[] bytes, int width, int height) {
        this.profile = profile;
        this.bytes = bytes.clone();
        this.width = width;
        this.height = height;
    }

    /** What the printer kept from before these bytes. */
    ProfileReader keeping(Dots picture) {
        kept = picture;
        return this;
    }

    /** Pictures that the printer keeps by name, before and after these bytes. */
    public ProfileReader memory(Map<String, Dots> pictures) {
        memory = pictures;
        return this;
    }

    /** Whether something was kept, or all was dropped, at the head of the bytes. */
    boolean keeps() {
        Optional<PrinterProfile.Keeping> keeping = profile.coding().keeping();
        if (keeping.isEmpty()) return false;
        if (take("drop", keeping.get().room().drop().text(), null, null)) {
            memory.clear();
            return true;
        }
        Map<String, Integer> numbers = new HashMap<>();
        byte[][] data = new byte[1][];
        try {
            if (!take("store", keeping.get().store().text(), numbers, data)) return false;
        } catch (IndexOutOfBoundsException e) {
            return false;
        }
        int across = numbers.get("rowBytes") * 8;
        boolean[][] black = new boolean[data[0].length * 8 / across][across];
        ink(black, data[0], numbers, 0);
        memory.put(name, dried(black));
        return true;
    }

    /** The names of the commands met, in order. */
    public List<String> structure() {
        return structure;
    }

    public List<Printed> read() {
        List<Printed> printed = new ArrayList<>();
        while (at < bytes.length) {
            if (profile.asking().inTurn().isPresent() && take("inTurn", inTurn(), null, null)) continue;
            if (keeps()) continue;
            printed.add(label());
        }
        return printed;
    }

    /** One label from the head of the bytes; empty where its end has not come yet. */
    public Optional<Printed> one() {
        try {
            return Optional.of(label());
        } catch (AssertionError | IndexOutOfBoundsException e) {
            return Optional.empty();
        }
    }

    /** Bytes read so far. */
    public int consumed() {
        return at;
    }

    private String inTurn() {
        return profile.asking().inTurn().orElseThrow().question().text();
    }

    private Printed label() {
        Map<String, Integer> numbers = new HashMap<>();
        PrinterProfile.Sending sending = profile.sending();
        if (take("again", sending.after().again().text(), numbers, null)) {
            if (kept == null) throw new AssertionError("nothing was kept that could be printed again, at byte " + at);
            return new Printed(kept, numbers.getOrDefault("copies", 1));
        }
        if (!take("start", sending.start().text(), numbers, null)) throw lost();
        boolean[][] ink = new boolean[height][width];
        int y = 0;
        while (true) {
            byte[][] data = new byte[1][];
            if (take("row", sending.row().text(), numbers, data)) {
                int top = profile.coding().form() == PrinterProfile.Form.ROWS ? y : numbers.get("y");
                y = top + ink(ink, data[0], numbers, top);
            } else if (!sending.feed().isEmpty() && take("feed", sending.feed().text(), numbers, null))
                y += numbers.get("feed");
            else if (named("recall", numbers, data)) recall(ink, numbers.get("y"));
            else if (named("differ", numbers, data)) ink(ink, data[0], numbers, numbers.get("y"));
            else if (take("end", sending.after().end().text(), numbers, null)) {
                kept = dried(ink);
                if (sending.after().isKeptFirst()) return label();
                return new Printed(kept, numbers.getOrDefault("copies", 1));
            } else throw lost();
        }
    }

    private AssertionError lost() {
        return new AssertionError("no command of the profile at byte " + at + " of " + bytes.length);
    }

    private boolean named(String command, Map<String, Integer> numbers, byte[][] data) {
        return profile.coding().keeping().isPresent()
                && take(
                        command,
                        (command.equals("recall")
                                        ? profile.coding().keeping().get().recall()
                                        : profile.coding().keeping().get().differ())
                                .text(),
                        numbers,
                        data);
    }

    /** What is not in the memory leaves the label blank, as from memory such printers do. */
    private void recall(boolean[][] ink, int top) {
        Dots picture = memory.get(name);
        if (picture == null) return;
        for (int y = 0; y < picture.height(); y++)
            for (int x = 0; x < picture.width(); x++) if (picture.isBlack(x, y)) ink[top + y][x] ^= true;
    }

    private static Dots dried(boolean[][] black) {
        Dots.Ink ink = new Dots.Ink(black[0].length, black.length);
        for (int y = 0; y < black.length; y++)
            for (int x = 0; x < black[y].length; x++) if (black[y][x]) ink.set(x, y, true);
        return ink.dry();
    }

    private int ink(boolean[][] ink, byte[] data, Map<String, Integer> numbers, int top) {
        int rowBytes = profile.coding().form() == PrinterProfile.Form.ROWS ? data.length : numbers.get("rowBytes");
        int rows = data.length / rowBytes;
        for (int row = 0; row < rows; row++)
            for (int x = 0; x < rowBytes * 8; x++) {
                boolean one = (data[row * rowBytes + x / 8] >> 7 - x % 8 & 1) == 1;
                // White that fills up the last byte may lie off the picture; black may not.
                if (one == profile.coding().blackIsOne()) ink[top + row][numbers.getOrDefault("x", 0) + x] ^= true;
            }
        return rows;
    }

    /** Tries to match {@code template} here; on success moves past it. */
    private boolean take(String command, String template, Map<String, Integer> numbers, byte[][] data) {
        if (template.isEmpty()) return false;
        Map<String, Integer> met = numbers == null ? new HashMap<>() : new HashMap<>(numbers);
        int here = at;
        Matcher pieces = Pattern.compile("<(..)>|\\{(\\w+)(?::(\\w+))?}|(.)").matcher(template);
        while (pieces.find()) {
            if (pieces.group(1) != null || pieces.group(4) != null) {
                int wanted = pieces.group(1) != null
                        ? Integer.parseInt(pieces.group(1), 16)
                        : pieces.group(4).charAt(0);
                if (here >= bytes.length || (bytes[here++] & 0xFF) != wanted) return false;
                continue;
            }
            String gap = pieces.group(2);
            if (gap.equals("name")) {
                if (here + 8 > bytes.length) return false;
                name = new String(bytes, here, 8, StandardCharsets.US_ASCII);
                here += 8;
            } else if (gap.equals("data")) here = data(here, met, data);
            else here = number(here, gap, pieces.group(3), met);
            if (here < 0) return false;
        }
        if (met.containsKey("crc") && template.contains("{crc"))
            if (met.get("crc") != met.get("crcOfData").intValue())
                throw new AssertionError("checksum of the dots is wrong before byte " + here);
        at = here;
        structure.add(command);
        if (numbers != null) numbers.putAll(met);
        return true;
    }

    private int number(int from, String gap, String form, Map<String, Integer> met) {
        int here = from;
        if (form == null) {
            int value = 0;
            while (here < bytes.length && bytes[here] >= '0' && bytes[here] <= '9')
                value = value * 10 + bytes[here++] - '0';
            met.put(gap, value);
            return here == from ? -1 : here;
        }
        if (form.equals("hex16")) {
            if (here + 4 > bytes.length) return -1;
            met.put(gap, Integer.parseInt(new String(bytes, here, 4, StandardCharsets.US_ASCII), 16));
            return here + 4;
        }
        int length = form.equals("byte") ? 1 : 2;
        if (here + length > bytes.length) return -1;
        int first = bytes[here] & 0xFF;
        int second = length == 2 ? bytes[here + 1] & 0xFF : 0;
        met.put(gap, length == 1 ? first : form.equals("le16") ? first + 256 * second : 256 * first + second);
        return here + length;
    }

    private int data(int from, Map<String, Integer> met, byte[][] data) {
        if (profile.coding().form() == PrinterProfile.Form.HEX_RUNS) return hex(from, met, data);
        if (profile.coding().form() == PrinterProfile.Form.DEFLATED) return inflated(from, met, data);
        int length = profile.coding().form() == PrinterProfile.Form.ROWS
                ? met.getOrDefault("bytes", met.get("rowBytes"))
                : met.get("rows") * met.get("rowBytes");
        if (from + length > bytes.length) return -1;
        data[0] = java.util.Arrays.copyOfRange(bytes, from, from + length);
        return from + length;
    }

    private int inflated(int from, Map<String, Integer> met, byte[][] data) {
        int here = from;
        while (here < bytes.length && SIXTY_FOUR.indexOf(bytes[here]) >= 0) here++;
        if (here == bytes.length) return -1;
        byte[] text = Arrays.copyOfRange(bytes, from, here);
        met.put("crcOfData", remainder(text));
        Inflater inflater = new Inflater();
        try {
            inflater.setInput(Base64.getDecoder().decode(text));
            data[0] = new byte[met.get("bytes")];
            int count = inflater.inflate(data[0]);
            if (count != data[0].length || inflater.inflate(new byte[1]) != 0 || !inflater.finished())
                throw new AssertionError("the dots are not of the length that is said before them");
        } catch (DataFormatException e) {
            throw new AssertionError("the dots are not deflated", e);
        } finally {
            inflater.end();
        }
        return here;
    }

    /** By long division of the bits, sixteen noughts put after them, by x^16 + x^12 + x^5 + 1. */
    static int remainder(byte[] text) {
        int rest = 0;
        for (int bit = 0; bit < 8 * text.length + 16; bit++) {
            int next = bit < 8 * text.length ? text[bit / 8] >> 7 - bit % 8 & 1 : 0;
            rest = rest << 1 | next;
            if (rest >= 1 << 16) rest ^= 0x11021;
        }
        return rest;
    }

    private int hex(int from, Map<String, Integer> met, byte[][] data) {
        int digitsARow = met.get("rowBytes") * 2;
        int rows = met.get("bytes") / met.get("rowBytes");
        StringBuilder all = new StringBuilder();
        int here = from;
        while (all.length() < rows * digitsARow) {
            int count = 0;
            char c = (char) bytes[here++];
            while (c >= 'G' && c <= 'Y' || c >= 'g' && c <= 'z') {
                count += c <= 'Y' ? c - 'G' + 1 : (c - 'g' + 1) * 20;
                c = (char) bytes[here++];
            }
            int rest = digitsARow - all.length() % digitsARow;
            if (c == ',') all.append("0".repeat(rest));
            else if (c == '!') all.append("F".repeat(rest));
            else if (c == ':') all.append(all.substring(all.length() - digitsARow));
            else all.append(String.valueOf(c).repeat(Math.max(1, count)));
        }
        data[0] = new byte[all.length() / 2];
        for (int i = 0; i < data[0].length; i++)
            data[0][i] = (byte) Integer.parseInt(all.substring(2 * i, 2 * i + 2), 16);
        return here;
    }

    @Override
    public String toString() {
        return new String(bytes, StandardCharsets.ISO_8859_1);
    }
}

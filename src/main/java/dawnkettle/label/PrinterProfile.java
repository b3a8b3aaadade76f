package dawnkettle.label;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** How dots and questions are put to a family of label printers, as written down in {@code labels/printers}. */
public record PrinterProfile(String name, Head head, Coding coding, Sending sending, Asking asking) {
    /**
     * @param dots dots across
     * @param mostRows rows of the longest label
     */
    public record Head(Pitch pitch, int dots, int mostRows) {}

    /**
     * @param form how the picture is cut up
     * @param blackIsOne whether a black dot is a 1
     * @param keeping empty where the family keeps no pictures by name
     */
    public record Coding(Form form, boolean blackIsOne, Optional<Keeping> keeping) {}

    /**
     * How pictures are kept in the printer by name, so that of a label only what differs from one of them crosses the line.
     *
     * @param store keeps a picture
     * @param recall puts a kept one on the label
     * @param differ turns dots over: black on white, white on black
     * @param listing which pictures it keeps
     * @param room how many it has room for
     */
    public record Keeping(ByteTemplate store, ByteTemplate recall, ByteTemplate differ, Listing listing, Room room) {}

    /**
     * The question after the names of kept pictures.
     *
     * @param answer what stands in its answer for a picture that is there
     * @param tail byte that ends its answer
     */
    public record Listing(ByteTemplate question, ByteTemplate answer, int tail) {}

    /**
     * @param drop drops all of them
     * @param most most pictures kept at once
     */
    public record Room(ByteTemplate drop, int most) {}

    /** How a picture is cut up. */
    public enum Form {
        /** A command a row, blank rows fed. */
        ROWS,
        /** A command for every run of rows with ink in them, at its height on the label, in plain bytes. */
        BAND,
        /** One command whose dots are hexadecimal digits with counts: G to Y for 1 to 19, g to z for 20 to 400. */
        HEX_RUNS,
        /** One command whose dots are deflated (RFC 1950) and then text of 64 characters (RFC 4648). */
        DEFLATED;

        public String word() {
            return name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
        }
    }

    /**
     * @param start before every picture
     * @param row before and around the dots of a row or a band
     * @param feed passes blank rows by; only where the form is by rows
     * @param after what follows the dots
     * @param limits how much goes at once, and how dark and fast
     */
    public record Sending(ByteTemplate start, ByteTemplate row, ByteTemplate feed, After after, Limits limits) {}

    /**
     * What follows the dots of a picture.
     *
     * @param end prints it; or, where {@code again} prints it each time, only keeps it
     * @param again prints once more what was sent last; empty where the family keeps no picture
     * @param isKeptFirst whether {@code end} only keeps the picture, so that the first label too comes by {@code again}
     * @param cut cuts or tears after the last label of a lot; empty where {@code end} does, or nothing
     * @param clear drops whatever the printer still has
     */
    public record After(
            ByteTemplate end, ByteTemplate again, boolean isKeptFirst, ByteTemplate cut, ByteTemplate clear) {}

    /**
     * @param mostFeed most rows fed by one command
     * @param mostCopies most copies of one picture; 1 where the printer cannot repeat
     */
    public record Limits(int mostFeed, int mostCopies, int darkness, int speed) {}

    /**
     * @param question asks for status, answered at once
     * @param inTurn asks for a byte that comes only after everything before it has been printed
     * @param unasked bytes that the printer sends by itself
     */
    public record Asking(ByteTemplate question, StatusReply reply, Optional<InTurn> inTurn, List<Unasked> unasked) {
        public Asking {
            unasked = List.copyOf(unasked);
        }

        /** Without the bytes that came by themselves. */
        byte[] asked(byte[] heard) {
            ByteRoll rest = new ByteRoll();
            for (byte one : heard) if (unasked.stream().noneMatch(byItself -> byItself.is(one))) rest.add(one);
            return rest.toBytes();
        }

        /** What the bytes that came by themselves mean. */
        Set<Condition> byThemselves(byte[] heard) {
            Set<Condition> conditions = EnumSet.noneOf(Condition.class);
            for (byte one : heard)
                for (Unasked byItself : unasked)
                    if (byItself.is(one)) byItself.means().ifPresent(conditions::add);
            return conditions;
        }
    }

    /**
     * A byte that comes without a question, as a busy mark or an end of one.
     *
     * @param means empty where it says nothing that matters
     */
    public record Unasked(int code, Optional<Condition> means) {
        boolean is(byte one) {
            return (one & 0xFF) == code;
        }
    }

    /** A question answered in its turn: its bytes, and which bits of the one byte that answers are how. */
    public record InTurn(ByteTemplate question, int mask, int is) {
        boolean isAnswer(byte one) {
            return (one & mask) == is;
        }
    }

    /** The same bytes for another head of the family. */
    public PrinterProfile with(Head other) {
        return new PrinterProfile(name, other, coding, sending, asking);
    }

    public boolean repeats() {
        return sending.limits().mostCopies() > 1;
    }

    /** Whether the printer keeps a picture, so that it crosses the line once a lot. */
    public boolean keeps() {
        return !sending.after().again().isEmpty();
    }

    /** What a profile lacks that printing cannot do without; empty where it lacks nothing. */
    public List<String> lacking() {
        List<String> lacking = new ArrayList<>();
        for (String gap : neededGaps())
            if (!sending.row().gaps().contains(gap))
                lacking.add("send.row \"" + sending.row().text() + "\" has no {" + gap + "}");
        if (coding.form() == Form.ROWS && !sending.feed().gaps().contains("feed"))
            lacking.add("send.feed \"" + sending.feed().text() + "\" has no {feed}");
        boolean saysCopies = sending.start().gaps().contains("copies")
                || sending.after().end().gaps().contains("copies")
                || sending.after().isKeptFirst();
        if (repeats() && !saysCopies)
            lacking.add("neither send.start nor send.end has {copies}, and mostCopies is \""
                    + sending.limits().mostCopies() + "\"");
        if (repeats() && keeps() && !sending.after().again().gaps().contains("copies"))
            lacking.add("send.again \"" + sending.after().again().text() + "\" has no {copies}, and mostCopies is \""
                    + sending.limits().mostCopies() + "\"");
        if (sending.after().isKeptFirst() && !keeps())
            lacking.add("send.endKeeps is true and send.again is \"\", so that nothing would be printed");
        coding.keeping().ifPresent(keeping -> lacking.addAll(lackingToKeep(keeping)));
        if (asking.inTurn().isEmpty() && !counts())
            lacking.add("ask has neither inTurn nor remaining, so that nothing printed could be known");
        if (asking.question().isEmpty()) lacking.add("ask.question is \"\"");
        for (Unasked byItself : asking.unasked())
            if (couldAnswer(byItself))
                lacking.add(String.format(
                        Locale.ROOT, "ask.unasked byte 0x%02X could as well be part of an answer", byItself.code()));
        return lacking;
    }

    private List<String> lackingToKeep(Keeping keeping) {
        List<String> lacking = new ArrayList<>();
        if (coding.form() == Form.ROWS) lacking.add("picture.form \"rows\" has no one command to keep a picture by");
        need(lacking, "keep.store", keeping.store(), "name", "data", "bytes", "rowBytes");
        need(lacking, "keep.recall", keeping.recall(), "name", "y");
        need(lacking, "keep.differ", keeping.differ(), "data", "bytes", "rowBytes", "y");
        need(lacking, "keep.answer", keeping.listing().answer(), "name");
        if (keeping.listing().question().isEmpty())
            lacking.add("keep.question is \"\", so that no kept picture could be relied on");
        if (keeps()) lacking.add("send.again and keep are both there, and a picture can be kept by one only");
        return lacking;
    }

    private static void need(List<String> lacking, String key, ByteTemplate template, String... gaps) {
        for (String gap : gaps)
            if (!template.gaps().contains(gap)) lacking.add(key + " \"" + template.text() + "\" has no {" + gap + "}");
    }

    private boolean couldAnswer(Unasked byItself) {
        byte one = (byte) byItself.code();
        return asking.reply().mayHold(one)
                || asking.inTurn().filter(turn -> turn.isAnswer(one)).isPresent();
    }

    private List<String> neededGaps() {
        return switch (coding.form()) {
            case ROWS -> List.of("data");
            case BAND -> List.of("data", "rows", "rowBytes", "y");
            case HEX_RUNS, DEFLATED -> List.of("data", "bytes", "rowBytes");
        };
    }

    /** Whether the printer says how many labels are still to come. */
    public boolean counts() {
        return asking.reply() instanceof StatusReply.Bits bits && bits.remaining() >= 0
                || asking.reply() instanceof StatusReply.Fields fields && fields.remaining() >= 0;
    }
}

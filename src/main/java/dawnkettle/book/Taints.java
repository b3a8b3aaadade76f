package dawnkettle.book;

import dawnkettle.book.Sense.Kind;
import dawnkettle.book.Sentence.Part;
import java.util.BitSet;
import java.util.List;

/**
 * Which parts of a sentence are made uncertain by words in other parts of it.
 *
 * <p>Words that we do not know govern what follows them up to the next words that ask for something ("you sent 6 firm, 8
 * medium"); behind an order in which nothing is asked for they govern what stands before ("6 firm, 8 medium arrived broken").
 * What stands between commas with words of no order in it is a remark and governs nothing.
 */
final class Taints {
    private static final Kind[] OF_PRODUCT = {Kind.KIND, Kind.FORM, Kind.CODE, Kind.CASE, Kind.SIZE};
    private final List<Part> parts;
    private final Leftover leftover;
    private final BitSet uncertain = new BitSet();
    private boolean colon;
    private boolean flows;
    private boolean asked;

    private Taints(List<Part> parts, Leftover leftover) {
        this.parts = parts;
        this.leftover = leftover;
    }

    /** @param colon whether a colon ends the first of the parts */
    static BitSet of(List<Part> parts, Leftover leftover, boolean colon) {
        Taints taints = new Taints(parts, leftover);
        taints.colon = colon;
        for (int i = 0; i < parts.size(); i++) if (!parts.get(i).isDay()) taints.part(i);
        for (int i = 0; i < parts.size(); i++) taints.unsure(i);
        return taints.uncertain;
    }

    /** Words without an order in them: figures may be among them ("we are 55 on Sunday"). */
    static boolean isRemark(Part part) {
        boolean strange = part.has(Kind.UNKNOWN, Kind.PAST, Kind.REASON, Kind.HELLO, Kind.BYE, Kind.LAST_WEEK);
        return strange && !part.has(OF_PRODUCT) && !Leftover.isEntry(part);
    }

    private void part(int at) {
        Part part = parts.get(at);
        if (part.has(Kind.HELLO, Kind.BYE) && !part.isOfOrder() || leftover.isReason(part)) return;
        if (isRemark(part)) remark(at, part);
        else if (part.isOfOrder()) order(at, part);
        if (asks(part)) flows = false;
        asked |= asks(part);
    }

    /** A condition governs what follows it, or all where nothing does; a doubt ("maybe 12 sesame") its own entry, or all. */
    private void unsure(int at) {
        Part part = parts.get(at);
        boolean polite = part.has(Kind.HELLO, Kind.BYE) && !part.isOfOrder();
        boolean before = isPreamble(at)
                && part.senses().stream()
                        .noneMatch(s -> isUnsure(s) && !s.value().equals("hour"));
        if (polite || before || part.senses().stream().noneMatch(Taints::isUnsure)) return;
        boolean entry = part.has(Kind.KIND, Kind.CODE) && part.has(Kind.NUMBER, Kind.A);
        boolean follows = parts.subList(at + 1, parts.size()).stream().anyMatch(next -> next.has(OF_PRODUCT));
        if (part.senses().stream().anyMatch(s -> s.value().equals("if"))) uncertain.set(follows ? at : 0, parts.size());
        else if (entry && part.senses().stream().noneMatch(s -> s.value().equals("or"))) uncertain.set(at);
        else uncertain.set(0, parts.size());
    }

    /** Where a condition begins that an order of its own follows; below nought where none does. */
    static int condition(List<Part> parts) {
        for (int i = 1; i < parts.size(); i++) {
            boolean begins = parts.get(i).senses().get(0).is(Kind.UNSURE)
                    && parts.get(i).senses().get(0).value().equals("if");
            boolean follows = parts.subList(i, parts.size()).stream().anyMatch(next -> next.has(OF_PRODUCT));
            if (begins && follows && !parts.get(i).joined()) return i;
        }
        return -1;
    }

    private static boolean isUnsure(Sense sense) {
        return sense.is(Kind.FORGET) || sense.is(Kind.UNSURE) && !sense.value().equals("measure");
    }

    /** "Last order before the holidays:" */
    private boolean isPreamble(int at) {
        return colon && parts.subList(0, at + 1).stream().noneMatch(Part::isOfOrder);
    }

    /** Whether its last words ask for something. */
    static boolean asks(Part part) {
        return Asking.in(part.senses()) && !part.has(Kind.PAST);
    }

    /** Whether a day behind it is one of delivery: "we hereby order for", "hi all at the mill", "for the chapel". */
    static boolean leadsTo(Part part) {
        boolean purpose = Asking.isPurpose(part.senses().get(0));
        boolean said = part.senses().stream().anyMatch(Asking::is);
        return !Leftover.isRisky(part) && !part.isOfOrder() && (said || purpose || part.has(Kind.HELLO));
    }

    private void remark(int at, Part part) {
        boolean past = part.has(Kind.PAST, Kind.LAST, Kind.LAST_WEEK);
        boolean name = at == parts.size() - 1 && leftover.isName(part);
        if (past && (part.has(Kind.PAST, Kind.LAST_WEEK) || !isPreamble(at))) flows = true;
        else if (!name && part.has(Kind.UNKNOWN) && goesOn(at)) flows = true;
        boolean bare = past && part.senses().get(0).is(Kind.PAST);
        if (bare && !asked) uncertain.set(0, at);
    }

    /** Whether no comma parts it from the order that follows, days between them aside. */
    private boolean goesOn(int at) {
        int next = at + 1;
        while (next < parts.size() && parts.get(next).isDay() && parts.get(next).joined()) next++;
        return next < parts.size() && parts.get(next).joined();
    }

    private void order(int at, Part part) {
        boolean before = Leftover.isStrangeBefore(part) && !Leftover.isEntry(part);
        boolean behind = Leftover.isStrangeBehind(part) && !Leftover.isEntry(part);
        boolean past = part.has(Kind.PAST);
        if (before || past) flows = true;
        if (flows) uncertain.set(at);
        if (past && !asked) uncertain.set(0, at + 1);
        if (behind && !asked) uncertain.set(0, at + 1);
    }
}

package dawnkettle.label;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Pictures that were given to a printer to keep, and which of them a label is told shortest from. */
final class KeptPictures {
    /** Questions in vain after which a printer is taken for one that has no list to give. */
    private static final int IN_VAIN = 3;

    private static final long NAMES = (long) Math.pow(36, 8);

    private final Framing framing;
    private final int most;
    private int unanswered;
    private final Map<String, Dots> kept = new LinkedHashMap<>();

    KeptPictures(Framing framing, int most) {
        this.framing = framing;
        this.most = most;
    }

    /** A picture to start from, by its name in the printer. */
    record Base(String name, Dots picture) {}

    /** The kept picture that differs in the fewest dots; the label itself, to be kept, where that does not halve it. */
    Base base(Dots fed) {
        Base itself = new Base(name(fed), fed);
        if (holds(itself)) return itself;
        Optional<Base> nearest = kept.entrySet().stream()
                .map(one -> new Base(one.getKey(), one.getValue()))
                .filter(one -> isLike(one.picture(), fed))
                .min(Comparator.comparing(one -> one.picture().unlike(fed).blackDots()));
        int half = framing.group(fed, 1).length / 2;
        return nearest.filter(one -> framing.from(one, fed, 1).length < half).orElse(itself);
    }

    /** Another size has another place on the head, and one with most dots elsewhere is not worth coding. */
    private static boolean isLike(Dots kept, Dots fed) {
        return kept.width() == fed.width()
                && kept.height() == fed.height()
                && kept.unlike(fed).blackDots() < fed.blackDots() / 2;
    }

    boolean isWorthAsking() {
        return unanswered < IN_VAIN;
    }

    void asked(boolean isAnswered) {
        unanswered = isAnswered ? 0 : unanswered + 1;
    }

    boolean holds(Base base) {
        return kept.containsKey(base.name());
    }

    boolean isFull() {
        return kept.size() >= most;
    }

    void add(Base base) {
        kept.put(base.name(), base.picture());
    }

    void forget() {
        kept.clear();
    }

    /**
     * Eight characters that stand for the very dots (a hash after Fowler, Noll and Vo of 64 bits, from memory, cut to 41),
     * so that a picture found under its name is the one meant, whenever it was put there.
     */
    static String name(Dots dots) {
        long hash = 0xCBF29CE484222325L;
        hash = (hash ^ dots.width()) * 0x100000001B3L;
        for (int y = 0; y < dots.height(); y++)
            for (byte one : dots.row(y)) hash = (hash ^ one & 0xFF) * 0x100000001B3L;
        String name = Long.toString(Long.remainderUnsigned(hash, NAMES), 36).toUpperCase(Locale.ROOT);
        return "0".repeat(8 - name.length()) + name;
    }
}

package dawnkettle.book;

import dawnkettle.book.Sense.Kind;
import dawnkettle.book.Sentence.Part;
import dawnkettle.shop.Product;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What "one of medium" is one of: the pack that the entry before it names, where that leaves one product only. */
final class CarryPack {
    private static final Kind[] OF_PACK = {Kind.FORM, Kind.CASE, Kind.UNIT, Kind.SIZE};

    private CarryPack() {}

    /** The pack that a part names, or else the one named before it. */
    static List<Sense> of(Part part, List<Sense> before) {
        List<Sense> own =
                part.senses().stream().filter(sense -> sense.is(OF_PACK)).toList();
        boolean plain = part.has(Kind.KIND, Kind.CODE) && own.isEmpty() && !isOf(part);
        return plain ? List.of() : own.isEmpty() ? before : own;
    }

    /** The part with its pack; unchanged, "of" and all, where that is not certain. */
    static Part to(Part part, List<Sense> pack, FindProduct products) {
        if (!isOf(part)) return part;
        List<Sense> plain = part.senses().stream()
                .filter(sense -> !Asking.says(sense, "of"))
                .toList();
        List<Sense> packed = new ArrayList<>(plain);
        int at = plain.get(plain.size() - 1).until();
        pack.forEach(sense -> packed.add(new Sense(sense.kind(), sense.value(), at, at)));
        Optional<Product> alone = products.of(plain);
        Optional<Product> within = products.of(packed);
        boolean form = pack.stream().allMatch(sense -> sense.is(Kind.FORM));
        if (pack.isEmpty() || form && (within.isEmpty() || within.equals(alone)))
            return new Part(List.copyOf(plain), part.joined());
        return form && alone.isEmpty() ? new Part(List.copyOf(packed), part.joined()) : part;
    }

    private static boolean isOf(Part part) {
        List<Sense> senses = part.senses();
        for (int i = 1; i + 1 < senses.size(); i++)
            if (senses.get(i - 1).is(Kind.NUMBER, Kind.A)
                    && Asking.says(senses.get(i), "of")
                    && senses.get(i + 1).is(Kind.KIND, Kind.NOISE, Kind.GRADE)) return !part.has(OF_PACK);
        return false;
    }
}

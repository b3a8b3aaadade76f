package dawnkettle.stock;

import dawnkettle.stock.KnownLots.Bought;
import java.util.Optional;

/** The words that hold a lot, ours or a supplier's, and those with which a named person lets it go. */
final class HoldWords {
    private final FactWords words;
    private final Desk desk;
    private final LotWords lots;

    HoldWords(FactWords words, Desk desk, LotWords lots) {
        this.words = words;
        this.desk = desk;
        this.lots = lots;
    }

    Optional<Fact> fact(String kind) {
        return kind.equals("hold") ? held() : released();
    }

    /** A supplier's lot by its own code; anything that looks like ours is one of ours. */
    private Optional<Bought> bought() {
        return LotCode.isOne(words.at(1).toUpperCase(java.util.Locale.ROOT))
                ? Optional.empty()
                : desk.lots().findBought(words.at(1));
    }

    /** A lot may be held before it has run: what is planned of it then gets no label. */
    private Optional<Fact> held() {
        words.expect(3, Integer.MAX_VALUE, "record hold LOT WHY");
        Optional<Bought> bought = bought();
        Optional<LotCode> lot = bought.isPresent() ? Optional.empty() : lots.plannedOrBought(1);
        Optional<String> why = words.text(2, "reason");
        if (why.isEmpty()) return Optional.empty();
        return bought.<Fact>map(one -> new Fact.HeldBought(one.material(), one.lot(), why.get()))
                .or(() -> lot.map(one -> new Fact.Held(one, why.get())));
    }

    private Optional<Fact> released() {
        words.expect(5, Integer.MAX_VALUE, "record release LOT by NAME WHY");
        Optional<Bought> bought = bought();
        Optional<LotCode> lot = bought.isPresent() ? Optional.empty() : lots.plannedOrBought(1);
        if (bought.filter(one -> !desk.lots().past().holds().isHeld(one.lot())).isPresent())
            words.complain(1, "lot " + words.quoted(1) + " is not held", "there is nothing to release");
        if (!words.at(2).equalsIgnoreCase("by"))
            words.complain(2, words.quoted(2) + " is not the word by", "write who answers for it: by NAME WHY");
        if (!words.at(3).matches(".*\\p{L}.*"))
            words.complain(
                    3, "name " + words.quoted(3) + " is no name", "write the name of the person who releases it");
        Optional<String> why = words.text(4, "reason");
        if (why.isEmpty()) return Optional.empty();
        String name = words.at(3).strip();
        return bought.<Fact>map(one -> new Fact.ReleasedBought(one.material(), one.lot(), name, why.get()))
                .or(() -> lot.map(one -> new Fact.Released(one, name, why.get())));
    }
}

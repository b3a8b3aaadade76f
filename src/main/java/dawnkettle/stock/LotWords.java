package dawnkettle.stock;

import dawnkettle.book.Admission;
import dawnkettle.book.Nearest;
import dawnkettle.shop.Material;
import dawnkettle.shop.Product;
import dawnkettle.stock.KnownLots.Bought;
import dawnkettle.stock.KnownLots.Made;
import dawnkettle.stock.KnownLots.Packs;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeSet;

/** The words of a record that name a lot, and how many packs of it; refused where there is no such lot yet. */
final class LotWords {
    /** A floor that runs early is still believed: what starts within the hour is settled, as a revision has it. */
    private static final Duration EARLY = Duration.ofHours(1);

    private final FactWords words;
    private final Desk desk;
    private final Instant at;

    LotWords(FactWords words, Desk desk, Instant at) {
        this.words = words;
        this.desk = desk;
        this.at = at;
    }

    /** Packs of a product of a lot. */
    record Some(LotCode lot, String product, int packs) {}

    /** A batch's lot that has run. */
    Optional<Made> lot(int place) {
        String word = words.at(place).toUpperCase(Locale.ROOT);
        if (!LotCode.isOne(word)) {
            words.complain(
                    place,
                    "lot " + words.quoted(place) + " is not like 261204-FI03",
                    "write it as its label and the run sheet have it");
            return Optional.empty();
        }
        Optional<Made> made = desk.lots().findMade(new LotCode(word));
        if (made.isEmpty()) words.complain(place, "there never was a lot " + words.quoted(place), nearest(word));
        else if (made.get().making().startsAt().isAfter(at.plus(EARLY)))
            words.complain(
                    place,
                    "lot " + words.quoted(place) + " had not run at " + desk.local(at) + ": it is planned for "
                            + desk.local(made.get().making().startsAt()),
                    "record it when it has run");
        return made;
    }

    /** A lot of a plan, whether it has run or not. */
    Optional<LotCode> planned(int place) {
        String word = words.at(place).toUpperCase(Locale.ROOT);
        if (!LotCode.isOne(word))
            words.complain(
                    place,
                    "lot " + words.quoted(place) + " is not like 261204-FI03",
                    "write it as its label and the run sheet have it");
        else if (desk.lots().findMade(new LotCode(word)).isEmpty())
            words.complain(place, "there never was a lot " + words.quoted(place), nearest(word));
        else return Optional.of(new LotCode(word));
        return Optional.empty();
    }

    private String nearest(String word) {
        List<String> codes =
                desk.lots().made().stream().map(made -> made.lot().text()).toList();
        return Nearest.to(word, codes)
                .map(near -> "did you mean \"" + near + "\"?")
                .orElse("write a lot of the plan of its day, as its label has it");
    }

    /** Packs that left a lot: its code, the product and how many, in three words. */
    Optional<Some> someOf(int place) {
        Optional<Made> lot = lot(place);
        Optional<String> product = product(place + 1, lot);
        Optional<Integer> packs = words.whole(place + 2, "packs", 1, Admission.MOST_PACKS);
        if (lot.isEmpty() || product.isEmpty() || packs.isEmpty()) return Optional.empty();
        refuseLost(place, lot.get());
        Packs known = lot.get().packs().get(product.get());
        if (packs.get() > known.left())
            words.complain(
                    place + 2,
                    "packs " + words.quoted(place + 2) + " are more than the " + known.left() + " left of "
                            + known.filled() + " filled",
                    "if more were filled, count them first: record count "
                            + lot.get().lot() + " " + product.get() + " PACKS");
        return Optional.of(new Some(lot.get().lot(), product.get(), packs.get()));
    }

    /** Packs of a lot that were counted: its code, the product and how many, in three words. */
    Optional<Some> counted(int place) {
        Optional<Made> lot = lot(place);
        Optional<String> product = product(place + 1, lot);
        Optional<Integer> packs = words.whole(place + 2, "packs", 0, Admission.MOST_PACKS);
        if (lot.isEmpty() || product.isEmpty() || packs.isEmpty()) return Optional.empty();
        if (packs.get() > 0) refuseLost(place, lot.get());
        return Optional.of(new Some(lot.get().lot(), product.get(), packs.get()));
    }

    /** Packs that were filled from a lot, however many were planned: its code, the product and how many. */
    Optional<Some> filled(int place) {
        Optional<Made> lot = lot(place);
        Optional<String> product = product(place + 1, lot);
        Optional<Integer> packs = words.whole(place + 2, "packs", 0, Admission.MOST_PACKS);
        return lot.isEmpty() || product.isEmpty() || packs.isEmpty()
                ? Optional.empty()
                : Optional.of(new Some(lot.get().lot(), product.get(), packs.get()));
    }

    /** What was written off is never sold, also where somebody finds it in the cold room. */
    private void refuseLost(int place, Made lot) {
        if (lot.lost())
            words.complain(
                    place,
                    "the whole lot " + words.quoted(place) + " was recorded as lost",
                    "throw it away; nothing of it is sold");
    }

    private Optional<String> product(int place, Optional<Made> lot) {
        Optional<Product> product = desk.admission().findProduct(words.at(place));
        if (product.isEmpty()) words.complain(place, desk.admission().unknownProduct(words.at(place)));
        else if (lot.isPresent() && !lot.get().packs().containsKey(product.get().code())) {
            words.complain(
                    place,
                    "nothing of lot \"" + lot.get().lot() + "\" was filled as " + words.quoted(place),
                    lot.get().packs().isEmpty()
                            ? "look at the lot: no packs are filled from it"
                            : "write one of "
                                    + String.join(
                                            ", ",
                                            new TreeSet<>(lot.get().packs().keySet())));
            return Optional.empty();
        }
        return product.map(Product::code);
    }

    /** A supplier's lot of a material that came in. */
    Optional<Bought> bought(int place, Material material) {
        List<Bought> ofMaterial = desk.lots().bought().stream()
                .filter(lot -> lot.material().equals(material.code()))
                .toList();
        Optional<Bought> found = desk.lots().findBought(words.at(place)).filter(ofMaterial::contains);
        if (found.isEmpty())
            words.complain(
                    place,
                    "no lot " + words.quoted(place) + " of " + material.code() + " ever came in",
                    Nearest.to(
                                    words.at(place),
                                    ofMaterial.stream().map(Bought::lot).toList())
                            .map(near -> "did you mean \"" + near + "\"?")
                            .orElse("write it down first: receive " + material.code() + " LOT QUANTITY PRICE"));
        return found;
    }
}

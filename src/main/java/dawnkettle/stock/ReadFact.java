package dawnkettle.stock;

import dawnkettle.book.Admission;
import dawnkettle.book.Nearest;
import dawnkettle.measure.Celsius;
import dawnkettle.measure.Mass;
import dawnkettle.shop.Customer;
import dawnkettle.shop.Material;
import dawnkettle.shop.Product;
import dawnkettle.stock.KnownLots.Bought;
import dawnkettle.stock.KnownLots.Made;
import dawnkettle.trouble.BadFile;
import java.math.RoundingMode;
import java.time.Instant;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** Reads what happened, typed as a kind of record and what it is about, as {@code yield 261204-FI01 212.4}. */
public final class ReadFact {
    private static final String YIELD = "record yield LOT KG";
    private static final String COOKED = "record cooked LOT CELSIUS MINUTES";
    private static final String COOLED = "record cooled LOT CELSIUS";
    private static final String LOST = "record lost LOT [PRODUCT PACKS] WHY, or: record lost MATERIAL LOT QUANTITY WHY";
    private static final String COUNT =
            "record count LOT PRODUCT PACKS [WHY], or: record count MATERIAL LOT QUANTITY [WHY]";
    private static final String SOLD = "record sold LOT PRODUCT PACKS";
    private static final String RETURNED = "record returned CUSTOMER PRODUCT COUNT [of LOT] WHY";
    private static final List<String> KINDS = Stream.concat(
                    Stream.of("yield", "cooked", "cooled", "lost", "count", "sold", "returned", "short"),
                    KeepingWords.KINDS.stream())
            .toList();

    /** No cook is cooler, and none hotter without pressure (common practice, no source); 200 is a slip in the unit. */
    private static final int[] COOK = {40, 125};

    /** From a cold room's coldest to boiling (common practice, no source). */
    private static final int[] COOL = {-5, 100};

    /** Minutes; more is a slip (common practice, no source). */
    private static final int LONGEST_COOK = 240;

    /** A batch that gives twice what was expected was mistyped (common practice, no source). */
    private static final int TIMES_EXPECTED = 2;

    /** What a scale may show above what came in, a tenth (common practice, no source); more is a slip. */
    private static final int TENTHS = 10;

    private static final int ELEVEN = 11;

    private static final String CONTAINERS = "containers";

    private final FactWords words;
    private final Desk desk;
    private final Admission admission;
    private final LotWords lots;
    private final Instant at;

    private ReadFact(List<String> typed, Optional<LocalDateTime> at, Desk desk) {
        this.words = new FactWords("record", isPrice(typed) ? FactWords.priceInOneWord(typed, 3) : typed);
        this.desk = desk;
        this.admission = desk.admission();
        this.at = at.map(this::instant).orElse(desk.now());
        this.lots = new LotWords(words, desk, this.at);
    }

    /** A currency may stand behind the amount as a word of its own. */
    private static boolean isPrice(List<String> typed) {
        return typed.size() > 4
                && typed.get(0).equalsIgnoreCase("price")
                && typed.get(4).equalsIgnoreCase("from");
    }

    /**
     * @param at the local time when it happened; empty for now
     * @throws BadFile with every word that cannot be read or is refused
     */
    public static Recorded read(List<String> words, Optional<LocalDateTime> at, Desk desk) {
        return new ReadFact(words, at, desk).read();
    }

    private Instant instant(LocalDateTime local) {
        Instant instant = local.atZone(desk.zone()).toInstant();
        if (desk.zone().getRules().getValidOffsets(local).isEmpty())
            words.complainOf("--at", "the clocks jump over \"" + local + "\"", "write the time that the clock showed");
        else if (instant.isAfter(desk.now()))
            words.complainOf(
                    "--at",
                    "\"" + local + "\" is in the future",
                    "record it when it has happened; here it is " + desk.local(desk.now()));
        return instant;
    }

    private Recorded read() {
        Optional<Fact> fact = fact(words.at(0).toLowerCase(Locale.ROOT));
        words.throwIfBad();
        return desk.write(fact.orElseThrow(), at);
    }

    private Optional<Fact> fact(String kind) {
        return switch (kind) {
            case "yield" -> yielded();
            case "cooked" -> cooked();
            case "cooled" -> cooled();
            case "lost" -> lost();
            case "count" -> isMaterial() ? countMaterial() : countPacks();
            case "sold" -> sold();
            case "returned", "short" -> returned(kind);
            default ->
                KeepingWords.KINDS.contains(kind) ? new KeepingWords(words, desk, lots, at).fact(kind) : unknown(kind);
        };
    }

    private Optional<Fact> unknown(String kind) {
        words.complain(
                0,
                "unknown kind of record " + words.quoted(0),
                Nearest.to(kind, KINDS)
                        .map(near -> "did you mean \"" + near + "\"?")
                        .orElse("write one of " + String.join(", ", KINDS)));
        return Optional.empty();
    }

    private Optional<Fact> yielded() {
        words.expect(3, 3, YIELD);
        Optional<Made> lot = lots.lot(1);
        Optional<Mass> product = words.kilograms(2);
        if (product.filter(Mass::isZero).isPresent())
            words.complain(2, "a yield of nothing", "if the batch is lost write: record lost LOT WHY");
        if (lot.isPresent() && product.isPresent()) {
            Mass expected = lot.get().making().expected();
            if (product.get().compareTo(expected.times(TIMES_EXPECTED)) > 0)
                words.complain(
                        2,
                        "yield " + words.quoted(2) + " is more than twice the "
                                + expected.inKilograms(1, RoundingMode.HALF_UP) + " kg" + " expected",
                        "write the kilograms before trimming");
        }
        return both(lot, product)
                ? Optional.of(new Fact.Yielded(
                        lot.get().lot(),
                        lot.get().making().recipe(),
                        lot.get().making().input(),
                        product.get()))
                : Optional.empty();
    }

    private static boolean both(Optional<?> one, Optional<?> other) {
        return one.isPresent() && other.isPresent();
    }

    private Optional<Fact> cooked() {
        words.expect(4, 4, COOKED);
        Optional<Made> lot = lots.lot(1);
        Optional<Celsius> reached = words.celsius(2, COOK[0], COOK[1]);
        Optional<Integer> minutes = words.whole(3, "minutes", 0, LONGEST_COOK);
        return both(lot, reached) && minutes.isPresent()
                ? Optional.of(new Fact.Cooked(lot.get().lot(), reached.get(), minutes.get()))
                : Optional.empty();
    }

    private Optional<Fact> cooled() {
        words.expect(3, 3, COOLED);
        Optional<Made> lot = lots.lot(1);
        Optional<Celsius> reached = words.celsius(2, COOL[0], COOL[1]);
        return both(lot, reached) ? Optional.of(new Fact.Cooled(lot.get().lot(), reached.get())) : Optional.empty();
    }

    private Optional<Fact> lost() {
        if (admission.findMaterial(words.at(1)).isPresent())
            return new KeepingWords(words, desk, lots, at).lostMaterial(LOST);
        return isOfPacks() ? lostPacks() : lostBatch();
    }

    /** Whether packs are lost and not the batch: where in doubt, so that no batch is written off by a slip. */
    private boolean isOfPacks() {
        List<String> codes = desk.shop().products().stream().map(Product::code).toList();
        return words.at(3).matches("-?[0-9]+") || Nearest.to(words.at(2), codes).isPresent();
    }

    private Optional<Fact> lostBatch() {
        words.expect(3, Integer.MAX_VALUE, LOST);
        Optional<Made> lot = lots.lot(1);
        Optional<String> why = words.text(2, "reason");
        return both(lot, why) ? Optional.of(new Fact.LostBatch(lot.get().lot(), why.get())) : Optional.empty();
    }

    private Optional<Fact> lostPacks() {
        words.expect(4, Integer.MAX_VALUE, LOST);
        Optional<LotWords.Some> lost = lots.someOf(1);
        Optional<String> why = words.text(4, "reason");
        return both(lost, why)
                ? Optional.of(new Fact.LostPacks(
                        lost.get().lot(), lost.get().product(), lost.get().packs(), why.get()))
                : Optional.empty();
    }

    private Optional<Fact> sold() {
        words.expect(4, 4, SOLD);
        return lots.someOf(1).map(some -> new Fact.Sold(some.lot(), some.product(), some.packs()));
    }

    private boolean isMaterial() {
        return admission.findMaterial(words.at(1)).isPresent() || !words.at(1).matches("[0-9]{6}.*");
    }

    private Optional<Fact> countPacks() {
        words.expect(4, Integer.MAX_VALUE, COUNT);
        return lots.counted(1)
                .map(some -> new Fact.CountedPacks(
                        some.lot(), some.product(), some.packs(), Optional.empty(), words.rest(4)));
    }

    private Optional<Fact> countMaterial() {
        words.expect(4, Integer.MAX_VALUE, COUNT);
        Optional<Material> material = admission.findMaterial(words.at(1));
        if (material.isEmpty()) words.complain(1, admission.unknownMaterial(words.at(1)));
        if (material.isEmpty()) return Optional.empty();
        Optional<Bought> lot = lots.bought(2, material.get());
        Optional<Quantity> left = words.quantity(3, material.get().unit());
        if (both(lot, left) && left.get().smallest() > lot.get().received().smallest() / TENTHS * ELEVEN)
            words.complain(
                    3,
                    "quantity " + words.quoted(3) + " is more than all that came in of the lot",
                    "receive the rest first, or look at the number");
        return both(lot, left)
                ? Optional.of(new Fact.CountedMaterial(
                        material.get().code(), lot.get().lot(), left.get(), words.rest(4)))
                : Optional.empty();
    }

    /** Goods, unless the reason is the one word that says otherwise; those that never got there are short. */
    private Optional<Fact> returned(String kind) {
        boolean isShort = kind.equals("short");
        words.expect(5, Integer.MAX_VALUE, isShort ? RETURNED.replace("returned", "short") : RETURNED);
        Optional<Customer> customer = admission.findCustomer(words.at(1));
        if (customer.isEmpty()) words.complain(1, admission.unknownCustomer(words.at(1)));
        Optional<Product> product = admission.findProduct(words.at(2));
        if (product.isEmpty()) words.complain(2, admission.unknownProduct(words.at(2)));
        Optional<Integer> count = words.whole(3, "count", 1, Admission.MOST_PACKS);
        boolean ofLot = words.at(4).equalsIgnoreCase("of");
        Optional<Made> lot = ofLot ? lots.lot(5) : Optional.empty();
        Optional<String> why = words.text(ofLot ? 6 : 4, "reason");
        if (!both(customer, product) || !both(count, why)) return Optional.empty();
        boolean empty = !isShort && why.get().equalsIgnoreCase(CONTAINERS);
        if (empty && product.get().packing().deposit().minor() == 0)
            words.complain(
                    4, words.quoted(2) + " has no containers that come back", "write why the goods were given back");
        Fact.Returned.What what =
                isShort ? Fact.Returned.What.SHORT : empty ? Fact.Returned.What.CONTAINERS : Fact.Returned.What.GOODS;
        return Optional.of(new Fact.Returned(
                customer.get().code(), product.get().code(), what, count.get(), why.get(), lot.map(Made::lot)));
    }
}

package dawnkettle.stock;

import dawnkettle.measure.Celsius;
import dawnkettle.measure.Mass;
import dawnkettle.measure.Money;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** Something that happened, as a person wrote it down. A mistake is put right by a later one. */
public sealed interface Fact {
    /** The word it is known by. */
    default Kind kind() {
        return Kind.of(this);
    }

    /** What sorts of facts there are, each with those that are of it. */
    enum Kind {
        RECEIVED(Received.class),
        COUNTED(CountedMaterial.class, CountedPacks.class),
        YIELDED(Yielded.class),
        PACKED(Packed.class),
        COOKED(Cooked.class),
        COOLED(Cooled.class),
        SOAKED(Soaked.class),
        LOST(LostBatch.class, LostPacks.class, LostMaterial.class),
        SOLD(Sold.class),
        DELIVERED(Delivered.class),
        RETURNED(Returned.class),
        PRICED(Priced.class),
        CAME_LATE(CameLate.class),
        USED(UsedMaterial.class),
        WASTED(Wasted.class),
        SOAK_SEEN(SoakSeen.class),
        CONTAINERS(Containers.class),
        LOADED(Loaded.class),
        DESTROYED(Destroyed.class),
        HELD(Held.class, HeldBought.class),
        RELEASED(Released.class, ReleasedBought.class),
        CANCELLED(Cancelled.class),
        WORKED(Worked.class),
        AWAY(Away.class),
        DOWN(Down.class, Up.class);

        private final List<Class<?>> facts;

        Kind(Class<?>... facts) {
            this.facts = List.of(facts);
        }

        boolean isOf(Class<?> fact) {
            return facts.contains(fact);
        }

        private static Kind of(Fact fact) {
            for (Kind kind : values()) if (kind.isOf(fact.getClass())) return kind;
            throw new IllegalStateException(fact.getClass() + " is of no kind");
        }
    }

    /**
     * Goods came in: a supplier's lot of a material, and what was paid for all of it.
     *
     * @param bestBefore the date that the supplier printed on it
     */
    record Received(String material, String lot, Quantity quantity, Money paid, Optional<LocalDate> bestBefore)
            implements Fact {
        public Received(String material, String lot, Quantity quantity, Money paid) {
            this(material, lot, quantity, paid, Optional.empty());
        }
    }

    /**
     * What is left of a material's lot, by the scale.
     *
     * @param why what explains a difference to the books; empty where nobody said
     */
    record CountedMaterial(String material, String lot, Quantity left, String why) implements Fact {
        public CountedMaterial(String material, String lot, Quantity left) {
            this(material, lot, left, "");
        }
    }

    /**
     * Packs of a lot that lie in the cold room once the day's vans are gone, promised ones with them.
     *
     * @param dating needed alone for a lot that no plan made (stock of the first day)
     * @param why what explains a difference to the books; empty where nobody said
     */
    record CountedPacks(LotCode lot, String product, int packs, Optional<Dating> dating, String why) implements Fact {
        public CountedPacks(LotCode lot, String product, int packs, Optional<Dating> dating) {
            this(lot, product, packs, dating, "");
        }
    }

    /** The dates on a lot's labels. */
    record Dating(LocalDate packDate, LocalDate bestBefore) {}

    /** What a batch gave, before trimming, from the beans (or what else it was made of) that went in. */
    record Yielded(LotCode lot, String recipe, Mass input, Mass product) implements Fact {}

    /** Packs of a product that were filled from a batch. */
    record Packed(LotCode lot, String product, int packs) implements Fact {}

    /** A batch reached a temperature in the cooker and was held there for minutes. */
    record Cooked(LotCode lot, Celsius reached, int minutes) implements Fact {}

    /** A batch had come down to a temperature. */
    record Cooled(LotCode lot, Celsius reached) implements Fact {}

    /** A tub was filled for a production day with beans of a lot; one fact a lot. */
    record Soaked(LocalDate productionDate, String tub, String beanLot, Mass beans) implements Fact {}

    /** A whole batch is lost. */
    record LostBatch(LotCode lot, String why) implements Fact {}

    /** Some packs of a lot are lost. */
    record LostPacks(LotCode lot, String product, int packs, String why) implements Fact {}

    /** Packs went to somebody who had not ordered them. */
    record Sold(LotCode lot, String product, int packs) implements Fact {}

    /** Packs of a lot were handed over for a line of an order. */
    record Delivered(String order, int line, String customer, LotCode lot, String product, int packs) implements Fact {}

    /**
     * A customer gave back goods, which are never sold again, or containers.
     *
     * @param lot the lot on the goods' label, where somebody read it
     */
    record Returned(String customer, String product, What what, int count, String why, Optional<LotCode> lot)
            implements Fact {
        public Returned(String customer, String product, What what, int count, String why) {
            this(customer, product, what, count, why, Optional.empty());
        }

        /** What came back. */
        public enum What {
            GOODS,
            CONTAINERS,
            /** Goods that were not in the van, or not good at the door, and that nobody brought back. */
            SHORT
        }
    }

    /** From a day on one pack of a product costs this on a price list. */
    record Priced(String priceList, String product, Money price, LocalDate from) implements Fact {}

    /**
     * Packs of a product that came after the close of a making day, of all orders together; for days whose orders are
     * not in the ledger.
     */
    record CameLate(String product, LocalDate productionDate, int packs) implements Fact {}

    /** Some of a material's lot was taken for something that no plan counts. */
    record UsedMaterial(String material, String lot, Quantity quantity, String why) implements Fact {}

    /** Some of a material's lot is lost: torn, spilt, spoilt. */
    record LostMaterial(String material, String lot, Quantity quantity, String why) implements Fact {}

    /** Some of what a batch gave was thrown away before it was packed. */
    record Wasted(LotCode lot, Mass mass, String why) implements Fact {}

    /** Somebody felt the beans of a tub: ready to grind, or not yet. */
    record SoakSeen(LocalDate productionDate, String tub, boolean ready) implements Fact {}

    /** Returnable containers of a product at a customer's: more went out than the goods say, or they were counted there. */
    record Containers(String customer, String product, Way way, int count, String why) implements Fact {
        /** What the count stands for. */
        public enum Way {
            OUT,
            COUNTED
        }
    }

    /** A van was loaded with what was planned for it. */
    record Loaded(String route, LocalDate deliveryDate) implements Fact {}

    /** Packs of a lot were destroyed, those that came back first. */
    record Destroyed(LotCode lot, String product, int packs, String why) implements Fact {}

    /** Nothing of a lot leaves any more. */
    record Held(LotCode lot, String why) implements Fact {}

    /** A person who answers for it lets a held lot go. */
    record Released(LotCode lot, String by, String why) implements Fact {}

    /** Nothing of a supplier's lot is used any more, and nothing made with it leaves. */
    record HeldBought(String material, String lot, String why) implements Fact {}

    /** A person who answers for it lets a supplier's lot go, and what was held on its account. */
    record ReleasedBought(String material, String lot, String by, String why) implements Fact {}

    /** All hands together really worked so long on a making day. */
    record Worked(LocalDate productionDate, Duration hours) implements Fact {}

    /** Half people who are not there in a stretch of a making day. */
    record Away(LocalDate productionDate, int halfHands, Instant from, Instant until, String why) implements Fact {}

    /** A station at which nothing is done in a stretch of a making day. */
    record Down(LocalDate productionDate, String station, Instant from, Instant until, String why) implements Fact {}

    /** A station that stood works again from an instant on. */
    record Up(LocalDate productionDate, String station, Instant from) implements Fact {}

    /** An earlier record was wrong and counts no more. */
    record Cancelled(long number, String why) implements Fact {}
}

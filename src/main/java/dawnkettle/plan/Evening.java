package dawnkettle.plan;

import dawnkettle.book.BookLine;
import dawnkettle.book.ClosedBook;
import dawnkettle.floor.Budget;
import dawnkettle.plan.Heading.Frozen;
import dawnkettle.stock.BeanLot;
import dawnkettle.stock.LotCode;
import dawnkettle.stock.StockLot;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * All that a plan is computed from besides the shop.
 *
 * @param book the book of the production day, closed (or, for a soak call, as it stands)
 * @param now the planning clock
 */
public record Evening(
        ClosedBook book,
        Outlook outlook,
        Larder larder,
        SoakRoom soakRoom,
        Committed committed,
        Instant now,
        Budget budget) {

    /** The same evening with beans that are ready as soon as they are wet, planned without search: to compare with. */
    Evening withBeansReady() {
        SoakRoom ready = new SoakRoom(
                soakRoom.temperatures(),
                soakRoom.call(),
                soakRoom.occupied(),
                soakRoom.beliefs().readyAtOnce());
        return new Evening(book, outlook, larder, ready, committed, now, budget.within(0, budget.guardMillis()));
    }

    /** The same evening with other allowances. */
    public Evening withAllowances(List<Allowance> allowances) {
        return new Evening(book, new Outlook(outlook.ahead(), allowances), larder, soakRoom, committed, now, budget);
    }

    /**
     * What else is wanted.
     *
     * @param ahead lines already in the book for the making days after this one
     * @param allowances packs that usually come after the close
     */
    public record Outlook(List<BookLine> ahead, List<Allowance> allowances) {
        public static final Outlook NONE = new Outlook(List.of(), List.of());

        public Outlook {
            ahead = List.copyOf(ahead);
            allowances = List.copyOf(allowances);
        }
    }

    /** Packs of a product for a delivery date that usually come after the close. */
    public record Allowance(String product, LocalDate deliveryDate, int packs) {}

    /**
     * What is in the house.
     *
     * @param stock packs in the cold room that are promised to nobody
     * @param beans bought lots, the oldest first; empty where nothing was booked
     * @param held lots of which nothing may leave
     */
    public record Larder(List<StockLot> stock, List<BeanLot> beans, Set<LotCode> held) {
        public static final Larder EMPTY = new Larder(List.of(), List.of());

        public Larder(List<StockLot> stock, List<BeanLot> beans) {
            this(stock, beans, Set.of());
        }

        public Larder {
            stock = List.copyOf(stock);
            beans = List.copyOf(beans);
            held = Set.copyOf(held);
        }
    }

    /**
     * The tubs and how warm they stand.
     *
     * @param call what was put to soak before the close; empty where nothing had to be
     * @param occupied tubs in which other beans still soak
     * @param beliefs how fast this shop's beans soak, and how sure that is
     */
    public record SoakRoom(
            Temperatures temperatures, Optional<SoakCall> call, List<Occupied> occupied, SoakBeliefs beliefs) {
        public SoakRoom {
            occupied = List.copyOf(occupied);
        }

        /** With nothing but the published figures to go by. */
        public SoakRoom(Temperatures temperatures, Optional<SoakCall> call, List<Occupied> occupied) {
            this(temperatures, call, occupied, SoakBeliefs.PUBLISHED);
        }
    }

    /** A tub that is not empty before an instant. */
    public record Occupied(String tub, Instant until) {}

    /**
     * What has happened and is not changed.
     *
     * @param before the plan that this one replaces
     * @param frozen tubs filled, batches started, lots labelled, routes gone
     * @param disruption what is lost, missing or standing
     */
    public record Committed(Optional<DayPlan> before, List<Frozen> frozen, Disruption disruption) {
        public static final Committed NOTHING = new Committed(Optional.empty(), List.of());

        public Committed(Optional<DayPlan> before, List<Frozen> frozen) {
            this(before, frozen, Disruption.NONE);
        }

        public Committed {
            frozen = List.copyOf(frozen);
        }

        /** Whether a fact of {@code kind} is known of {@code id}. */
        boolean has(Frozen.Kind kind, String id) {
            return frozen.stream()
                    .anyMatch(fact -> fact.kind() == kind && fact.id().equals(id));
        }
    }

    /** The same with what has happened by a later instant. */
    Evening later(Committed then, Instant at, Budget own) {
        return new Evening(book, outlook, larder, soakRoom, then, at, own);
    }
}

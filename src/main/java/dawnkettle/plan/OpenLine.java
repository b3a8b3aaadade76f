package dawnkettle.plan;

import dawnkettle.book.BookLine;
import dawnkettle.shop.Product;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A line of the book, or an allowance, while the plan is being made. */
final class OpenLine {
    /** Below every customer. */
    static final int ALLOWANCE_PRIORITY = 9;

    final Optional<BookLine> line;
    final Product product;
    final LocalDate deliveryDate;
    final int packs;
    final int priority;
    /** Code of the van and its day; empty for an allowance. */
    final String due;

    final int dueMinute;
    final List<Gift> gifts = new ArrayList<>();
    private int declined;
    private int refused;
    private String reason = "";

    /** Packs from a lot in stock ({@code stockLot}) or from one of today's batches ({@code brew}); the other is empty. */
    record Gift(Optional<dawnkettle.stock.StockLot> stockLot, Optional<Brew> brew, int packs) {}

    OpenLine(BookLine line, Product product, int priority, String due, int dueMinute) {
        this.line = Optional.of(line);
        this.product = product;
        this.deliveryDate = line.deliveryDate();
        this.packs = line.packs();
        this.priority = priority;
        this.due = due;
        this.dueMinute = dueMinute;
    }

    OpenLine(Product product, LocalDate deliveryDate, int packs) {
        this.line = Optional.empty();
        this.product = product;
        this.deliveryDate = deliveryDate;
        this.packs = packs;
        this.priority = ALLOWANCE_PRIORITY;
        this.due = "";
        this.dueMinute = DayClock.HORIZON_MINUTES;
    }

    /** Gives back up to {@code packs} of what a batch gave, and says how many. */
    int giveBack(Brew brew, int packs) {
        for (int i = 0; i < gifts.size(); i++) {
            Gift gift = gifts.get(i);
            if (gift.brew().filter(brew::equals).isEmpty()) continue;
            int back = Math.min(packs, gift.packs());
            if (back == gift.packs()) gifts.remove(i);
            else gifts.set(i, new Gift(gift.stockLot(), gift.brew(), gift.packs() - back));
            return back;
        }
        return 0;
    }

    int givenBy(Brew brew) {
        return gifts.stream()
                .filter(gift -> gift.brew().filter(brew::equals).isPresent())
                .mapToInt(Gift::packs)
                .sum();
    }

    boolean isFor(Allocation one) {
        return line.filter(book -> book.order().equals(one.order()) && book.line() == one.line())
                .isPresent();
    }

    int given() {
        return gifts.stream().mapToInt(Gift::packs).sum();
    }

    int fromStock() {
        return gifts.stream()
                .filter(gift -> gift.stockLot().isPresent())
                .mapToInt(Gift::packs)
                .sum();
    }

    /** Packs that still have to come from somewhere. */
    int open() {
        return packs - given() - declined;
    }

    int declined() {
        return declined;
    }

    String reason() {
        return reason;
    }

    /** Gives up on some packs; the first reason stays. */
    void decline(int packs, String why) {
        if (packs <= 0) return;
        declined += Math.min(packs, open());
        if (reason.isEmpty()) reason = why;
    }

    /** Forgets what new batches gave and what was declined for want of them; keeps stock, kept batches and refusals. */
    void reopen() {
        gifts.removeIf(gift -> gift.brew().filter(brew -> !brew.isKept()).isPresent());
        declined = refused;
        if (refused == 0) reason = "";
    }

    /** Declines all that is open, whatever is made: the product or the van is out of the question. */
    void refuse(String why) {
        refuse(open(), why);
    }

    void refuse(int packs, String why) {
        if (packs <= 0) return;
        decline(packs, why);
        refused += packs;
    }
}

package dawnkettle.plan;

import dawnkettle.book.BookLine;
import dawnkettle.shop.Product;
import dawnkettle.shop.Shop;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/**
 * What usually comes after the close, by product and weekday, from the shop's own history: the amount at which one pack
 * more costs as much as it brings ({@link Newsvendor}, with the product's own price and making), drawn towards nothing
 * while history is short, and nothing without any. A pack left over keeps its worth as far as later deliveries within its
 * days already ask for it.
 */
public final class Allowances {
    /** Weeks of history that count as much as the belief that nothing comes late (the shop's rule, no source). */
    private static final int WEEKS_OF_DOUBT = 8;

    /** What a pack left over still brings, in percent of its making (no source). */
    private static final int SALVAGE_PERCENT = 30;

    /** What a pack that is wanted later costs in the cold room till then, in percent of its making (no source). */
    private static final int KEEPING_PERCENT = 2;

    private final Shop shop;
    private final LocalDate productionDate;
    private final List<BookLine> ahead;
    private final MakingCost costs;

    private Allowances(Shop shop, LocalDate productionDate, List<BookLine> ahead) {
        this.shop = shop;
        this.productionDate = productionDate;
        this.ahead = ahead;
        this.costs = new MakingCost(shop);
    }

    /** Packs of a product that came after the close of a making day; a day without any counts with 0. */
    public record LateDay(String product, LocalDate productionDate, int packs) {}

    /** Allowances for a making day whose later days have no orders yet. */
    public static List<Evening.Allowance> of(Shop shop, LocalDate productionDate, List<LateDay> history) {
        return of(shop, productionDate, history, List.of());
    }

    /**
     * Allowances for a making day, for deliveries on that same day.
     *
     * @param ahead lines in the book for later making days
     */
    public static List<Evening.Allowance> of(
            Shop shop, LocalDate productionDate, List<LateDay> history, List<BookLine> ahead) {
        Allowances allowances = new Allowances(shop, productionDate, ahead);
        List<Evening.Allowance> all = new ArrayList<>();
        for (Product product : shop.products()) {
            List<Integer> late = late(product, productionDate, history);
            int packs = shrunk((int) allowances.newsvendor(product).best(late), late.size());
            if (packs > 0) all.add(new Evening.Allowance(product.code(), productionDate, packs));
        }
        return all;
    }

    static List<Integer> late(Product product, LocalDate productionDate, List<LateDay> history) {
        return history.stream()
                .filter(day -> day.product().equals(product.code()))
                .filter(day -> day.productionDate().getDayOfWeek() == productionDate.getDayOfWeek()
                        && day.productionDate().isBefore(productionDate))
                .map(LateDay::packs)
                .toList();
    }

    /** What one pack too few, too many, or too many but wanted later costs. */
    private Newsvendor newsvendor(Product product) {
        long making = costs.of(product);
        long lost = making * (100 - SALVAGE_PERCENT) / 100;
        long kept = Math.min(lost, making * KEEPING_PERCENT / 100);
        return new Newsvendor(Math.max(0, product.price().minor() - making), lost, kept, wantedLater(product));
    }

    /** Packs that later deliveries already ask for and that a pack of the day still has the days left for. */
    private long wantedLater(Product product) {
        return ahead.stream()
                .filter(line -> line.product().equals(product.code())
                        && line.deliveryDate().isAfter(productionDate)
                        && !line.deliveryDate().isAfter(product.keeping().lastDelivery(productionDate)))
                .mapToLong(BookLine::packs)
                .sum();
    }

    /** A quantile of so many weeks counts for that many of them and the weeks of doubt. */
    static int shrunk(int packs, int weeks) {
        return packs * weeks / (weeks + WEEKS_OF_DOUBT);
    }
}

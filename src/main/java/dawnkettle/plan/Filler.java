package dawnkettle.plan;

import dawnkettle.measure.Mass;
import dawnkettle.shop.Product;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Fills the batches of one recipe: what other batches are made of first, then the lines of the book, then stock. */
final class Filler {
    private static final Comparator<OpenLine> FIRST_SERVED = Comparator.comparingInt((OpenLine line) -> line.priority)
            .thenComparingInt(line -> line.dueMinute)
            .thenComparing(line -> line.line
                    .map(book -> book.order().text() + "/" + book.line())
                    .orElse("~"))
            .thenComparing(line -> line.product.code());

    private static final Comparator<OpenLine> FIRST_DUE = Comparator.comparingInt((OpenLine line) -> line.dueMinute)
            .thenComparing(line -> line.due)
            .thenComparing(FIRST_SERVED);

    private final List<Brew> brews;

    /** @param brews of one recipe, the one to be made first first */
    Filler(List<Brew> brews) {
        this.brews = brews;
    }

    /** Feeds {@code child}; what is missing is left out and said. */
    Mass feed(Brew child) {
        Mass wanted = child.size;
        Optional<Brew> whole = brews.stream()
                .filter(brew -> brew.room().compareTo(child.size) >= 0)
                .findFirst();
        if (whole.isPresent()) return wanted.minus(whole.get().feed(child, wanted));
        for (Brew brew : brews) wanted = wanted.minus(brew.feed(child, wanted));
        return wanted;
    }

    /**
     * Gives the lines their packs, those due first from the first batches, each at first no more than its fair share;
     * declines what there is no room for.
     */
    void serve(List<OpenLine> lines, String whyShort) {
        Map<OpenLine, Integer> shares =
                FairShares.of(lines, Mass.sum(brews.stream().map(Brew::room).toList()));
        for (OpenLine line : lines.stream().sorted(FIRST_DUE).toList()) serve(line, shares.get(line));
        serveWhatFits(lines);
        for (OpenLine line : lines) line.decline(line.open(), whyShort);
    }

    /** Gives the lines what there is room for, and declines nothing. */
    void serveWhatFits(List<OpenLine> lines) {
        for (OpenLine line : lines.stream().sorted(FIRST_SERVED).toList()) serve(line, line.open());
    }

    private void serve(OpenLine line, int packs) {
        Mass whole = line.product.net().times(packs);
        Optional<Brew> one =
                brews.stream().filter(brew -> brew.room().compareTo(whole) >= 0).findFirst();
        int left = packs;
        if (one.isPresent()) give(one.get(), line, left);
        else for (Brew brew : brews) left -= give(brew, line, left);
    }

    private static int give(Brew brew, OpenLine line, int wanted) {
        int packs = wanted == 0 ? 0 : brew.fill(line.product, wanted);
        if (packs == 0) return 0;
        line.gifts.add(new OpenLine.Gift(Optional.empty(), Optional.of(brew), packs));
        if (!line.due.isEmpty()) brew.dues.add(line.due);
        return packs;
    }

    /** Packs what is left into the product that keeps longest (of these the smallest pack), to lie in stock. */
    void packSurplus(List<Product> products) {
        List<Product> order = new ArrayList<>(products);
        order.sort(Comparator.comparingInt((Product product) ->
                        product.keeping().leastDaysLeft() - product.keeping().shelfLifeDays())
                .thenComparing(Product::net)
                .thenComparing(Product::code));
        for (Brew brew : brews) for (Product product : order) brew.fill(product, Integer.MAX_VALUE);
    }
}

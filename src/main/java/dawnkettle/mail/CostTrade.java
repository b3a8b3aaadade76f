package dawnkettle.mail;

import dawnkettle.cost.Carrier;
import dawnkettle.cost.Carriers;
import dawnkettle.cost.ProductCost;
import dawnkettle.cost.WeekBook;
import dawnkettle.cost.YieldCourse;
import dawnkettle.mail.Letter.Block;
import dawnkettle.mail.Letter.Bullets;
import dawnkettle.mail.Letter.Column;
import dawnkettle.mail.Letter.Grid;
import dawnkettle.mail.Letter.Lines;
import dawnkettle.mail.Letter.Section;
import dawnkettle.measure.Money;
import dawnkettle.shop.Customer;
import dawnkettle.shop.Product;
import dawnkettle.shop.Route;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** Who carries the shop, who costs it money, and what to do about it. */
final class CostTrade {
    private static final int SHOWN = 5;
    private static final int MOST_ADVICE = 7;

    private final WeekBook book;
    private final Carriers carriers;
    private final CostTrends trends;
    private final String currency;

    CostTrade(WeekBook book) {
        this.book = book;
        this.carriers = book.carriers();
        this.trends = new CostTrends(book);
        this.currency = book.shop().house().currency().getCurrencyCode();
    }

    /** As "Most is left by FIRM-400 and C012; 3 customers cost more than they bring." */
    List<String> lead() {
        List<Carrier> customers = carriers.customers();
        if (customers.isEmpty()) return List.of();
        long losing = customers.stream().filter(one -> one.left().isNegative()).count();
        String who = losing == 0
                ? "Every customer left something."
                : Figures.count(losing, "customer", "customers") + " of " + customers.size()
                        + " cost more than they brought.";
        return List.of("Most was left by " + product(carriers.products().get(0)) + ", and of the customers by "
                + customer(customers.get(0)) + ". " + who);
    }

    Section carry(Block picture) {
        List<Carrier> customers = carriers.customers();
        if (customers.isEmpty())
            return new Section(
                    "Who carries the shop",
                    Lines.of(
                            "No delivery of the week was written down or planned, so nothing can be said of customers."));
        List<Carrier> best = customers.subList(0, Math.min(SHOWN, customers.size()));
        List<Carrier> worst = customers.subList(Math.max(best.size(), customers.size() - SHOWN), customers.size());
        return new Section(
                "Who carries the shop",
                picture,
                grid("The customers that left most, " + currency, best, this::customer),
                grid("The customers that left least, " + currency, worst, this::customer),
                grid("By round, " + currency, carriers.routes(), this::route),
                Lines.of("Deliveries brought " + money(carriers.all().sales()) + ", cost "
                        + money(carriers.all().goods()) + " to make and "
                        + money(carriers.all().vans()) + " to drive. " + stayed()));
    }

    private String stayed() {
        Money stayed = carriers.stayed();
        return stayed.isNegative()
                ? money(Money.zero(stayed.currency()).minus(stayed)) + " " + currency
                        + " of it was made in weeks before."
                : "Another " + money(stayed) + " " + currency
                        + " of the week's cost lies in the cold room, went at the door or was lost.";
    }

    private Grid grid(String caption, List<Carrier> some, java.util.function.Function<Carrier, String> name) {
        return new Grid(
                caption,
                List.of(
                        Column.words("Name"),
                        Column.figures("Brought"),
                        Column.figures("Vans"),
                        Column.figures("Left")),
                some.stream()
                        .map(one -> List.of(name.apply(one), money(one.sales()), money(one.vans()), money(one.left())))
                        .toList());
    }

    /** What to do this week, the dearest first; never more than a few lines. */
    List<String> advice() {
        List<String> advice = new ArrayList<>();
        for (YieldCourse course : book.yields())
            if (course.shift().filter(move -> move.size() < 0).isPresent()
                    || course.alarm().isPresent()
                            && course.last() < course.chart().centre())
                advice.add(course.recipe().name()
                        + ": weigh beans and blocks of the next three batches, then look at soak, grind, boil and press, "
                        + "and at the bean lot; its yield is down.");
        if (trends.areBeansDearer())
            advice.add("Beans are dearer for good: `cost prices --day " + trends.beansMovedIn() + " --beans "
                    + book.now().all().beanPrice().toPlainString()
                    + "` says what prices would hold the margin that you had before; nothing changes by itself.");
        for (ProductCost cost : book.now().products()) losing(cost, advice);
        List<Carrier> losing = carriers.customers().stream()
                .filter(one -> one.left().isNegative())
                .sorted(java.util.Comparator.comparing(Carrier::left))
                .limit(3)
                .toList();
        for (Carrier one : losing)
            advice.add(customer(one) + " left " + money(one.left()) + " " + currency + ": its share of the van was "
                    + money(one.vans()) + " for " + money(one.sales())
                    + " of goods. Ask for fewer, larger drops, or for another price.");
        if (advice.isEmpty()) advice.add("Nothing this week.");
        return advice.subList(0, Math.min(MOST_ADVICE, advice.size()));
    }

    private void losing(ProductCost cost, List<String> advice) {
        book.shop().findProduct(cost.product()).ifPresent(product -> {
            Money each = cost.perPacks(1);
            if (each.compareTo(product.price()) > 0)
                advice.add(product.name() + " cost " + money(each) + " a pack and sells for " + money(product.price())
                        + ": at " + money(stepped(each))
                        + " it would not lose; or make it in fuller kettles, or less.");
        });
    }

    private Money stepped(Money each) {
        long step = book.shop().costs().details().priceStep();
        return Money.minor((each.minor() + step - 1) / step * step, each.currency());
    }

    Section todo() {
        return new Section("What to do", new Bullets(advice()));
    }

    Section standard() {
        List<String> sentences = book.standard()
                .map(standard -> new CostWords(standard, book.now()).againstStandard())
                .orElse(List.of());
        return new Section("Against what is written down, " + currency, new Bullets(sentences));
    }

    Section yields(List<Block> pictures) {
        List<Block> blocks = new ArrayList<>(pictures);
        List<String> moved = trends.sentences();
        blocks.add(new Bullets(moved.isEmpty() && !book.yields().isEmpty() ? List.of("No yield has moved.") : moved));
        blocks.add(new Grid(
                "Yields of the week",
                List.of(
                        Column.words("Recipe"),
                        Column.figures("kg from a kg"),
                        Column.figures("Usual"),
                        Column.figures("Limits")),
                book.yields().stream().map(CostTrade::yieldRow).toList()));
        return new Section("What moved for good", blocks);
    }

    private static List<String> yieldRow(YieldCourse course) {
        return Stream.of(
                        course.recipe().name(),
                        figure(course.last()),
                        figure(course.chart().centre()),
                        figure(course.chart().lower()) + "–"
                                + figure(course.chart().upper()))
                .toList();
    }

    private static String figure(double value) {
        return BigDecimal.valueOf(value).setScale(2, RoundingMode.HALF_UP).toPlainString();
    }

    private String customer(Carrier one) {
        return book.shop().findCustomer(one.code()).map(Customer::name).orElse(one.code());
    }

    private String product(Carrier one) {
        return book.shop().findProduct(one.code()).map(Product::name).orElse(one.code());
    }

    private String route(Carrier one) {
        return book.shop().routes().stream()
                .filter(route -> route.code().equals(one.code()))
                .map(Route::name)
                .findFirst()
                .orElse(one.code());
    }

    private static String money(Money money) {
        return Figures.money(money);
    }
}

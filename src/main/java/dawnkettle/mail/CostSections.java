package dawnkettle.mail;

import dawnkettle.cost.CostPart;
import dawnkettle.cost.ProductCost;
import dawnkettle.cost.WeekCosts;
import dawnkettle.mail.Letter.Bullets;
import dawnkettle.mail.Letter.Column;
import dawnkettle.mail.Letter.Grid;
import dawnkettle.mail.Letter.Section;
import dawnkettle.measure.Money;
import dawnkettle.shop.Product;
import dawnkettle.shop.Shop;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/** What the weekly report says of a week's costs. */
final class CostSections {
    private static final int WEEKS_LISTED = 6;

    private final List<WeekCosts> weeks;
    private final WeekCosts now;
    private final Optional<WeekCosts> before;
    private final Shop shop;
    private final String currency;

    CostSections(List<WeekCosts> weeks, Shop shop) {
        this.weeks = weeks;
        this.now = weeks.get(weeks.size() - 1);
        this.before = weeks.size() > 1 ? Optional.of(weeks.get(weeks.size() - 2)) : Optional.empty();
        this.shop = shop;
        this.currency = shop.house().currency().getCurrencyCode();
    }

    /** As "2.347 USD a kg, 1.2 % more". */
    String verdict() {
        String losing =
                losing().isEmpty() ? "" : ", " + Figures.count(losing().size(), "product", "products") + " below cost";
        return now.all().perKilogram() + " " + currency + " a kg" + change(ProductCost::perKilogram, ", ", "") + losing;
    }

    List<String> lead() {
        ProductCost all = now.all();
        String beans = "Beans: " + all.beanPrice() + " " + currency + " a kg"
                + change(ProductCost::beanPrice, ", ", " than the week before") + "; "
                + all.yield() + " kg made of each kg"
                + before.map(week -> " (" + week.all().yield() + " the week before).")
                        .orElse(".");
        String losing = losing().isEmpty()
                ? "Every product sells above what it cost."
                : "Below cost at the everyday price: " + String.join("; ", losing()) + ".";
        return List.of(
                "A kilogram cost " + all.perKilogram() + " " + currency
                        + change(ProductCost::perKilogram, ", ", " than the week before") + ".",
                beans,
                losing,
                Figures.count(now.days(), "day", "days") + ", "
                        + all.mass().inKilograms(0, RoundingMode.HALF_UP).toPlainString() + " kg made, "
                        + Figures.money(all.total()) + " " + currency + " in all.");
    }

    private String change(Function<ProductCost, BigDecimal> figure, String lead, String than) {
        if (before.isEmpty()) return "";
        BigDecimal old = figure.apply(before.get().all());
        if (old.signum() == 0) return "";
        BigDecimal percent =
                figure.apply(now.all()).subtract(old).movePointRight(2).divide(old, 1, RoundingMode.HALF_UP);
        if (percent.signum() == 0) return lead + "as much" + (than.isEmpty() ? "" : " as the week before");
        return lead + percent.abs().toPlainString() + (percent.signum() > 0 ? " % more" : " % less") + than;
    }

    /** Names of products that cost more than they bring at the everyday price. */
    List<String> losing() {
        return now.products().stream()
                .filter(cost -> left(cost).map(Money::isNegative).orElse(false))
                .map(this::name)
                .toList();
    }

    private Optional<Money> left(ProductCost cost) {
        return shop.findProduct(cost.product()).map(product -> product.price().minus(cost.perPacks(1)));
    }

    Section moved() {
        return new Section("What moved the week's cost, " + currency, new Bullets(movedSentences()));
    }

    List<String> movedSentences() {
        return before.map(week -> new CostWords(week, now).sentences()).orElse(List.of());
    }

    Grid history() {
        List<List<String>> rows = weeks.subList(Math.max(0, weeks.size() - WEEKS_LISTED), weeks.size()).stream()
                .map(week -> List.of(
                        Figures.date(week.monday()),
                        week.all().mass().inKilograms(0, RoundingMode.HALF_UP).toPlainString(),
                        week.all().beanPrice().toPlainString(),
                        week.all().perKilogram().toPlainString()))
                .toList();
        return new Grid(
                "The last weeks, " + currency,
                List.of(
                        Column.words("Week from"),
                        Column.figures("kg made"),
                        Column.figures("Beans a kg"),
                        Column.figures("Cost a kg")),
                rows);
    }

    Section parts() {
        List<List<String>> rows = new ArrayList<>();
        for (CostPart part : CostPart.values())
            if (now.all().part(part).minor() != 0)
                rows.add(partRow(part.words(), now.all().part(part)));
        rows.add(partRow("Together", now.all().total()));
        return new Section(
                "Where the money went",
                new Grid(
                        "The week's parts, " + currency,
                        List.of(
                                Column.words("Part"),
                                Column.figures("Amount"),
                                Column.figures("%"),
                                Column.figures("A kg")),
                        rows));
    }

    private List<String> partRow(String name, Money amount) {
        long total = now.all().total().minor();
        String percent = total == 0
                ? "-"
                : BigDecimal.valueOf(amount.minor())
                        .movePointRight(2)
                        .divide(BigDecimal.valueOf(total), 1, RoundingMode.HALF_UP)
                        .toPlainString();
        return List.of(
                name,
                Figures.money(amount),
                percent,
                now.all().perKilogram(amount).toPlainString());
    }

    Section products() {
        List<List<String>> rows = now.products().stream().map(this::productRow).toList();
        List<List<String>> cases = now.products().stream().map(this::caseRow).toList();
        return new Section(
                "By product",
                new Grid(
                        "A pack: what it cost, what it leaves at the everyday price, " + currency,
                        List.of(
                                Column.words("Product"),
                                Column.figures("Packs"),
                                Column.figures("Cost"),
                                Column.figures("Leaves")),
                        rows),
                new Grid(
                        "What a kilogram and a case cost, " + currency,
                        List.of(
                                Column.words("Product"),
                                Column.figures("A kg"),
                                Column.figures("A case"),
                                Column.figures("Total")),
                        cases));
    }

    private List<String> productRow(ProductCost cost) {
        return List.of(
                name(cost),
                String.valueOf(cost.packs()),
                Figures.money(cost.perPacks(1)),
                left(cost).map(Figures::money).orElse("-"));
    }

    private List<String> caseRow(ProductCost cost) {
        String aCase = shop.findProduct(cost.product())
                .map(product -> Figures.money(cost.perPacks(product.packsInCase())))
                .orElse("-");
        return List.of(name(cost), cost.perKilogram().toPlainString(), aCase, Figures.money(cost.total()));
    }

    private String name(ProductCost cost) {
        return shop.findProduct(cost.product()).map(Product::name).orElse(cost.product());
    }

    Section basis() {
        String packaging = now.all().part(CostPart.PACKAGING).minor() == 0
                ? "Packaging is not in it: none was written down."
                : "Packaging as written down.";
        return new Section(
                "How it is counted",
                new Bullets(Stream.of(
                                "Beans, heat, water and okara go to a product by the dry beans in it, and so by solids; "
                                        + "work and additions by what it took; vans and rent by its kilograms.",
                                "Beans at what their lot cost where that is known, else at the standard price; soaked beans left over are in it. "
                                        + "Other materials likewise, the oldest lot first.",
                                "Heat: slurry from the tap's temperature to 100 °C by its heat capacity, and frying by the steam that "
                                        + "leaves, / 3.6 MJ a kWh / "
                                        + percent() + " % efficiency x "
                                        + Figures.money(shop.costs().energyPerKilowattHour())
                                        + " " + currency + ".",
                                "Work: scheduled minutes at "
                                        + Figures.money(shop.costs().hourlyWage())
                                        + " an hour; breaks and waiting are not in it.",
                                "Water: soaking and grinding; washing up is not in it.",
                                packaging)
                        .toList()));
    }

    private String percent() {
        return shop.costs()
                .cookerEfficiency()
                .inPercent(0, RoundingMode.HALF_UP)
                .toPlainString();
    }

    /** Hours of one person, to a hundredth. */
    static BigDecimal hours(long handSeconds) {
        return BigDecimal.valueOf(handSeconds).divide(BigDecimal.valueOf(3_600), 2, RoundingMode.HALF_UP);
    }
}

package dawnkettle.mail;

import dawnkettle.cost.HoldMargin;
import dawnkettle.cost.HoldMargin.Proposed;
import dawnkettle.cost.HoldMargin.Weekly;
import dawnkettle.measure.Money;
import dawnkettle.shop.Customer;
import dawnkettle.shop.ListPrice;
import dawnkettle.shop.Shop;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;

/** Proposed prices in words: as a list, as rows of a price list, and as a letter that the owner can send. */
public final class PriceWords {
    private final Shop shop;
    private final LocalDate from;
    private final List<Proposed> proposed;
    private final String currency;

    /** @param from the day from which they would hold */
    public PriceWords(Shop shop, LocalDate from, List<Proposed> proposed) {
        this.shop = shop;
        this.from = from;
        this.proposed = List.copyOf(proposed);
        this.currency = shop.house().currency().getCurrencyCode();
    }

    /** List by list: what a pack would cost more, the price now and the price that holds the margin. */
    public String list() {
        StringBuilder text = new StringBuilder();
        String list = "";
        for (Proposed one : proposed) {
            if (!one.list().equals(list))
                text.append(String.format(
                        Locale.ROOT,
                        "%sPrice list %s, %s%n  %-12s %9s %9s %9s%n",
                        list.isEmpty() ? "" : "\n",
                        one.list(),
                        currency,
                        "product",
                        "costs",
                        "price",
                        "would be"));
            list = one.list();
            text.append(String.format(
                    Locale.ROOT,
                    "  %-12s %+9.3f %9s %9s%n",
                    one.product().code(),
                    one.more().movePointLeft(shop.house().currency().getDefaultFractionDigits()),
                    Figures.money(one.old()),
                    one.now().equals(one.old()) ? "stays" : Figures.money(one.now())));
        }
        return text.toString().replace("\r\n", "\n");
    }

    /** Rows for the price list, to be copied there by whoever decides; those that stay are left out. */
    public String rows() {
        CsvText table = new CsvText(List.of("price_list", "product", "price", "from"));
        for (Proposed one : proposed)
            if (!one.now().equals(one.old())) {
                ListPrice row = one.from(from);
                table.row(List.of(row.priceList(), row.product(), row.price().amount(), row.from()));
            }
        return table.toString();
    }

    /** A line a customer: what the week's orders would cost more. */
    public String customers(List<Weekly> weekly) {
        StringBuilder text = new StringBuilder();
        Money all = Money.zero(shop.house().currency());
        for (Weekly one : weekly) {
            all = all.plus(one.more());
            text.append(String.format(
                    Locale.ROOT,
                    "  %-8s %10s a week, %9s more%s%n",
                    one.customer(),
                    Figures.money(one.before()),
                    Figures.money(one.more()),
                    percent(one)));
        }
        text.append(String.format(Locale.ROOT, "  together %36s more a week%n", Figures.money(all)));
        return text.toString().replace("\r\n", "\n");
    }

    private static String percent(Weekly one) {
        if (one.before().minor() == 0) return "";
        return " (" + one.more().amount().movePointRight(2).divide(one.before().amount(), 1, RoundingMode.HALF_UP)
                + " %)";
    }

    /**
     * A letter to a customer with the prices of what they buy, to be read, changed and signed by the owner.
     *
     * @param bought codes of products
     */
    public String letter(Customer customer, Set<String> bought) {
        List<Proposed> theirs = proposed.stream()
                .filter(one -> bought.contains(one.product().code())
                        && HoldMargin.isFor(one, customer, one.product().code(), proposed)
                        && !one.now().equals(one.old()))
                .toList();
        if (theirs.isEmpty()) return "";
        String prices = theirs.stream()
                .map(one -> String.format(
                        Locale.ROOT,
                        "    %s: %s %s a pack, until now %s",
                        one.product().name(),
                        Figures.money(one.now()),
                        currency,
                        Figures.money(one.old())))
                .collect(Collectors.joining("\n"));
        return "To " + customer.name()
                + "\n\nDear customer,\n\nwhat our tofu is made of has become dearer, and we cannot"
                + " make it at the old\nprices any longer. From " + day() + " our prices for what you take are\n\n"
                + prices + "\n\nNothing else changes: the recipes, the days and the van stay as they are.\n"
                + "Please call us if you would rather take other sizes or fewer, larger deliveries;\nthat often"
                + " costs both of us less.\n\nYours,\n" + shop.house().name() + "\n"
                + String.join("\n", shop.house().address()) + "\n";
    }

    private String day() {
        return Figures.day(from) + " " + from.getYear();
    }
}

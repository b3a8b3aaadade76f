package dawnkettle.mail;

import dawnkettle.cost.CostPart;
import dawnkettle.cost.ProductCost;
import dawnkettle.cost.WeekCosts;
import dawnkettle.shop.Product;
import dawnkettle.shop.Shop;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The costs of weeks as a table for the bookkeeper: a row a week and product, so that sums are hers to take. */
final class CostTable {
    private CostTable() {}

    static String of(List<WeekCosts> weeks, Shop shop) {
        List<String> header =
                new ArrayList<>(List.of("week_from", "product", "name", "packs", "kg", "beans_kg", "work_h"));
        for (CostPart part : CostPart.values()) header.add(part.name().toLowerCase(Locale.ROOT));
        header.addAll(List.of("total", "currency"));
        CsvText table = new CsvText(header);
        for (WeekCosts week : weeks) for (ProductCost product : week.products()) table.row(row(week, product, shop));
        return table.toString();
    }

    private static List<Object> row(WeekCosts week, ProductCost cost, Shop shop) {
        String name = shop.findProduct(cost.product()).map(Product::name).orElse("");
        List<Object> row = new ArrayList<>(List.of(
                week.monday(),
                cost.product(),
                Plain.line(name),
                cost.packs(),
                cost.mass().inKilograms(3, RoundingMode.HALF_UP),
                cost.beans().inKilograms(3, RoundingMode.HALF_UP),
                CostSections.hours(cost.handSeconds())));
        for (CostPart part : CostPart.values()) row.add(cost.part(part).amount());
        row.add(cost.total().amount());
        row.add(cost.total().currency().getCurrencyCode());
        return row;
    }
}

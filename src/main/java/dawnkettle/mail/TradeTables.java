package dawnkettle.mail;

import dawnkettle.cost.Sale;
import dawnkettle.cost.WeekBook;
import dawnkettle.shop.Customer;
import dawnkettle.shop.Product;
import java.util.List;

/** Deliveries, credits and containers as tables for whoever writes the invoices; Dawnkettle writes none. */
final class TradeTables {
    private TradeTables() {}

    /** A row a delivery; a credit has packs and an amount below zero. */
    static String deliveries(WeekBook book) {
        CsvText table = new CsvText(List.of(
                "date",
                "kind",
                "customer",
                "customer_name",
                "price_list",
                "product",
                "product_name",
                "lot",
                "packs",
                "price",
                "amount",
                "currency"));
        for (Sale sale : book.trade().sales()) table.row(row(book, sale));
        return table.toString();
    }

    private static List<Object> row(WeekBook book, Sale sale) {
        return List.of(
                sale.date(),
                sale.isCredit() ? "credit" : "delivery",
                sale.customer(),
                customer(book, sale.customer()),
                book.shop()
                        .findCustomer(sale.customer())
                        .map(Customer::priceList)
                        .orElse(""),
                sale.product(),
                product(book, sale.product()),
                sale.lot(),
                sale.packs(),
                sale.each().amount(),
                sale.amount().amount(),
                sale.each().currency().getCurrencyCode());
    }

    static String containers(WeekBook book) {
        CsvText table = new CsvText(List.of(
                "since",
                "customer",
                "customer_name",
                "product",
                "out",
                "back",
                "kept",
                "deposit",
                "amount",
                "currency"));
        for (Sale.Containers one : book.trade().containers())
            table.row(List.of(
                    book.trade().since(),
                    one.customer(),
                    customer(book, one.customer()),
                    one.product(),
                    one.out(),
                    one.back(),
                    one.kept(),
                    one.deposit().amount(),
                    one.deposit().times(one.kept()).amount(),
                    one.deposit().currency().getCurrencyCode()));
        return table.toString();
    }

    private static String customer(WeekBook book, String code) {
        return Plain.line(book.shop().findCustomer(code).map(Customer::name).orElse(""));
    }

    private static String product(WeekBook book, String code) {
        return Plain.line(book.shop().findProduct(code).map(Product::name).orElse(""));
    }
}

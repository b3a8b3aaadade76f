package dawnkettle.mail;

import dawnkettle.cost.Sale;
import dawnkettle.cost.WeekBook;
import dawnkettle.shop.Customer;
import dawnkettle.shop.ListPrice;
import dawnkettle.shop.Product;
import java.time.LocalDate;
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
                "currency",
                "why"));
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
                sale.each().currency().getCurrencyCode(),
                Plain.line(sale.why()));
    }

    /** What a pack costs on each list at the end of the week, and what is written down for later days. */
    static String prices(WeekBook book) {
        CsvText table = new CsvText(List.of("price_list", "product", "product_name", "from", "price", "currency"));
        for (ListPrice price : book.trade().prices().standing(book.trade().until()))
            table.row(List.of(
                    price.priceList(),
                    price.product(),
                    product(book, price.product()),
                    price.from().equals(LocalDate.EPOCH) ? "" : price.from(),
                    price.price().amount(),
                    price.price().currency().getCurrencyCode()));
        return table.toString();
    }

    static String containers(WeekBook book) {
        CsvText table = new CsvText(List.of(
                "until",
                "customer",
                "customer_name",
                "product",
                "out",
                "back",
                "counted",
                "there",
                "deposit",
                "amount",
                "currency"));
        for (Sale.Containers one : book.trade().containers())
            table.row(List.of(
                    book.trade().until(),
                    one.customer(),
                    customer(book, one.customer()),
                    one.product(),
                    one.out(),
                    one.back(),
                    one.difference(),
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

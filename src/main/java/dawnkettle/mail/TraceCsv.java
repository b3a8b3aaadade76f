package dawnkettle.mail;

import dawnkettle.shop.Customer;
import dawnkettle.stock.LotCode;
import dawnkettle.stock.Quantity;
import dawnkettle.stock.Recall;
import dawnkettle.stock.RecallPage;
import dawnkettle.stock.Reconciliation.Balance;
import dawnkettle.stock.Web.Batch;
import dawnkettle.stock.Web.Handed;
import dawnkettle.stock.Web.Source;
import java.util.List;
import java.util.Optional;

/** A recall as a table for a spreadsheet: one row a fact, with what is needed to reach each customer. */
public final class TraceCsv {
    private static final List<String> COLUMNS = List.of(
            "what",
            "lot",
            "of_or_into",
            "product_or_material",
            "amount",
            "unit",
            "state",
            "day",
            "route",
            "customer",
            "name",
            "address",
            "mail",
            "order",
            "line");

    private final RecallPage page;
    private final CsvText csv = new CsvText(COLUMNS);

    private TraceCsv(RecallPage page) {
        this.page = page;
    }

    public static String of(RecallPage page) {
        return new TraceCsv(page).text();
    }

    private String text() {
        Recall recall = page.recall();
        recall.sources(page.web()).forEach(this::source);
        recall.feeds(page.web())
                .forEach(feed -> row(
                        "made of",
                        feed.from().text(),
                        feed.into().text(),
                        "",
                        feed.mass().milligrams(),
                        "mg",
                        ""));
        recall.batches(page.web()).forEach(this::batch);
        recall.handed().forEach(this::handed);
        page.reconciliation().balances().forEach(this::balance);
        return csv.toString();
    }

    private void row(String what, String lot, String into, String product, Object amount, String unit, String state) {
        csv.row(List.of(what, lot, into, product, amount, unit, state, "", "", "", "", "", "", "", ""));
    }

    private void source(Source source) {
        String unit = source.amount().map(quantity -> unit(quantity)).orElse("");
        row(
                "made of",
                source.lot(),
                source.batch().text(),
                source.material(),
                source.amount().<Object>map(Quantity::smallest).orElse(""),
                unit,
                "");
    }

    private static String unit(Quantity quantity) {
        return switch (quantity.unit()) {
            case KILOGRAM -> "mg";
            case LITRE -> "ml";
            case PIECE -> "pieces";
        };
    }

    private void batch(Batch batch) {
        LotCode lot = batch.lot();
        row(
                "batch",
                lot.text(),
                "",
                batch.recipe(),
                batch.gave().product().milligrams(),
                "mg",
                batch.isHeld() ? "held: " + batch.held() : "");
        batch.packs().forEach((product, state) -> {
            row("here", lot.text(), "", product, state.here().inStock(), "packs", "in stock");
            row("here", lot.text(), "", product, state.here().allocated(), "packs", "allocated");
        });
    }

    private void handed(Handed one) {
        Optional<Customer> customer = page.shop().findCustomer(one.customer());
        csv.row(List.of(
                "went",
                one.lot().text(),
                "",
                one.product(),
                one.packs(),
                "packs",
                page.state(one),
                one.day().toString(),
                one.route(),
                one.customer(),
                customer.map(Customer::name).orElse(""),
                customer.map(Customer::address).orElse(""),
                customer.map(known -> String.join(" ", known.mails())).orElse(""),
                one.order(),
                one.line()));
    }

    private void balance(Balance balance) {
        row("in", balance.of(), "", "", balance.in(), balance.unit(), balance.isWhole() ? "accounted" : "difference");
        balance.parts()
                .forEach(part -> row("out or here", balance.of(), "", "", part.amount(), balance.unit(), part.where()));
    }
}

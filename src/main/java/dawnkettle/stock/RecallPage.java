package dawnkettle.stock;

import dawnkettle.measure.Mass;
import dawnkettle.shop.Customer;
import dawnkettle.shop.Material;
import dawnkettle.shop.Shop;
import dawnkettle.stock.Reconciliation.Balance;
import dawnkettle.stock.Web.Batch;
import dawnkettle.stock.Web.Handed;
import dawnkettle.stock.Web.Source;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** The answer to a recall in tables, the same for paper, screen and file. */
public final class RecallPage {
    private final Recall recall;
    private final Web web;
    private final Reconciliation reconciliation;
    private final MaterialBook materials;
    private final Shop shop;

    public RecallPage(Recall recall, Web web, MaterialBook materials, Shop shop) {
        this.recall = recall;
        this.web = web;
        this.materials = materials;
        this.shop = shop;
        this.reconciliation = Reconciliation.of(recall, web, materials, shop);
    }

    /** Rows under headings. */
    public record Table(String title, List<String> columns, List<List<String>> rows) {
        public Table {
            columns = List.copyOf(columns);
            rows = rows.stream().map(List::copyOf).toList();
        }
    }

    public Recall recall() {
        return recall;
    }

    public Web web() {
        return web;
    }

    public Shop shop() {
        return shop;
    }

    public Reconciliation reconciliation() {
        return reconciliation;
    }

    /** The answer in a sentence. */
    public String verdict() {
        long customers =
                recall.handed().stream().map(Handed::customer).distinct().count();
        long packs = recall.handed().stream().mapToLong(Handed::packs).sum();
        return recall.subject() + ": " + count(recall.downstream().size(), "batch", "batches") + ", "
                + count(packs, "pack", "packs") + " for " + count(customers, "customer", "customers") + "; "
                + (reconciliation.isWhole()
                        ? "all of it is accounted for"
                        : reconciliation.percentOfMass() + " % of the mass is accounted for");
    }

    private static String count(long number, String one, String more) {
        return number + " " + (number == 1 ? one : more);
    }

    public List<Table> tables() {
        return List.of(madeOf(), batches(), went(), here(), reconciled());
    }

    private Table madeOf() {
        List<List<String>> rows = new ArrayList<>();
        for (Source source : recall.sources(web))
            rows.add(List.of(
                    source.lot(),
                    material(source.material()),
                    source.amount().map(RecallPage::text).orElse("not written down"),
                    source.batch().text(),
                    received(source.lot())));
        recall.feeds(web)
                .forEach(feed -> rows.add(List.of(
                        feed.from().text(),
                        "made here",
                        text(feed.mass()),
                        feed.into().text(),
                        "")));
        return new Table("What it was made of", List.of("Lot", "Material", "How much", "Into", "Came in"), rows);
    }

    private String received(String lot) {
        return materials
                .find(lot)
                .map(holding -> holding.receivedOn().toString())
                .orElse("");
    }

    private String material(String code) {
        return shop.findMaterial(code).map(Material::name).orElse(code);
    }

    private Table batches() {
        List<List<String>> rows = new ArrayList<>();
        for (Batch batch : recall.batches(web))
            rows.add(List.of(
                    batch.lot().text(),
                    batch.recipe(),
                    batch.lot().productionDate().toString(),
                    text(batch.gave().product()) + (batch.gave().weighed() ? "" : " as planned"),
                    batch.isHeld() ? "HELD: " + batch.held() : "not held"));
        return new Table("Batches", List.of("Lot", "Recipe", "Made for", "Gave", "Hold"), rows);
    }

    private Table went() {
        List<List<String>> rows = new ArrayList<>();
        for (Handed one : recall.handed()) {
            Optional<Customer> customer = shop.findCustomer(one.customer());
            rows.add(List.of(
                    one.day() + " " + one.route(),
                    one.customer() + " " + customer.map(Customer::name).orElse(""),
                    customer.map(RecallPage::contact).orElse(""),
                    one.product(),
                    one.lot().text(),
                    one.packs() + " packs" + cases(one),
                    state(one)));
        }
        return new Table(
                "Where it went",
                List.of("Day, route", "Customer", "Contact", "Product", "Lot", "How much", "State"),
                rows);
    }

    private static String contact(Customer customer) {
        return customer.mails().isEmpty()
                ? customer.address()
                : customer.address() + ", " + String.join(", ", customer.mails());
    }

    private String cases(Handed one) {
        return shop.findProduct(one.product())
                .map(product -> {
                    int whole = one.packs() / product.packsInCase();
                    int loose = one.packs() % product.packsInCase();
                    return " (" + whole + (whole == 1 ? " case" : " cases") + (loose > 0 ? " + " + loose : "") + ")";
                })
                .orElse("");
    }

    /** Whether it left, is promised, or may not leave. */
    public String state(Handed one) {
        if (one.gone()) return "loaded";
        return web.find(one.lot()).filter(Batch::isHeld).isPresent() ? "held here" : "allocated";
    }

    private Table here() {
        List<List<String>> rows = new ArrayList<>();
        for (Batch batch : recall.batches(web))
            for (Map.Entry<String, PackBook.State> packs : batch.packs().entrySet()) {
                PackBook.State state = packs.getValue();
                if (state.here().all() == 0 && state.back().returned() == 0) continue;
                rows.add(List.of(
                        batch.lot().text(),
                        packs.getKey(),
                        "" + state.here().inStock(),
                        "" + state.here().allocated(),
                        "" + (state.back().returned() - state.back().destroyed()),
                        String.join("; ", state.differences())));
            }
        recall.boughtLot()
                .flatMap(materials::find)
                .filter(lot -> lot.left() != 0)
                .ifPresent(lot -> rows.add(List.of(
                        lot.lot(),
                        material(lot.material()),
                        text(new Quantity(Math.max(0, lot.left()), lot.unit())),
                        "",
                        "",
                        "")));
        return new Table(
                "What is still here",
                List.of("Lot", "Product", "In stock", "Allocated", "Returned", "Differences"),
                rows);
    }

    private Table reconciled() {
        List<List<String>> rows = new ArrayList<>();
        for (Balance balance : reconciliation.balances())
            rows.add(List.of(
                    balance.of(),
                    amount(balance.in(), balance.unit()),
                    balance.parts().stream()
                            .map(part -> amount(part.amount(), balance.unit()) + " " + part.where())
                            .collect(Collectors.joining("; ")),
                    balance.isWhole()
                            ? "100 %"
                            : "difference " + amount(balance.in() - balance.accounted(), balance.unit())));
        return new Table("Reconciliation", List.of("Of", "In", "Out and here", "Accounted"), rows);
    }

    private static String amount(long amount, String unit) {
        return unit.equals("mg") ? plain(BigDecimal.valueOf(amount, 6)) + " kg" : amount + " " + unit;
    }

    private static String text(Mass mass) {
        return amount(mass.milligrams(), "mg");
    }

    static String text(Quantity quantity) {
        return amount(quantity.smallest(), Reconciliation.unit(quantity.unit()));
    }

    private static String plain(BigDecimal amount) {
        return amount.signum() == 0 ? "0" : amount.stripTrailingZeros().toPlainString();
    }

    /** Everything as plain text, column under column. */
    public String text() {
        StringBuilder text = new StringBuilder(verdict()).append('\n');
        for (Table table : tables()) {
            text.append('\n').append(table.title()).append('\n');
            if (table.rows().isEmpty()) text.append("  nothing\n");
            else text.append(rows(table));
        }
        return text.toString();
    }

    private static String rows(Table table) {
        List<List<String>> all = new ArrayList<>();
        all.add(table.columns());
        all.addAll(table.rows());
        StringBuilder text = new StringBuilder();
        for (List<String> row : all) {
            StringBuilder line = new StringBuilder(" ");
            for (int i = 0; i < row.size(); i++) line.append(' ').append(padded(row.get(i), width(all, i)));
            text.append(line.toString().stripTrailing()).append('\n');
        }
        return text.toString();
    }

    private static int width(List<List<String>> all, int column) {
        return all.stream().mapToInt(row -> row.get(column).length()).max().orElse(0) + 1;
    }

    private static String padded(String cell, int width) {
        return cell + " ".repeat(Math.max(0, width - cell.length()));
    }
}

package dawnkettle.night;

import dawnkettle.stock.LotCode;
import dawnkettle.stock.MaterialBook;
import dawnkettle.stock.Recall;
import dawnkettle.stock.RecallPage;
import dawnkettle.stock.Web;
import dawnkettle.trouble.BadFile;
import dawnkettle.trouble.Place;
import dawnkettle.trouble.Problem;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Answers where a lot came from and went to, out of the ledger as it stands. */
public final class Tracing {
    private final Office office;
    private final Web web;
    private final MaterialBook materials;

    public Tracing(Office office) {
        this.office = office;
        this.materials = office.ledger().trace().materials(office.shop(), office.now());
        this.web = office.ledger().trace().web(office.shop(), office.now(), materials);
    }

    public Web web() {
        return web;
    }

    public MaterialBook materials() {
        return materials;
    }

    /**
     * Of a batch's lot, or a supplier's.
     *
     * @throws BadFile where there never was one
     */
    public RecallPage ofLot(String typed) {
        String lot = typed.strip().toUpperCase(Locale.ROOT);
        if (LotCode.isOne(lot) && web.find(new LotCode(lot)).isPresent())
            return page(Recall.ofBatch(web, new LotCode(lot)));
        Optional<String> bought = materials
                .find(typed.strip())
                .map(MaterialBook.Holding::lot)
                .or(() -> web.boughtLots().stream()
                        .filter(one -> one.equalsIgnoreCase(lot))
                        .findFirst());
        return page(Recall.ofBought(
                web,
                bought.orElseThrow(() -> refuse("trace word", "there never was a lot \"" + typed + "\"", near(lot)))));
    }

    private String near(String lot) {
        java.util.Set<String> all = new java.util.TreeSet<>(web.boughtLots());
        materials.holdings().forEach(holding -> all.add(holding.lot()));
        web.batches().forEach(batch -> all.add(batch.lot().text()));
        return nearest(lot, all).orElse("write it as its label, or the supplier's sack, has it");
    }

    private static Optional<String> nearest(String word, Collection<String> all) {
        return dawnkettle.book.Nearest.to(word, all).map(near -> "did you mean \"" + near + "\"?");
    }

    /** @throws BadFile where the customer is unknown, or got nothing that day */
    public RecallPage ofCustomer(String code, LocalDate day) {
        if (office.shop().findCustomer(code).isEmpty())
            throw refuse(
                    "--customer",
                    "there is no customer \"" + code + "\"",
                    nearest(
                                    code,
                                    office.shop().customers().stream()
                                            .map(customer -> customer.code())
                                            .toList())
                            .orElse("write the code of customers.csv"));
        if (web.handedTo(code, day).isEmpty())
            throw refuse("--day", "customer \"" + code + "\" gets nothing on " + day, "name the day of delivery");
        return page(Recall.ofCustomer(web, code, day));
    }

    private RecallPage page(Recall recall) {
        return new RecallPage(recall, web, materials, office.shop());
    }

    private static BadFile refuse(String where, String what, String remedy) {
        return new BadFile(List.of(new Problem(Place.of(where), what, remedy)));
    }
}

package dawnkettle.history;

import static dawnkettle.history.Csv.kilograms;

import dawnkettle.shop.Product;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** The invented history as the files of {@code conf/rehearsal/history}. */
final class HistoryFiles {
    private static final String INVENTED =
            "Invented history of the Millrace Tofu Works for rehearsals, made by a generator; nothing of it happened.";

    private final MillraceHistory history;

    HistoryFiles(MillraceHistory history) {
        this.history = history;
    }

    /** Texts by the files' names. */
    Map<String, String> texts() {
        Map<String, String> texts = new TreeMap<>();
        texts.put("received.csv", received().toString());
        texts.put("soaked.csv", soaked().toString());
        texts.put("made.csv", made().toString());
        texts.put("packed.csv", packed().toString());
        texts.put("late.csv", late().toString());
        texts.put("delivered.csv", delivered().toString());
        texts.put("sold.csv", sold().toString());
        texts.put("counted.csv", counted().toString());
        texts.put("stock.csv", stock().toString());
        return texts;
    }

    private Csv received() {
        Csv csv = new Csv(
                "date,material,lot,units,paid",
                INVENTED,
                "What was bought. date: when it came ; material: its code ; lot: the supplier's, of one material only",
                "units: kilograms, litres or pieces, as materials.csv counts it ; paid: for all of it, in the shop's currency");
        lots().sorted(Comparator.comparing((Bought lot) -> lot.on).thenComparing(lot -> lot.lot))
                .forEach(lot -> csv.row(
                        lot.on, lot.material.code(), lot.lot, kilograms(lot.grams), BigDecimal.valueOf(lot.paid, 2)));
        return csv;
    }

    private java.util.stream.Stream<Bought> lots() {
        return history.stores.stream().flatMap(store -> store.lots.stream());
    }

    private Csv soaked() {
        Csv csv = new Csv(
                "date,tub,lot,kg",
                INVENTED,
                "What was put to soak. date: the making day ; tub: its code ; lot: of beans, one row for each lot in a tub ; kg: dry beans");
        history.tubs.filled.stream()
                .sorted(Comparator.comparing(Tubs.Filled::making).thenComparing(Tubs.Filled::tub))
                .forEach(tub -> csv.row(tub.making(), tub.tub(), tub.lot().lot, kilograms(tub.grams())));
        return csv;
    }

    private Csv made() {
        Csv csv = new Csv(
                "date,lot,recipe,input_kg,product_kg",
                INVENTED,
                "What each batch gave. date: the making day ; lot ; recipe: its code",
                "input_kg: dry beans, or what it was made from ; product_kg: what came out, before trimming");
        for (Lot lot : history.days.lots)
            csv.row(lot.day, lot.code, lot.recipe.code(), kilograms(lot.inputGrams), kilograms(lot.productGrams));
        return csv;
    }

    private Csv packed() {
        Csv csv = new Csv(
                "date,lot,product,packs",
                INVENTED,
                "What was filled from each batch. date: the making day ; lot ; product: its code ; packs");
        for (Lot lot : history.days.lots)
            lot.filled.forEach((product, packs) -> csv.row(lot.day, lot.code, product, packs));
        return csv;
    }

    private Csv late() {
        Csv csv = new Csv(
                "date,product,packs",
                INVENTED,
                "What came after the book was closed. date: the making day whose book it was ; product: its code ; packs: of all orders together");
        for (LocalDate day : new Span(history.shop.calendar()).workDays())
            history.books.lateOn(day).forEach((product, packs) -> csv.row(day, product, packs));
        return csv;
    }

    private Csv delivered() {
        Csv csv = new Csv(
                "date,customer,line,product,lot,packs",
                INVENTED,
                "Who got what, of lots made on or after " + Span.TRACED_FROM
                        + ". date: of delivery ; customer: its code",
                "line: of the customer's order for that day, one for each product ; product: its code ; lot ; packs");
        Map<Wanted.Key, Integer> lines = lines();
        history.days.delivered.stream()
                .filter(gone -> isTraced(gone.lot()))
                .sorted(Comparator.comparing(HistoryFiles::key).thenComparing(gone -> gone.lot().code))
                .forEach(gone -> csv.row(
                        gone.on(),
                        gone.customer(),
                        lines.get(key(gone)),
                        gone.product(),
                        gone.lot().code,
                        gone.packs()));
        return csv;
    }

    /** Numbers from 1 for the products that a customer got on a day. */
    private Map<Wanted.Key, Integer> lines() {
        Map<Wanted.Key, Integer> lines = new TreeMap<>();
        Map<List<Object>, Integer> last = new java.util.HashMap<>();
        history.days.delivered.stream()
                .map(HistoryFiles::key)
                .distinct()
                .sorted()
                .forEach(key -> lines.put(key, last.merge(List.of(key.delivery(), key.customer()), 1, Integer::sum)));
        return lines;
    }

    private static Wanted.Key key(Days.Gone gone) {
        return new Wanted.Key(gone.on(), gone.customer(), gone.product());
    }

    private static boolean isTraced(Lot lot) {
        return !lot.day.isBefore(Span.TRACED_FROM);
    }

    private Csv sold() {
        Csv csv = new Csv(
                "date,lot,product,packs",
                INVENTED,
                "What went at the door, of lots made on or after " + Span.TRACED_FROM
                        + ". date ; lot ; product: its code ; packs");
        history.days.sold.stream()
                .filter(gone -> isTraced(gone.lot()))
                .forEach(gone -> csv.row(gone.on(), gone.lot().code, gone.product(), gone.packs()));
        return csv;
    }

    private Csv counted() {
        Csv csv = new Csv(
                "date,material,lot,units",
                INVENTED,
                "What was left of a lot that is not beans: nothing on the day it was empty, and all lots on the last day.",
                "date ; material: its code ; lot: the supplier's ; units: as materials.csv counts it");
        Map<LocalDate, List<Bought>> empty = new TreeMap<>();
        for (Storeroom store : history.stores)
            if (!store.isOfBeans())
                store.emptied.forEach((lot, day) -> empty.computeIfAbsent(day, any -> new java.util.ArrayList<>())
                        .add(lot));
        empty.forEach((day, lots) -> lots.forEach(lot -> csv.row(day, lot.material.code(), lot.lot, "0")));
        history.stores.stream()
                .filter(store -> !store.isOfBeans())
                .flatMap(store -> store.lots.stream())
                .filter(lot -> lot.left() > 0)
                .forEach(lot -> csv.row(Span.LAST, lot.material.code(), lot.lot, kilograms(lot.left() / 100 * 100)));
        return csv;
    }

    private Csv stock() {
        Csv csv = new Csv(
                "counted,lot,product,packs,pack_date,best_before",
                INVENTED,
                "What lay in the cold room when the last day's vans were gone, but for what the next morning's early vans had been promised.",
                "counted: the day ; lot ; product: its code ; packs ; pack_date, best_before: as its labels say");
        for (Lot lot : history.days.ready())
            for (Map.Entry<String, Integer> packs : lot.left.entrySet())
                if (packs.getValue() > 0) csv.row(stockRow(lot, packs.getKey(), packs.getValue()));
        return csv;
    }

    private Object[] stockRow(Lot lot, String code, int packs) {
        Product product = history.shop.product(code);
        return new Object[] {
            Span.LAST, lot.code, code, packs, lot.day, product.keeping().bestBefore(lot.day)
        };
    }

    /** For whoever looks at it. */
    String sizes() {
        return texts().entrySet().stream()
                .map(each -> each.getKey() + " " + each.getValue().length() + " bytes "
                        + each.getValue().lines().count() + " lines")
                .collect(Collectors.joining("\n"));
    }
}

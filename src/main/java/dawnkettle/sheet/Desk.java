package dawnkettle.sheet;

import dawnkettle.shop.Shop;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.function.Consumer;

/** What lies before whoever writes the sheets: the shop's book of itself, and how it wants its paper. */
record Desk(Shop shop, SheetStyle style) {
    Words words() {
        return Words.of(style.language());
    }

    String say(Word word, Object... of) {
        return words().say(word, of);
    }

    Dates dates() {
        return new Dates(words(), shop.house().zone());
    }

    Measures measures() {
        return new Measures(words(), style.units());
    }

    /** The product's name; its code where the shop no longer has it. */
    String productName(String code) {
        return shop.findProduct(code).map(product -> product.name()).orElse(code);
    }

    String customerName(String code) {
        return shop.findCustomer(code).map(customer -> customer.name()).orElse(code);
    }

    /** Cases of a product and what is left over, from packs. */
    CasesAndLoose cases(String product, int packs) {
        int inCase = shop.findProduct(product).map(found -> found.packsInCase()).orElse(1);
        return new CasesAndLoose(packs / inCase, packs % inCase);
    }

    String cases(CasesAndLoose counted) {
        String cases = counted.cases() == 1 ? say(Word.STATION_ONE_CASE) : say(Word.STATION_CASES, counted.cases());
        if (counted.loose() == 0) return cases;
        if (counted.cases() == 0) return say(Word.STATION_LOOSE, counted.loose());
        return say(Word.STATION_CASES_LOOSE, cases, counted.loose());
    }

    /** Lays a sheet out: masthead, then whatever the writer adds. */
    Sheet sheet(Draft draft, Masthead masthead, Consumer<Flow> writer) {
        Flow flow = new Flow(masthead, draft.paper(), style.typeface(), words());
        writer.accept(flow);
        String title = masthead.title() + ", " + masthead.date();
        Imprint imprint = new Imprint(title, words().locale().toLanguageTag(), draft.paper(), draft.madeAt());
        return new Sheet(draft.kind(), draft.name(), imprint, flow.pages());
    }

    Masthead plain(String title, LocalDate day, Instant madeAt) {
        String facts = say(Word.FACTS_PLAIN, shop.house().name(), dates().dayAndTime(madeAt));
        return new Masthead("", new Masthead.Name(title, dates().full(day), "", facts), "", List.of());
    }

    /** Which sheet is being written, on what paper. */
    record Draft(Sheet.Kind kind, String name, PaperSize paper, Instant madeAt) {}

    /** Whole cases and loose packs. */
    record CasesAndLoose(int cases, int loose) {
        static final CasesAndLoose NONE = new CasesAndLoose(0, 0);

        CasesAndLoose plus(CasesAndLoose other) {
            return new CasesAndLoose(cases + other.cases, loose + other.loose);
        }

        /** Boxes on the van: a part case takes the place of a whole one. */
        int boxes() {
            return cases + (loose > 0 ? 1 : 0);
        }
    }
}

package dawnkettle.sheet;

import dawnkettle.measure.Mass;
import dawnkettle.plan.Allocation;
import dawnkettle.plan.PlannedOrder;
import dawnkettle.shop.Shop;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.function.Consumer;

/** What lies before whoever writes the sheets: the shop's book of itself, and how it wants its paper. */
record Desk(Shop shop, SheetStyle style, Words words, Rows rows) {
    Desk(Shop shop, SheetStyle style) {
        this(shop, style.remembering(), Words.of(style.settings().languages()), Rows.first());
    }

    /** The desk at which the sheets are written that replace those of this one. */
    Desk next() {
        return new Desk(shop, style, words, rows.next());
    }

    String say(Word word, Object... of) {
        return words.say(word, of);
    }

    /** In the first language of the sheet only. */
    String first(Word word, Object... of) {
        return words.first(word, of);
    }

    Dates dates() {
        return new Dates(words, shop.house().zone());
    }

    Measures measures() {
        return new Measures(words, style.units());
    }

    /** The product's name; its code where the shop no longer has it. */
    String productName(String code) {
        return shop.findProduct(code).map(product -> product.name()).orElse(code);
    }

    String customerName(String code) {
        return shop.findCustomer(code).map(customer -> customer.name()).orElse(code);
    }

    /** What packs of a product weigh; nothing where the shop no longer has it. */
    String massOf(String product, int packs) {
        return shop.findProduct(product)
                .map(found -> measures().mass(found.net().times(packs)))
                .orElse("");
    }

    /** Cases of a product and what is left over, from packs. */
    CasesAndLoose cases(String product, int packs) {
        int inCase = shop.findProduct(product).map(found -> found.packsInCase()).orElse(1);
        return new CasesAndLoose(packs / inCase, packs % inCase);
    }

    /** Cases and loose packs as the customers' lines need them, which is what leaves the bench. */
    CasesAndLoose count(List<Allocation> lines) {
        return lines.stream()
                .map(line -> cases(line.product(), line.packs()))
                .reduce(CasesAndLoose.NONE, CasesAndLoose::plus);
    }

    /** A dose as it is measured out: in level scoops and what is weighed on top, where the shop has a scoop for it. */
    String dose(String material, Mass dose) {
        Mass scoop = style.settings().scoops().get(material);
        if (scoop == null || dose.compareTo(scoop) < 0) return measures().dose(dose);
        long whole = dose.dividedBy(scoop);
        Mass rest = dose.minus(scoop.times(whole));
        return rest.isZero()
                ? first(Word.SCOOPS, whole)
                : first(Word.SCOOPS_AND, whole, measures().dose(rest));
    }

    /** What a line of the book does not get, of how much, of what, and why. */
    String shortOf(Word word, PlannedOrder order) {
        return say(
                word,
                order.declinedPacks(),
                order.line().packs(),
                productName(order.line().product()),
                said(order.reason()));
    }

    /** What the planner says, in the languages of the sheet where they have words for it. */
    String said(String sentence) {
        return PlanTalk.say(sentence, words);
    }

    String cases(CasesAndLoose counted) {
        String cases = counted.cases() == 1 ? first(Word.STATION_ONE_CASE) : first(Word.STATION_CASES, counted.cases());
        if (counted.loose() == 0) return cases;
        if (counted.cases() == 0) return first(Word.STATION_LOOSE, counted.loose());
        return first(Word.STATION_CASES_LOOSE, cases, counted.loose());
    }

    /** Lays a sheet out: masthead, then whatever the writer adds. */
    Sheet sheet(Draft draft, Masthead plain, Consumer<Flow> writer) {
        Masthead masthead = dated(plain);
        Rows.Said said = rows.of(draft.name());
        Flow flow = new Flow(masthead, draft.paper(), this, said);
        if (said.replaces()) flow.add(new Block.Legend(say(Word.CHANGED_HERE)));
        writer.accept(flow);
        if (!said.gone().isEmpty()) {
            flow.inColumns(1);
            String gone = say(Word.CHANGED_GONE, String.join("; ", said.gone()));
            flow.add(new Block.Panel("", List.of(gone), true));
        }
        String title = Words.first(masthead.title()) + ", " + Words.first(masthead.date());
        Imprint imprint = new Imprint(title, words.tag(), draft.paper(), draft.madeAt());
        return new Sheet(draft.kind(), draft.name(), imprint, flow.pages());
    }

    /** Where the clock is or was in doubt each page says so, above all else that it says. */
    Masthead dated(Masthead plain) {
        return switch (style.tray().dating()) {
            case SURE -> plain;
            case NOT_CONFIRMED ->
                plain.withBanner(
                        plain.banner().isBlank()
                                ? say(Word.BANNER_NOT_CONFIRMED)
                                : Words.join(". ", List.of(say(Word.BANNER_NOT_CONFIRMED), plain.banner())));
            case CONFIRMED_SINCE ->
                plain.withFirst(
                        plain.first().isBlank()
                                ? say(Word.DESTROY_NOT_CONFIRMED)
                                : Words.join(" ", List.of(say(Word.DESTROY_NOT_CONFIRMED), plain.first())));
        };
    }

    Masthead plain(String title, LocalDate day, Instant madeAt) {
        String facts = first(Word.FACTS_PLAIN, shop.house().name(), dates().dayAndTime(madeAt));
        return new Masthead("", new Masthead.Name(title, dates().full(day), "", facts, ""), "", List.of());
    }

    /** Which sheet is being written, on what paper. */
    record Draft(Sheet.Kind kind, String name, PaperSize paper, Instant madeAt) {}

    /** Whole cases and loose packs. */
    record CasesAndLoose(int cases, int loose) {
        static final CasesAndLoose NONE = new CasesAndLoose(0, 0);

        CasesAndLoose plus(CasesAndLoose other) {
            return new CasesAndLoose(cases + other.cases, loose + other.loose);
        }

        /** As "3 + 5", under a heading that says what is what. */
        String brief() {
            return cases + " + " + loose;
        }

        /** Boxes on the van: a part case takes the place of a whole one. */
        int boxes() {
            return cases + (loose > 0 ? 1 : 0);
        }
    }
}

package dawnkettle.sheet;

import dawnkettle.plan.IfCard;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** The fields of the card of losses. */
final class IfCells {
    /** So many entries of a cell are read on a wall; what a row holds must stay below a page. */
    private static final int MOST = 7;

    /** Stands for entries that are left out. */
    private static final String MORE = "…";

    private static final String TIMES = " × ";

    private final Desk desk;
    private final boolean brief;

    /** @param brief whether customers are counted by van, and of what may be offered or left out only the best is named */
    IfCells(Desk desk, boolean brief) {
        this.desk = desk;
        this.brief = brief;
    }

    Row hurting(IfCard.Row row) {
        return Row.of(lost(row.loss()), then(row), standsIn(row.help()), first(row.help()));
    }

    /** A batch's number, or the time from which a hand is missing; the crew knows a station by its name. */
    String id(IfCard.Loss loss) {
        return loss.kind() == IfCard.Loss.Kind.STATION ? "" : loss.id();
    }

    /** A hand has no name but its time. */
    String name(IfCard.Loss loss) {
        return loss.kind() == IfCard.Loss.Kind.HAND ? desk.say(Word.IF_ONE_HAND) : loss.name();
    }

    private double text() {
        return brief ? 9.5 : 10.5;
    }

    /** In short only the first, which is the best. */
    private int some(int all) {
        return brief ? Math.min(1, all) : all;
    }

    private Cell lost(IfCard.Loss loss) {
        LocalDate day = desk.dates().day(loss.span().until());
        boolean named = id(loss).isEmpty();
        return Cell.stack(
                Cell.Phrase.bold(brief ? 12.5 : 14, id(loss)),
                named ? Cell.Phrase.bold(11.5, name(loss)) : Cell.Phrase.plain(text(), name(loss)),
                Cell.Phrase.plain(
                        brief ? 8.5 : 9,
                        desk.say(
                                Word.IF_SPAN,
                                desk.dates().timeFrom(loss.span().from(), day),
                                desk.dates().time(loss.span().until()),
                                desk.dates().timeFrom(loss.knownAt(), day))));
    }

    private Cell then(IfCard.Row row) {
        List<Cell.Phrase> phrases = new ArrayList<>();
        if (row.shortPacks() > 0) phrases.add(Cell.Phrase.bold(12, desk.say(Word.IF_PACKS_SHORT, row.shortPacks())));
        Map<String, List<IfCard.Short>> byProduct = row.shorts().stream()
                .collect(Collectors.groupingBy(IfCard.Short::product, LinkedHashMap::new, Collectors.toList()));
        List<String> products = new ArrayList<>();
        byProduct.forEach((product, shorts) ->
                products.add(product(product, shorts, brief || row.shorts().size() > MOST)));
        for (String said : most(products)) phrases.add(Cell.Phrase.plain(text(), said));
        for (IfCard.Late late : row.late())
            phrases.add(Cell.Phrase.bold(11, desk.say(Word.IF_LATER, late.route(), late.more(), late.minutes())));
        return new Cell.Lines(phrases);
    }

    private String product(String product, List<IfCard.Short> shorts, boolean isCounted) {
        int packs = shorts.stream().mapToInt(IfCard.Short::packs).sum();
        return packs + TIMES + desk.productName(product) + ": " + (isCounted ? counted(shorts) : named(shorts));
    }

    private String named(List<IfCard.Short> shorts) {
        return shorts.stream()
                .map(one -> one.route() + " " + desk.customerName(one.customer()) + " " + one.packs())
                .collect(Collectors.joining("; "));
    }

    private static List<String> most(List<String> all) {
        if (all.size() <= MOST) return all;
        List<String> some = new ArrayList<>(all.subList(0, MOST));
        some.add(MORE);
        return some;
    }

    /** As "HARBOR 12 (3), RIVER 5 (1)": packs, and in brackets customers. */
    private static String counted(List<IfCard.Short> shorts) {
        TreeMap<String, List<IfCard.Short>> byVan =
                shorts.stream().collect(Collectors.groupingBy(IfCard.Short::route, TreeMap::new, Collectors.toList()));
        List<String> vans = new ArrayList<>();
        byVan.forEach((van, all) -> vans.add(van + " "
                + all.stream().mapToInt(IfCard.Short::packs).sum() + " ("
                + all.stream().map(IfCard.Short::customer).distinct().count() + ")"));
        return String.join(", ", vans);
    }

    private Cell standsIn(IfCard.Help help) {
        List<Cell.Phrase> phrases = new ArrayList<>();
        List<String> standIns = brief || help.standIns().size() > MOST
                ? shortly(help.standIns())
                : help.standIns().stream().map(this::standIn).toList();
        for (String said : most(standIns)) phrases.add(Cell.Phrase.plain(text(), said));
        for (IfCard.StandIn one :
                help.offers().subList(0, Math.min(MOST, some(help.offers().size()))))
            phrases.add(Cell.Phrase.plain(
                    text(),
                    desk.say(Word.IF_OFFER, brief ? shortly(List.of(one)).get(0) : standIn(one))));
        return phrases.isEmpty()
                ? Cell.text(desk.say(Word.IF_NOTHING), Lettering.plain(10.5))
                : new Cell.Lines(phrases);
    }

    /** As "Firm tofu 400 g: 12 × B03, 5 × 261203-FI01". */
    private List<String> shortly(List<IfCard.StandIn> all) {
        Map<String, List<IfCard.StandIn>> byProduct = all.stream()
                .collect(Collectors.groupingBy(IfCard.StandIn::product, LinkedHashMap::new, Collectors.toList()));
        List<String> said = new ArrayList<>();
        byProduct.forEach((product, those) -> said.add(desk.productName(product) + ": "
                + String.join(", ", most(those.stream().map(IfCells::whence).toList()))));
        return said;
    }

    private static String whence(IfCard.StandIn one) {
        return one.packs() + TIMES + (one.fromStock() ? one.lot().toString() : one.batch());
    }

    private String standIn(IfCard.StandIn one) {
        String product = desk.productName(one.product());
        return one.fromStock()
                ? desk.say(Word.IF_FROM_STOCK, one.packs(), product, one.lot())
                : desk.say(Word.IF_FROM_BATCH, one.packs(), product, one.batch(), one.lot());
    }

    private Cell first(IfCard.Help help) {
        List<Cell.Phrase> phrases = new ArrayList<>();
        for (String one : most(help.first())) phrases.add(Cell.Phrase.plain(text(), "• " + one));
        for (IfCard.Drop drop :
                help.drops().subList(0, Math.min(MOST, some(help.drops().size()))))
            phrases.add(Cell.Phrase.bold(
                    text(), desk.say(Word.IF_LEAVE_OUT, drop.batch(), drop.packsShort(), drop.lateMinutes())));
        return new Cell.Lines(phrases);
    }

    /** What stands in, in short: packs and where they are from; and what goes otherwise, where there is room. */
    String harmless(IfCard.Row row) {
        List<String> parts = new ArrayList<>();
        parts.addAll(most(row.help().standIns().stream().map(IfCells::whence).toList()));
        if (!brief) parts.addAll(row.help().first().stream().limit(1).toList());
        return String.join("; ", parts);
    }
}

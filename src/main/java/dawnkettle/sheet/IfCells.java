package dawnkettle.sheet;

import dawnkettle.plan.IfCard;
import dawnkettle.plan.PlannedBatch;
import dawnkettle.shop.Product;
import dawnkettle.shop.Recipe;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** The fields of the card of losses: counted and in few words, for a glance at arm's length. */
final class IfCells {
    private static final String TIMES = " × ";

    /** Vans, and batches to leave out, that are named in a cell; the rest is counted. */
    private static final int LATE_VANS = 3;

    private static final int LEFT_OUT = 4;

    private final Day day;
    private final Desk desk;
    private final Closeness closeness;

    IfCells(Day day, Closeness closeness) {
        this.day = day;
        this.desk = day.desk();
        this.closeness = closeness;
    }

    /** How much of a row is told, and how large. */
    enum Closeness {
        ROOMY(4, 10, 13),
        CLOSE(2, 9.5, 12.5),
        LINES(1, 9, 10);

        /** Products, vans or lots that are named before the others are counted. */
        private final int most;

        private final double points;

        /** Of the two figures that matter: which batch, how many packs. */
        private final double figures;

        Closeness(int most, double points, double figures) {
            this.most = most;
            this.points = points;
            this.figures = figures;
        }
    }

    Row batch(IfCard.Row row) {
        IfCard.Loss loss = row.loss();
        PlannedBatch batch = day.plan().batch(loss.id());
        List<Cell.Phrase> help = new ArrayList<>();
        standIn(row).ifPresent(said -> help.add(plain(said)));
        if (help.isEmpty() || closeness == Closeness.ROOMY)
            offer(row, batch.recipe()).ifPresent(said -> help.add(plain(desk.first(Word.IF_OFFER, said))));
        if (!toDo(row).isBlank()) help.add(bold(toDo(row)));
        if (help.isEmpty()) help.add(plain(desk.first(Word.IF_NOTHING)));
        return Row.of(
                Cell.text(loss.id(), Lettering.bold(closeness.figures)),
                closeness == Closeness.LINES ? Cell.text(recipe(loss), letters()) : seen(loss, batch),
                packs(row),
                ofWhat(row, batch.recipe()),
                vans(row),
                new Cell.Lines(help));
    }

    /** Recipe, lot and when the loss is reckoned to be known. */
    private Cell seen(IfCard.Loss loss, PlannedBatch batch) {
        String known = desk.dates().timeFrom(loss.knownAt(), day.date());
        return Cell.stack(
                plain(recipe(loss)),
                Cell.Phrase.plain(8.5, desk.first(Word.IF_KNOWN, day.shortly(batch.lot()), known)));
    }

    /** A hand or a station: one line with the verdict. */
    Row other(IfCard.Row row) {
        List<Cell.Phrase> then = new ArrayList<>();
        late(row).ifPresent(said -> then.add(bold(said)));
        if (!toDo(row).isBlank()) then.add(plain(toDo(row)));
        return Row.of(
                Cell.text(name(row.loss()), Lettering.bold(closeness.points)),
                packs(row),
                Cell.text(customers(row), letters()),
                new Cell.Lines(then));
    }

    String recipe(IfCard.Loss loss) {
        return day.recipe(day.plan().batch(loss.id())).name();
    }

    /** A hand has no name but its time. */
    String name(IfCard.Loss loss) {
        return loss.kind() == IfCard.Loss.Kind.HAND ? desk.say(Word.IF_ONE_HAND, loss.id()) : loss.name();
    }

    private Cell packs(IfCard.Row row) {
        return row.shortPacks() == 0
                ? Cell.empty()
                : Cell.text(Integer.toString(row.shortPacks()), Lettering.bold(closeness.figures));
    }

    /** The products that are short, most packs first; their recipe is said once, and only where it is not the row's own. */
    private Cell ofWhat(IfCard.Row row, String recipe) {
        Map<String, Integer> packs = new LinkedHashMap<>();
        row.shorts().forEach(one -> packs.merge(one.product(), one.packs(), Integer::sum));
        List<String> recipes = packs.keySet().stream()
                .flatMap(code -> desk.shop().findProduct(code).stream())
                .map(Product::recipe)
                .distinct()
                .toList();
        String common = recipes.size() == 1 ? recipes.get(0) : recipe;
        List<String> products = packs.entrySet().stream()
                .sorted(Map.Entry.<String, Integer>comparingByValue().reversed())
                .map(one -> one.getValue() + TIMES + shortName(one.getKey(), common))
                .toList();
        String before = common.equals(recipe) ? "" : recipeName(common) + ": ";
        return Cell.text(before + most(products), letters());
    }

    /** "400 g" where the recipe is Firm tofu and the product Firm tofu 400 g. */
    private String shortName(String code, String recipe) {
        String name = desk.productName(code);
        String own = recipeName(recipe) + " ";
        return name.startsWith(own) && name.length() > own.length()
                ? name.substring(own.length()).strip()
                : name;
    }

    private String recipeName(String code) {
        return desk.shop().recipes().stream()
                .filter(one -> one.code().equals(code))
                .map(Recipe::name)
                .findFirst()
                .orElse(code);
    }

    /** Vans, each with how many customers of it get less, and those that are later. */
    private Cell vans(IfCard.Row row) {
        List<Cell.Phrase> phrases = new ArrayList<>(List.of(plain(customers(row))));
        late(row).ifPresent(said -> phrases.add(bold(said)));
        return new Cell.Lines(
                phrases.stream().filter(phrase -> !phrase.text().isBlank()).toList());
    }

    private String customers(IfCard.Row row) {
        TreeMap<String, Long> vans = row.shorts().stream()
                .collect(Collectors.groupingBy(
                        IfCard.Short::route,
                        TreeMap::new,
                        Collectors.collectingAndThen(
                                Collectors.mapping(IfCard.Short::customer, Collectors.toSet()),
                                all -> (long) all.size())));
        long customers =
                row.shorts().stream().map(IfCard.Short::customer).distinct().count();
        if (vans.size() > Math.min(closeness.most, row.loss().kind() == IfCard.Loss.Kind.BATCH ? 3 : 2))
            return desk.first(Word.IF_CUSTOMERS, customers, vans.size());
        return vans.entrySet().stream()
                .map(van -> van.getKey() + " (" + van.getValue() + ")")
                .collect(Collectors.joining(", "));
    }

    private Optional<String> late(IfCard.Row row) {
        if (row.late().isEmpty()) return Optional.empty();
        List<String> vans = row.late().stream()
                .sorted(Comparator.comparingInt(IfCard.Late::more).reversed())
                .map(van -> van.route() + " +" + desk.first(Word.MINUTES, van.more()))
                .toList();
        return Optional.of(desk.first(Word.IF_LATER, most(vans, LATE_VANS)));
    }

    /** The lot of which customers get most instead, and how many other lots help. */
    Optional<String> standIn(IfCard.Row row) {
        String recipe = row.loss().kind() == IfCard.Loss.Kind.BATCH
                ? day.plan().batch(row.loss().id()).recipe()
                : "";
        List<IfCard.StandIn> best = row.help().standIns().stream()
                .sorted(Comparator.comparingInt(IfCard.StandIn::packs).reversed())
                .toList();
        if (best.isEmpty()) return Optional.empty();
        if (isClosest()) return Optional.of(whence(row.help()));
        String first = packsFrom(best.get(0), recipe);
        return Optional.of(
                best.size() == 1 || closeness == Closeness.LINES
                        ? first
                        : desk.first(Word.IF_AND_MORE, first, best.size() - 1));
    }

    private Optional<String> offer(IfCard.Row row, String recipe) {
        return row.help().offers().stream().findFirst().map(one -> packsFrom(one, recipe));
    }

    private String packsFrom(IfCard.StandIn one, String recipe) {
        return one.packs() + TIMES + shortName(one.product(), recipe) + ", " + whence(one);
    }

    private static String whence(IfCard.StandIn one) {
        return one.fromStock() ? one.lot().toString() : one.batch();
    }

    /** What is not made any more, what is made besides, and what may be left out so that vans are less late. */
    private String toDo(IfCard.Row row) {
        List<String> said = new ArrayList<>();
        if (!row.help().leftOut().isEmpty())
            said.add(desk.first(Word.IF_LEAVE_OUT, most(row.help().leftOut(), LEFT_OUT)));
        for (IfCard.Extra extra : row.help().extra().stream().limit(1).toList())
            said.add(desk.first(
                    Word.IF_EXTRA, extra.batch(), extra.station(), desk.dates().timeFrom(extra.start(), day.date())));
        for (IfCard.Drop drop : row.help().drops().stream().limit(1).toList())
            said.add(desk.first(Word.IF_MAY_LEAVE_OUT, drop.batch(), drop.packsShort(), drop.lateMinutes()));
        return String.join("; ", closeness == Closeness.LINES ? said.subList(0, Math.min(1, said.size())) : said);
    }

    /** What stands in, in short: only how many packs and whence. */
    String whence(IfCard.Help help) {
        Map<String, Integer> packs = new LinkedHashMap<>();
        help.standIns().forEach(one -> packs.merge(whence(one), one.packs(), Integer::sum));
        return most(packs.entrySet().stream()
                .sorted(Map.Entry.<String, Integer>comparingByValue().reversed())
                .map(one -> one.getValue() + TIMES + one.getKey())
                .toList());
    }

    boolean isClosest() {
        return closeness == Closeness.LINES;
    }

    private String most(List<String> all) {
        return most(all, closeness.most);
    }

    private String most(List<String> all, int most) {
        String some = String.join(", ", all.subList(0, Math.min(most, all.size())));
        return all.size() <= most ? some : desk.first(Word.IF_AND_MORE, some, all.size() - most);
    }

    private Lettering letters() {
        return Lettering.plain(closeness.points);
    }

    private Cell.Phrase plain(String said) {
        return Cell.Phrase.plain(closeness.points, said);
    }

    private Cell.Phrase bold(String said) {
        return Cell.Phrase.bold(closeness.points, said);
    }
}

package dawnkettle.night;

import dawnkettle.book.BookLine;
import dawnkettle.book.ClosedBook;
import dawnkettle.book.OrderLine;
import dawnkettle.sheet.Fallback;
import dawnkettle.sheet.FallbackSheet;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Puts into the tray what is made when no plan comes: the same weekday of last week, and the standing orders. */
final class PrintFallback implements Work {
    private final Office office;
    private final SheetEffects effects;

    PrintFallback(Office office, SheetEffects effects) {
        this.office = office;
        this.effects = effects;
    }

    @Override
    public String run(LocalDate productionDate) {
        LocalDate lastWeek = productionDate.minusWeeks(1);
        Map<String, int[]> packs = new TreeMap<>();
        office.ledger()
                .closes()
                .find(lastWeek)
                .map(ClosedBook::lines)
                .orElse(List.of())
                .forEach(line -> count(packs, line)[0] += line.packs());
        office.book().bookFor(productionDate).stream()
                .filter(line -> line.source() == OrderLine.Source.STANDING)
                .forEach(line -> count(packs, line)[1] += line.packs());
        List<Fallback.Line> lines = packs.entrySet().stream()
                .map(entry -> line(entry.getKey().split(" "), entry.getValue()))
                .toList();
        Fallback fallback = new Fallback(productionDate, lastWeek, office.now(), lines);
        effects.print(
                "fallback " + productionDate,
                productionDate,
                List.of(FallbackSheet.of(
                        fallback, office.shop(), office.edges().paper().style())));
        return "the fallback sheet " + FallbackSheet.number(productionDate) + " lies in the tray";
    }

    private static int[] count(Map<String, int[]> packs, BookLine line) {
        return packs.computeIfAbsent(line.route() + " " + line.customer() + " " + line.product(), key -> new int[2]);
    }

    private static Fallback.Line line(String[] key, int[] packs) {
        return new Fallback.Line(key[0], key[1], key[2], packs[0], packs[1]);
    }
}

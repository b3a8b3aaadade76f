package dawnkettle.sheet;

import dawnkettle.measure.Mass;
import dawnkettle.plan.DayPlan;
import dawnkettle.shop.Shop;
import dawnkettle.stock.BeanLot;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Each sheet that there is, of one sample day. */
final class EverySheet {
    private EverySheet() {}

    /** All sheets of a day of {@code batches}. */
    static List<Sheet> of(Shop shop, int batches, Typeface typeface) {
        SheetStyle style = SheetStyle.of(shop.house(), typeface);
        DayPlan plan = SampleDay.of(shop, batches);
        List<Sheet> sheets = new ArrayList<>(SheetSet.of(plan, shop, style));
        sheets.add(FallbackSheet.of(SampleDay.fallback(shop), shop, style));
        sheets.add(OrdersOnlySheet.of(SampleDay.ordered(shop), shop, style));
        List<BeanLot> bought = List.of(new BeanLot("SB-1187", "BEAN", Mass.kilograms(400), SampleDay.DATE));
        sheets.add(CountSheet.of(
                new CountSheet.Stocktake(SampleDay.DATE, SampleDay.PLANNED_AT, plan.stock(), bought), shop, style));
        sheets.add(SoakSheet.of(SampleDay.soakCall(plan), shop, style));
        sheets.addAll(SheetSet.records(plan, shop, style));
        sheets.add(IfSheet.of(SampleCard.of(shop, plan, 4), plan, shop, style));
        sheets.add(SampleReports.costs(shop, style));
        sheets.add(SampleReports.trace(shop, plan, style));
        return sheets;
    }

    /** The first of each kind, and each group of stations. */
    static List<Sheet> oneOfEachKind(List<Sheet> sheets) {
        Set<String> seen = new HashSet<>();
        return sheets.stream()
                .filter(sheet -> seen.add(sheet.name().replaceFirst("^(route|delivery|record|trace)-.*", "$1")))
                .toList();
    }
}

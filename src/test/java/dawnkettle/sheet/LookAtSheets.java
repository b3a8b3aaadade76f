package dawnkettle.sheet;

import dawnkettle.draw.PdfSheets;
import dawnkettle.draw.PdfTypeface;
import dawnkettle.measure.Mass;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.Heading;
import dawnkettle.shop.House;
import dawnkettle.shop.Shop;
import dawnkettle.stock.BeanLot;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;

/** Writes the sheets of sample days as PDF below {@code target/look}, to be looked at by a person. */
final class LookAtSheets {
    private LookAtSheets() {}

    public static void main(String[] args) throws IOException {
        Shop small = SampleDay.shop();
        write("metric-20", small, SampleDay.of(small, 20), PaperSize.A4);
        write("letter-40", small, SampleDay.of(small, 40), PaperSize.LETTER);
        Shop large = SampleShop.of(House.Units.US_CUSTOMARY, 40, 150);
        Heading revised = SampleDay.heading(2, OptionalInt.of(1), Heading.Mode.NO_SEARCH);
        write("us-45", large, SampleDay.of(large, 45, revised), PaperSize.LETTER);
        write("us-120", large, SampleDay.of(large, 120), PaperSize.A4);
        write("metric-3", small, SampleDay.of(small, 3), PaperSize.A4);
        SheetSettings two = new SheetSettings(List.of("en", "vi"), Map.of("NIGARI", Mass.grams(250)));
        SheetStyle both = new SheetStyle(PaperSize.A4, House.Units.METRIC, two, PdfTypeface.notoSans());
        Heading second = SampleDay.heading(2, OptionalInt.of(1), Heading.Mode.FULL);
        DayPlan revision = SampleDay.of(small, 19, second);
        write("two-languages", small, revision, both, SheetSet.of(revision, SampleDay.of(small, 20), small, both));
    }

    private static void write(String name, Shop shop, DayPlan plan, PaperSize paper) throws IOException {
        SheetStyle style = new SheetStyle(paper, shop.house().units(), SheetSettings.in("en"), PdfTypeface.notoSans());
        write(name, shop, plan, style, SheetSet.of(plan, shop, style));
    }

    private static void write(String name, Shop shop, DayPlan plan, SheetStyle style, List<Sheet> planned)
            throws IOException {
        PdfTypeface typeface = PdfTypeface.notoSans();
        List<Sheet> sheets = new ArrayList<>(planned);
        sheets.add(Sheet.together("records", SheetSet.records(plan, shop, style)));
        sheets.add(FallbackSheet.of(SampleDay.fallback(shop), shop, style));
        sheets.add(OrdersOnlySheet.of(SampleDay.ordered(shop), shop, style));
        List<BeanLot> bought = List.of(new BeanLot("SB-1187", "BEAN", Mass.kilograms(400), SampleDay.DATE));
        sheets.add(CountSheet.of(
                new CountSheet.Stocktake(SampleDay.DATE, SampleDay.PLANNED_AT, plan.stock(), bought), shop, style));
        sheets.add(SoakSheet.of(SampleDay.soakCall(plan), shop, style));
        Path folder = Path.of("target/look", name);
        Files.createDirectories(folder);
        for (Sheet sheet : sheets)
            Files.write(folder.resolve(sheet.name() + ".pdf"), new PdfSheets(typeface).draw(sheet));
    }
}

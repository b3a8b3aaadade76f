package dawnkettle.sheet;

import dawnkettle.draw.PdfSheets;
import dawnkettle.draw.PdfTypeface;
import dawnkettle.shop.Shop;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class SheetSetTest {
    private static final PdfTypeface TYPEFACE = PdfTypeface.notoSans();

    @Test
    void look() throws IOException {
        Shop shop = SampleDay.shop();
        Path folder = Path.of("target/look");
        Files.createDirectories(folder);
        for (Sheet sheet : SheetSet.of(SampleDay.of(shop, 20), shop, SheetStyle.of(shop.house(), TYPEFACE)))
            Files.write(folder.resolve(sheet.name() + ".pdf"), new PdfSheets(TYPEFACE).draw(sheet));
    }
}

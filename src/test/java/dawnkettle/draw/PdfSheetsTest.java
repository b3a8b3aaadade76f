package dawnkettle.draw;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.sheet.Imprint;
import dawnkettle.sheet.Lettering;
import dawnkettle.sheet.Mark;
import dawnkettle.sheet.Page;
import dawnkettle.sheet.PaperSize;
import dawnkettle.sheet.Sheet;
import java.io.IOException;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.TimeZone;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;

class PdfSheetsTest {
    private static final PdfTypeface TYPEFACE = PdfTypeface.notoSans();
    private static final PdfSheets DRAWING = new PdfSheets(TYPEFACE);

    private static Sheet sheet(String... texts) {
        List<Mark> body = new java.util.ArrayList<>();
        for (int i = 0; i < texts.length; i++) body.add(new Mark.Text(20, 30 + 10 * i, Lettering.plain(12), texts[i]));
        body.add(new Mark.Text(20, 20, Lettering.bold(20), "Soak sheet"));
        body.add(new Mark.Box(20, 200, 50, 40, Mark.Look.BLACK));
        body.add(new Mark.Rule(20, 250, 190, 250, 1));
        Page page = new Page(List.of(), body, List.of(new Page.Bookmark("First tub", 20)));
        Imprint imprint = new Imprint(
                "Soak sheet, Friday 4 December 2026", "en-US", PaperSize.A4, Instant.parse("2026-12-03T20:00:00Z"));
        return new Sheet(Sheet.Kind.SOAK, "soak", imprint, List.of(page, page));
    }

    private static String textOf(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return new PDFTextStripper().getText(document);
        }
    }

    @Test
    void the_same_sheet_gives_the_same_bytes() {
        assertThat(DRAWING.draw(sheet("kg"))).isEqualTo(DRAWING.draw(sheet("kg")));
        assertThat(new PdfSheets(PdfTypeface.notoSans()).draw(sheet("kg"))).isEqualTo(DRAWING.draw(sheet("kg")));
    }

    @Test
    void another_locale_and_zone_of_the_machine_change_nothing() {
        byte[] here = DRAWING.draw(sheet("12.5 kg"));
        Locale locale = Locale.getDefault();
        TimeZone zone = TimeZone.getDefault();
        try {
            Locale.setDefault(Locale.GERMANY);
            TimeZone.setDefault(TimeZone.getTimeZone("Asia/Tokyo"));
            assertThat(new PdfSheets(PdfTypeface.notoSans()).draw(sheet("12.5 kg")))
                    .isEqualTo(here);
        } finally {
            Locale.setDefault(locale);
            TimeZone.setDefault(zone);
        }
    }

    @Test
    void text_can_be_copied_out_again_ligatures_and_accents_too() throws IOException {
        String text = "efficient fluffy office, Café Über, 5 °C, Phở Việt";
        assertThat(textOf(DRAWING.draw(sheet(text)))).contains(text).contains("Soak sheet");
    }

    @Test
    void a_character_that_the_typeface_lacks_is_shown_as_missing_and_harms_no_other() throws IOException {
        assertThat(TYPEFACE.shows("Tofu")).isTrue();
        assertThat(TYPEFACE.shows("豆腐 tofu")).isFalse();
        assertThat(textOf(DRAWING.draw(sheet("豆腐 tofu\t25 kg")))).contains("\uFFFD\uFFFD tofu 25 kg");
    }

    @Test
    void title_language_date_and_bookmarks_are_the_sheets_own() throws IOException {
        try (PDDocument document = Loader.loadPDF(DRAWING.draw(sheet("kg")))) {
            assertThat(document.getDocumentInformation().getTitle()).isEqualTo("Soak sheet, Friday 4 December 2026");
            assertThat(document.getDocumentInformation().getCreationDate().toInstant())
                    .isEqualTo(Instant.parse("2026-12-03T20:00:00Z"));
            assertThat(document.getDocumentCatalog().getLanguage()).isEqualTo("en-US");
            assertThat(document.getDocumentCatalog()
                            .getDocumentOutline()
                            .getFirstChild()
                            .getTitle())
                    .isEqualTo("First tub");
            assertThat(document.getNumberOfPages()).isEqualTo(2);
            // ISO 216: A4 is 210 by 297 mm; a PDF's unit is 1/72 inch (ISO 32000).
            assertThat(document.getPage(0).getMediaBox().getWidth()).isEqualTo((float) (210 / 25.4 * 72));
        }
    }

    @Test
    void typefaces_are_embedded_as_far_as_they_are_used() throws IOException {
        byte[] pdf = DRAWING.draw(sheet("kg"));
        try (PDDocument document = Loader.loadPDF(pdf)) {
            for (PDPage page : document.getPages())
                for (var name : page.getResources().getFontNames()) {
                    PDFont font = page.getResources().getFont(name);
                    assertThat(font.isEmbedded()).isTrue();
                    // ISO 32000-1, 9.6.4: a subset's name begins with six capitals and a plus sign.
                    assertThat(font.getName()).matches("[A-Z]{6}\\+NotoSans-(Regular|Bold)");
                }
        }
        assertThat(pdf).hasSizeLessThan(30_000);
    }

    @Test
    void letters_are_as_wide_on_paper_as_they_were_laid_out() throws IOException {
        try (PDDocument document = Loader.loadPDF(DRAWING.draw(sheet("16:10 Wavy fill")))) {
            for (var name : document.getPage(0).getResources().getFontNames()) {
                PDFont font = document.getPage(0).getResources().getFont(name);
                if (!font.getName().endsWith("Regular")) continue;
                double drawn = font.getStringWidth("16:10 Wavy fill") / 1000 * 12 * Lettering.MM_A_POINT;
                // Widths in a PDF are whole thousandths of the size.
                assertThat(TYPEFACE.widthMm("16:10 Wavy fill", Lettering.plain(12)))
                        .isCloseTo(drawn, org.assertj.core.data.Offset.offset(0.05));
            }
        }
    }

    @Test
    void marks_stand_where_the_sheet_says() throws IOException {
        try (PDDocument document = Loader.loadPDF(DRAWING.draw(sheet("kg")))) {
            // 254 dots an inch are ten a millimetre.
            var picture = new PDFRenderer(document).renderImageWithDPI(0, 254, ImageType.GRAY);
            assertThat(picture.getRGB(450, 2200) & 0xFF).as("in the box").isLessThan(10);
            assertThat(picture.getRGB(190, 2200) & 0xFF).as("left of it").isGreaterThan(245);
            assertThat(picture.getRGB(450, 1990) & 0xFF).as("above it").isGreaterThan(245);
            assertThat(picture.getRGB(1000, 2500) & 0xFF).as("on the rule").isLessThan(10);
        }
    }
}

package dawnkettle.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.Golden;
import dawnkettle.GoldenPicture;
import dawnkettle.draw.PdfSheets;
import dawnkettle.draw.PdfTypeface;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TimeZone;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.preflight.PreflightDocument;
import org.apache.pdfbox.preflight.ValidationResult;
import org.apache.pdfbox.preflight.parser.PreflightParser;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Every sheet of a sample day as a document: as it looks, as it reads, and as it is kept. */
class DrawnSheetsTest {
    /** Enough to see what stands where; the words are compared as words. */
    private static final int DOTS_AN_INCH = 50;

    private static final List<Sheet> SHEETS = EverySheet.of(SampleDay.shop(), 5, PdfTypeface.notoSans());
    private static final Map<String, byte[]> DRAWN = drawn(SHEETS, PdfTypeface.notoSans());

    private static Map<String, byte[]> drawn(List<Sheet> sheets, PdfTypeface typeface) {
        PdfSheets drawing = new PdfSheets(typeface);
        Map<String, byte[]> drawn = new LinkedHashMap<>();
        for (Sheet sheet : sheets) drawn.put(sheet.name(), drawing.draw(sheet));
        return drawn;
    }

    @Test
    void the_first_page_of_each_kind_looks_as_it_was_once_accepted() throws IOException {
        for (Sheet sheet : EverySheet.oneOfEachKind(SHEETS))
            try (PDDocument document = Loader.loadPDF(DRAWN.get(sheet.name()))) {
                GoldenPicture.check(
                        "sheet/" + sheet.name() + ".png",
                        new PDFRenderer(document).renderImageWithDPI(0, DOTS_AN_INCH, ImageType.GRAY));
            }
    }

    @Test
    void each_kind_reads_as_it_was_once_accepted() throws IOException {
        for (Sheet sheet : EverySheet.oneOfEachKind(SHEETS))
            try (PDDocument document = Loader.loadPDF(DRAWN.get(sheet.name()))) {
                PDFTextStripper stripper = new PDFTextStripper();
                stripper.setLineSeparator("\n");
                stripper.setPageEnd("\f\n");
                Golden.check("sheet/" + sheet.name() + ".read.txt", stripper.getText(document));
            }
    }

    @ParameterizedTest
    @CsvSource({"de-DE, America/New_York", "ja-JP, Asia/Kathmandu", "ar-EG, Pacific/Chatham"})
    void wherever_the_machine_stands_and_whatever_it_speaks_the_bytes_are_the_same(String tongue, String zone) {
        Locale locale = Locale.getDefault();
        TimeZone before = TimeZone.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag(tongue));
            TimeZone.setDefault(TimeZone.getTimeZone(zone));
            PdfTypeface typeface = PdfTypeface.notoSans();
            Map<String, byte[]> there = drawn(EverySheet.of(SampleDay.shop(), 5, typeface), typeface);
            assertThat(there.keySet()).isEqualTo(DRAWN.keySet());
            there.forEach((name, bytes) -> assertThat(bytes).as(name).isEqualTo(DRAWN.get(name)));
        } finally {
            Locale.setDefault(locale);
            TimeZone.setDefault(before);
        }
    }

    /** PDF/A-1b (ISO 19005-1), as an open checker sees it. */
    @Test
    void every_sheet_can_be_kept_for_years() throws IOException {
        for (Map.Entry<String, byte[]> drawn : DRAWN.entrySet())
            assertThat(complaints(drawn.getValue())).as(drawn.getKey()).isEmpty();
    }

    static List<String> complaints(byte[] pdf) throws IOException {
        try (PreflightDocument document =
                (PreflightDocument) new PreflightParser(new RandomAccessReadBuffer(pdf)).parse()) {
            ValidationResult result = document.validate();
            return result.getErrorsList().stream()
                    .map(error -> error.getErrorCode() + " " + error.getDetails())
                    .toList();
        }
    }

    @Test
    void a_page_is_small() {
        int pages = SHEETS.stream().mapToInt(sheet -> sheet.pages().size()).sum();
        int bytes = DRAWN.values().stream().mapToInt(pdf -> pdf.length).sum();
        // The typeface, as far as it is used, is most of it.
        assertThat(bytes / pages).isLessThan(16_000);
    }
}

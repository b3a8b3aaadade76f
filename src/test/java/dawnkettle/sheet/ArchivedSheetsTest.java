package dawnkettle.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.draw.PdfSheets;
import dawnkettle.draw.PdfTypeface;
import java.io.IOException;
import java.util.List;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.preflight.PreflightDocument;
import org.apache.pdfbox.preflight.ValidationResult;
import org.apache.pdfbox.preflight.parser.PreflightParser;
import org.junit.jupiter.api.Test;

/** A sheet is kept for years: PDF/A-1b (ISO 19005-1), as an open checker sees it. */
class ArchivedSheetsTest {
    private static List<String> complaints(byte[] pdf) throws IOException {
        try (PreflightDocument document =
                (PreflightDocument) new PreflightParser(new RandomAccessReadBuffer(pdf)).parse()) {
            ValidationResult result = document.validate();
            return result.getErrorsList().stream()
                    .map(error -> error.getErrorCode() + " " + error.getDetails())
                    .toList();
        }
    }

    @Test
    void every_sheet_is_pdf_a_1b() throws IOException {
        PdfTypeface typeface = PdfTypeface.notoSans();
        PdfSheets drawing = new PdfSheets(typeface);
        for (Sheet sheet : EverySheet.of(SampleDay.shop(), 5, typeface)) {
            byte[] pdf = drawing.draw(sheet);
            System.err.println(sheet.name() + " " + sheet.pages().size() + " " + pdf.length);
            assertThat(complaints(pdf)).as(sheet.name()).isEmpty();
        }
    }
}

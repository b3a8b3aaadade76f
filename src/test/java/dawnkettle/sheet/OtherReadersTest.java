package dawnkettle.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import dawnkettle.draw.PdfSheets;
import dawnkettle.draw.PdfTypeface;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Programs that share no code with what drew the sheets. */
class OtherReadersTest {
    private static final int REPLACEMENT = 0xFFFD;
    private static final PdfTypeface TYPEFACE = PdfTypeface.notoSans();
    private static final List<Sheet> SHEETS = EverySheet.of(SampleDay.shop(), 5, TYPEFACE);

    @TempDir
    private Path folder;

    private Path file(Sheet sheet) throws IOException {
        return Files.write(folder.resolve(sheet.name() + ".pdf"), new PdfSheets(TYPEFACE).draw(sheet));
    }

    /** What it says of both streams; it must end well. */
    private static String run(String... words) throws IOException {
        Process process = new ProcessBuilder(words).redirectErrorStream(true).start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        try {
            assertThat(process.waitFor()).as(said).isZero();
        } catch (InterruptedException e) {
            throw new AssertionError(e);
        }
        return said;
    }

    private static void needs(String program) {
        assumeTrue(Files.isExecutable(Path.of("/usr/bin", program)), program + " is not installed");
    }

    @Test
    void qpdf_finds_nothing_to_complain_of() throws IOException {
        needs("qpdf");
        for (Sheet sheet : SHEETS)
            assertThat(run("qpdf", "--check", file(sheet).toString()))
                    .as(sheet.name())
                    .contains("No syntax or stream encoding errors found")
                    .doesNotContain("WARNING");
    }

    @Test
    void pdftotext_reads_every_word_in_the_order_in_which_the_sheet_says_them() throws IOException {
        needs("pdftotext");
        for (Sheet sheet : SHEETS)
            assertThat(squeezed(run(
                            "pdftotext", "-raw", "-enc", "UTF-8", file(sheet).toString(), "-")))
                    .as(sheet.name())
                    .isEqualTo(squeezed(said(sheet)));
    }

    private static String said(Sheet sheet) {
        return sheet.pages().stream()
                .flatMap(page -> page.marks().stream())
                .filter(Mark.Text.class::isInstance)
                .map(mark -> shown(((Mark.Text) mark).string()))
                .collect(Collectors.joining(" "));
    }

    /** A character that no typeface has is shown as one that says so. */
    private static String shown(String text) {
        StringBuilder shown = new StringBuilder();
        text.codePoints()
                .forEach(one -> shown.appendCodePoint(TYPEFACE.shows(Character.toString(one)) ? one : REPLACEMENT));
        return shown.toString();
    }

    /** Where it sees a gap, and that it takes a hyphen at a line's end away, is the reader's own. */
    private static String squeezed(String text) {
        return text.replaceAll("[\\s\\p{Z}-]+", "");
    }
}

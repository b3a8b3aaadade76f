package dawnkettle.draw;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import dawnkettle.sheet.Imprint;
import dawnkettle.sheet.Lettering;
import dawnkettle.sheet.Mark;
import dawnkettle.sheet.Page;
import dawnkettle.sheet.PaperSize;
import dawnkettle.sheet.Sheet;
import dawnkettle.trouble.BadFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.Normalizer;
import java.time.Instant;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.preflight.PreflightDocument;
import org.apache.pdfbox.preflight.parser.PreflightParser;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Names in any script: our own typeface first, then what the shop named, character by character. */
class StandInTypefacesTest {
    /** Debian packages fonts-droid-fallback (one typeface) and fonts-wqy-zenhei (a collection). */
    private static final String DROID = "/usr/share/fonts/truetype/droid/DroidSansFallbackFull.ttf";

    private static final String ZENHEI = "/usr/share/fonts/truetype/wqy/wqy-zenhei.ttc";

    private static final String TOFU = "木綿豆腐 もめんどうふ キヌ, 嫩豆腐 豆浆 300 g, Đậu phụ non";

    @TempDir
    private Path folder;

    private static TypefaceFile installed(String file) {
        assumeTrue(Files.exists(Path.of(file)), file + " is not installed");
        return TypefaceFile.read(Path.of(file));
    }

    private static Sheet sheet(String text) {
        List<Mark> marks = List.of(
                new Mark.Text(20, 30, Lettering.plain(12), text),
                new Mark.Text(190, 50, Lettering.bold(14).aligned(Lettering.Align.RIGHT), text));
        Imprint imprint = new Imprint("豆腐", "ja", PaperSize.A4, Instant.parse("2026-12-03T20:00:00Z"));
        return new Sheet(Sheet.Kind.PICK, "pick", imprint, List.of(new Page(List.of(), marks, List.of())));
    }

    /** Alphabets from the standard orthographies (from memory); Vietnamese has 12 vowels, 5 tone marks, and đ. */
    @Test
    void our_own_typeface_has_every_letter_of_english_spanish_portuguese_and_vietnamese() {
        PdfTypeface ours = PdfTypeface.notoSans();
        StringBuilder letters = new StringBuilder("đĐ áéíóúüñ ÁÉÍÓÚÜÑ ¿¡ªº ãõâêôçà ÃÕÂÊÔÇÀ “”‘’–—…·×÷±½¼¾°€£¥₫");
        for (char c = 'A'; c <= 'Z'; c++) letters.append(c).append(Character.toLowerCase(c));
        for (String vowel : "a ă â e ê i o ô ơ u ư y".split(" "))
            for (String tone : "\u0300 \u0301 \u0303 \u0309 \u0323".split(" "))
                letters.append(vowel + tone).append((vowel + tone).toUpperCase(java.util.Locale.ROOT));
        String whole = Normalizer.normalize(letters, Normalizer.Form.NFC);
        assertThat(whole.codePoints().filter(c -> Character.getType(c) == Character.NON_SPACING_MARK))
                .isEmpty();
        assertThat(ours.lacking(whole)).isEmpty();
    }

    @Test
    void a_letter_and_its_accent_are_set_as_one() {
        PdfTypeface ours = PdfTypeface.notoSans();
        String apart = Normalizer.normalize("Đậu phụ trắng ướp sả", Normalizer.Form.NFD);
        assertThat(ours.widthMm(apart, Lettering.plain(12)))
                .isEqualTo(ours.widthMm("Đậu phụ trắng ướp sả", Lettering.plain(12)));
    }

    @ParameterizedTest
    @ValueSource(strings = {DROID, ZENHEI})
    void japanese_and_chinese_names_are_drawn_read_again_and_kept(String file) throws IOException {
        PdfTypeface typeface = new PdfTypeface(List.of(installed(file)));
        assertThat(typeface.shows(TOFU)).isTrue();
        byte[] pdf = new PdfSheets(typeface).draw(sheet(TOFU));
        assertThat(pdf).hasSizeLessThan(60_000).isEqualTo(new PdfSheets(typeface).draw(sheet(TOFU)));
        try (PDDocument document = Loader.loadPDF(pdf)) {
            assertThat(new PDFTextStripper().getText(document)).containsSubsequence(TOFU, TOFU);
        }
        try (PreflightDocument kept =
                (PreflightDocument) new PreflightParser(new RandomAccessReadBuffer(pdf)).parse()) {
            assertThat(kept.validate().getErrorsList())
                    .extracting(error -> error.getErrorCode() + " " + error.getDetails())
                    .isEmpty();
        }
    }

    @Test
    void han_characters_are_as_wide_as_they_are_high_and_ours_as_before() {
        PdfTypeface typeface = new PdfTypeface(List.of(installed(DROID)));
        // A CJK typeface's ideographs fill the em: 12 points are 4.2333 mm.
        assertThat(typeface.widthMm("豆腐", Lettering.plain(12)))
                .isCloseTo(2 * 12 * Lettering.MM_A_POINT, org.assertj.core.data.Offset.offset(0.01));
        assertThat(typeface.widthMm("Tofu 300 g", Lettering.plain(12)))
                .isEqualTo(PdfTypeface.notoSans().widthMm("Tofu 300 g", Lettering.plain(12)));
    }

    @Test
    void labels_have_the_same_typefaces() {
        assertThat(LabelTypefaces.ours().objection("木綿豆腐")).hasValue("no typeface has \"木\"");
        assertThat(new LabelTypefaces(List.of(installed(DROID))).objection("木綿豆腐"))
                .isEmpty();
    }

    @Test
    void what_no_typeface_has_is_named() {
        assertThat(PdfTypeface.notoSans().lacking("Tofu 豆腐")).hasValue("豆");
        assertThat(PdfTypeface.notoSans().lacking("Tofu\t300 g")).isEmpty();
    }

    @Test
    void a_file_that_is_no_typeface_says_so() throws IOException {
        Path file = Files.writeString(folder.resolve("letters.ttf"), "letters");
        assertThatThrownBy(() -> TypefaceFile.read(file))
                .isInstanceOf(BadFile.class)
                .hasMessageContaining("shop.toml: typeface \"" + file + "\" cannot be read as a TrueType typeface;"
                        + " name a .ttf or .ttc file with TrueType outlines under files of [typefaces],"
                        + " as that of the package fonts-droid-fallback");
    }
}

package dawnkettle.draw;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.label.CaseLabel;
import dawnkettle.label.Design;
import dawnkettle.label.Element;
import dawnkettle.label.ElementString;
import dawnkettle.label.LabelText;
import dawnkettle.label.Pitch;
import dawnkettle.trouble.Problem;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LabelDesignsTest {
    private static final Pitch EIGHT = new Pitch(8_000);
    private static final ElementString SAMPLE = ElementString.of(
            Element.gtin("09501101530003"), Element.bestBefore(LocalDate.of(2027, 1, 31)), Element.lot("AB-123"));

    private static String slip(String inside) {
        return """
                <svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="50mm" viewBox="0 0 100 50" data-role="slip">
                <text x="2" y="8" font-size="4" data-width="90">{heading} {lot} {product}</text>
                %s
                </svg>
                """.formatted(inside);
    }

    private static List<String> problems(String svg) {
        List<Problem> problems = new ArrayList<>();
        LabelDesigns.read("try", svg, problems);
        return problems.stream().sorted().map(Problem::toString).toList();
    }

    private static Design design(String inside) {
        List<Problem> problems = new ArrayList<>();
        Optional<Design> design = LabelDesigns.read("try", slip(inside), problems);
        assertThat(problems).isEmpty();
        return design.orElseThrow();
    }

    private static List<String> refused(String inside, LabelText text) {
        return new DotDrawing(LabelTypefaces.ours(), EIGHT, 1_588)
                .check(design(inside), text).stream().map(Problem::toString).toList();
    }

    private static LabelText text(String heading, ElementString elements) {
        return new LabelText(Map.of("heading", heading, "lot", "1", "product", "2"), Optional.ofNullable(elements));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "<!DOCTYPE svg [<!ENTITY x SYSTEM \"file:///etc/hostname\">]>",
                "<!DOCTYPE svg SYSTEM \"http://quillhaven.example/a.dtd\">",
                "<!DOCTYPE svg [<!ENTITY a \"aaaa\"><!ENTITY b \"&a;&a;&a;&a;\">]>"
            })
    void document_types_are_refused_and_nothing_outside_is_read(String doctype) {
        assertThat(problems(doctype + "\n" + slip(""))).anyMatch(problem -> problem.contains("document type"));
    }

    @Test
    void an_entity_is_refused() {
        assertThat(problems(slip("<text x=\"2\" y=\"20\" font-size=\"4\" data-width=\"90\">&x;</text>")))
                .anyMatch(problem -> problem.startsWith("labels/try.svg:3:") && problem.contains("not well-formed"));
    }

    @Test
    void what_is_not_of_the_subset_is_named_with_its_place() {
        assertThat(problems(slip("<script>alert(1)</script>\n<image href=\"http://quillhaven.example/x.png\"/>")))
                .containsExactly(
                        "labels/try.svg:3:9: element \"script\" is not used in label designs; use rect, text and g",
                        "labels/try.svg:4:48: element \"image\" is not used in label designs; use rect, text and g");
        assertThat(problems(slip("<g transform=\"scale(2)\"></g>")))
                .containsExactly(
                        "labels/try.svg:3:25: attribute \"transform\" is not used here; leave it out; known are id");
    }

    @Test
    void unknown_and_missing_fields_are_named() {
        assertThat(problems(slip("<text x=\"2\" y=\"20\" font-size=\"4\" data-width=\"90\">{price}</text>")))
                .containsExactly(
                        "labels/try.svg:3: field \"{price}\" is not known; known are heading, line1, line2, line3,"
                                + " lot, product");
        assertThat(
                        problems(
                                "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"100mm\" height=\"50mm\" viewBox=\"0 0 100 50\" data-role=\"slip\"/>"))
                .containsExactly(
                        "labels/try.svg: field \"{heading}\" is missing; add a text that shows it",
                        "labels/try.svg: field \"{lot}\" is missing; add a text that shows it",
                        "labels/try.svg: field \"{product}\" is missing; add a text that shows it");
    }

    @Test
    void the_margin_and_neighbours_are_kept_clear() {
        assertThat(problems(slip("<rect x=\"1\" y=\"20\" width=\"5\" height=\"5\" fill=\"black\"/>")))
                .containsExactly(
                        "labels/try.svg:3: \"rect\" is less than 1.5 mm from the edge; move it in; stock shifts a"
                                + " little under the head");
        assertThat(problems(
                        slip("<rect id=\"all\" class=\"gs1-datamatrix\" x=\"2\" y=\"7\" width=\"20\" height=\"20\"/>")))
                .containsExactly("labels/try.svg:3: \"all\" overlaps \"{heading} {lot} {product}\"; move one of them");
    }

    @Test
    void a_unit_other_than_the_millimetre_is_refused() {
        assertThat(problems(slip("").replace("0 0 100 50", "0 0 1000 500")))
                .containsExactly(
                        "labels/try.svg:1:109: viewBox \"0 0 1000 500\" is not the size in millimetres; write \"0 0"
                                + " 100 50\"");
        assertThat(problems(slip("").replace("\"100mm\"", "\"4in\"")))
                .anyMatch(p -> p.contains("width \"4in\" is not a length"));
    }

    @Test
    void modules_that_do_not_scan_are_refused() {
        assertThat(
                        problems(
                                slip(
                                        "<rect class=\"gs1-128\" data-module=\"0.25-0.5\" x=\"2\" y=\"12\" width=\"90\" height=\"36\"/>")))
                .anyMatch(p ->
                        p.endsWith("data-module \"0.25-0.5\" is not a range that scans; write one within 0.495-1.016"));
    }

    // By arithmetic: 286 modules of 4 dots are 143 mm; 31.75 mm of bars (from memory) and 4 mm of text are 35.8.
    @Test
    void a_symbol_that_does_not_fit_is_refused_with_its_millimetres() {
        assertThat(refused("<rect class=\"gs1-128\" x=\"2\" y=\"12\" width=\"96\" height=\"36\"/>", text("", SAMPLE)))
                .containsExactly(
                        "labels/try.svg:3: gs1-128 symbol \"(01)09501101530003(15)270131(10)AB-123\" needs 143.0 by"
                                + " 35.8 mm and has 96.0 by 36.0 mm; give its box more room, or carry fewer identifiers in it");
        assertThat(refused(
                        "<rect class=\"gs1-datamatrix\" x=\"2\" y=\"12\" width=\"15\" height=\"15\"/>",
                        text("", SAMPLE)))
                .containsExactly(
                        "labels/try.svg:3: gs1-datamatrix symbol \"(01)09501101530003(15)270131(10)AB-123\" needs"
                                + " 16.5 by 16.5 mm and has 15.0 by 15.0 mm; give its box more room, or carry fewer identifiers in"
                                + " it");
    }

    // R18 5.4.4.3: 165.10 mm and 48 characters at most; 341 modules of 0.5 mm are 170.5 mm (by arithmetic).
    @Test
    void a_symbol_beyond_the_standard_is_refused() {
        ElementString long1 = ElementString.read("(01)09501101530003(3102)001250(15)270131(10)AB-123");
        assertThat(refused("<rect class=\"gs1-128\" x=\"2\" y=\"12\" width=\"96\" height=\"36\"/>", text("", long1)))
                .singleElement()
                .asString()
                .contains("needs 170.5 mm, and 165.1 is the most");
        ElementString long2 = ElementString.of(
                Element.gtin("09501101530003"), Element.lot("A".repeat(20)), Element.serial("B".repeat(20)));
        assertThat(refused("<rect class=\"gs1-128\" x=\"2\" y=\"12\" width=\"96\" height=\"36\"/>", text("", long2)))
                .singleElement()
                .asString()
                .contains("has 61 characters, and 48 is the most");
    }

    @Test
    void text_that_does_not_fit_is_refused_with_its_millimetres() {
        assertThat(refused(
                        "<text x=\"2\" y=\"20\" font-size=\"4\" data-least=\"3\" data-width=\"20\">{line1}</text>",
                        new LabelText(
                                Map.of("heading", "", "lot", "1", "product", "2", "line1", "Quillhaven Quillhaven"),
                                Optional.empty())))
                .singleElement()
                .asString()
                .matches(
                        "labels/try.svg:3: \"Quillhaven Quillhaven\" needs [0-9.]+ by 3.2 mm at its least size and has 20.0"
                                + " by 4.2 mm; shorten it or give its box in the design more room");
    }

    @ParameterizedTest
    @ValueSource(strings = {"جبن الصويا", "टोफू", "เต้าหู้", "טופו", "தோஃபு"})
    void scripts_that_need_shaping_are_refused_by_name(String word) {
        assertThat(refused("<text x=\"2\" y=\"20\" font-size=\"4\" data-width=\"90\">Tofu</text>", text(word, null)))
                .singleElement()
                .asString()
                .containsPattern("is of the script (arabic|devanagari|thai|hebrew|tamil), which needs shaping");
    }

    @Test
    void a_character_that_no_typeface_has_is_named() {
        assertThat(refused("<text x=\"2\" y=\"20\" font-size=\"4\" data-width=\"90\">Tofu</text>", text("豆腐", null)))
                .singleElement()
                .asString()
                .contains("no typeface has \"豆\"");
    }

    @Test
    void letters_are_never_smaller_than_the_market_wants() {
        Design bucket = SampleLabels.designs().design("bucket-100x50");
        CaseLabel label = SampleLabels.label(12);
        for (Pitch pitch : Pitch.COMMON)
            for (var mark : new DotDrawing(LabelTypefaces.ours(), pitch, 1_588)
                    .lay(bucket, label.text())
                    .marks())
                if (mark instanceof dawnkettle.label.Mark.Text text)
                    assertThat(text.size() * LabelTypefaces.ours().xHeight())
                            .isGreaterThanOrEqualTo(pitch.dotsReaching(1_588) - 1e-9);
    }

    @Test
    void the_same_label_gives_the_same_file() {
        Design design = SampleLabels.designs().design("case-100x70");
        DotDrawing drawing = new DotDrawing(LabelTypefaces.ours(), EIGHT, 1_588);
        byte[] once = new DotPng().png(drawing.draw(design, SampleLabels.textFor(design)));
        byte[] again = new DotPng().png(drawing.draw(design, SampleLabels.textFor(design)));
        assertThat(once).isEqualTo(again);
    }

    @Test
    void accents_and_other_alphabets_are_set() {
        assertThat(refused(
                        "<text x=\"2\" y=\"20\" font-size=\"4\" data-width=\"90\">Tofu</text>",
                        text("Crème brûlée Åå Ελλάδα Київ", null)))
                .isEmpty();
    }

    @Test
    void every_design_that_comes_along_is_whole() throws Exception {
        List<Problem> problems = new ArrayList<>();
        int read = LabelDesigns.read(Path.of("labels"), problems).designs().size();
        assertThat(problems).isEmpty();
        try (var files = Files.list(Path.of("labels"))) {
            assertThat(read).isEqualTo((int)
                    files.filter(f -> f.toString().endsWith(".svg")).count());
        }
    }
}

package dawnkettle.draw;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.zxing.BarcodeFormat;
import dawnkettle.Golden;
import dawnkettle.label.Design;
import dawnkettle.label.DesignPart;
import dawnkettle.label.Dots;
import dawnkettle.label.ElementString;
import dawnkettle.label.Framing;
import dawnkettle.label.LabelText;
import dawnkettle.label.Pitch;
import dawnkettle.label.PrinterProfile;
import dawnkettle.label.ProfileReader;
import dawnkettle.label.SampleProfiles;
import dawnkettle.label.Symbology;
import dawnkettle.trouble.Problem;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Every design at every pitch over every profile: what comes back from the bytes is the preview, and it scans. */
class EveryLabelTest {
    /** 1/16 inch, the larger of the presets' rules on the height of a small x. */
    private static final int SIXTEENTH_INCH = 1_588;

    private static final LabelTypefaces TYPEFACES = LabelTypefaces.ours();
    private static final Map<String, Dots> PREVIEWS = new HashMap<>();

    static Stream<Arguments> designsAndPitches() {
        return SampleLabels.designs().designs().stream()
                .flatMap(design -> pitches().stream().map(pitch -> Arguments.of(design.name(), pitch)));
    }

    @ParameterizedTest
    @MethodSource("designsAndPitches")
    void the_bytes_of_every_profile_give_the_preview_back_dot_for_dot(String name, Pitch pitch) {
        Design design = SampleLabels.designs().design(name);
        Dots preview = preview(design, pitch);
        Dots fed = design.fed(preview);
        for (PrinterProfile profile : SampleProfiles.all()) {
            Framing framing = new Framing(SampleProfiles.at(profile, pitch));
            assertThat(framing.objection(fed)).isEmpty();
            ProfileReader reader = new ProfileReader(profile, framing.group(fed, 3), fed.width(), fed.height());
            List<ProfileReader.Printed> printed = reader.read();
            assertThat(printed.stream().mapToInt(ProfileReader.Printed::copies).sum())
                    .isEqualTo(3);
            for (ProfileReader.Printed one : printed) {
                Dots back = design.stock().turned() ? one.picture().turnedBack() : one.picture();
                assertThat(back).isEqualTo(preview);
            }
        }
    }

    @ParameterizedTest
    @MethodSource("designsAndPitches")
    void every_symbol_scans_as_what_was_meant(String name, Pitch pitch) throws Exception {
        Design design = SampleLabels.designs().design(name);
        LabelText text = SampleLabels.textFor(design);
        if (text.elements().isEmpty()) return;
        Dots preview = preview(design, pitch);
        assertThat(design.symbols()).isNotEmpty();
        for (DesignPart.Bars bars : design.symbols()) {
            ElementString carried = bars.carries().isEmpty()
                    ? text.elements().get()
                    : text.elements().get().only(bars.carries()).orElseThrow();
            Dots seen = around(preview, bars, pitch);
            BarcodeFormat format = bars.symbology().isLinear() ? BarcodeFormat.CODE_128 : BarcodeFormat.DATA_MATRIX;
            String scan = SymbolEyes.read(seen, format);
            assertThat(scan).isEqualTo(carried.scanned(bars.symbology().scanHead()));
            assertThat(ElementString.readScanned(scan)).isEqualTo(carried);
        }
    }

    /** Only what stands in the symbol's own box, so that no neighbour lends it a quiet zone. */
    private static Dots around(Dots preview, DesignPart.Bars bars, Pitch pitch) {
        int x = pitch.dots(bars.area().x());
        int y = pitch.dots(bars.area().y());
        return preview.part(
                x,
                y,
                pitch.dots(bars.area().right()) - x,
                pitch.dots(bars.area().bottom()) - y);
    }

    @ParameterizedTest
    @MethodSource("designsAndPitches")
    void the_margin_stays_clear(String name, Pitch pitch) {
        Design design = SampleLabels.designs().design(name);
        Dots preview = preview(design, pitch);
        // A dot that the margin's edge falls on is not yet in the margin.
        int margin = pitch.dotsWithin(Design.MARGIN);
        for (int y = 0; y < preview.height(); y++)
            for (int x = 0; x < preview.width(); x++) {
                boolean isMargin =
                        x < margin || y < margin || x >= preview.width() - margin || y >= preview.height() - margin;
                if (isMargin && preview.isBlack(x, y))
                    throw new AssertionError(name + " at " + pitch + " inks its margin at " + x + "," + y);
            }
    }

    @Test
    void modules_are_as_wide_as_scanners_in_general_distribution_want() {
        for (Design design : SampleLabels.designs().designs())
            for (Pitch pitch : Pitch.COMMON)
                for (var mark :
                        drawing(pitch).lay(design, SampleLabels.textFor(design)).marks())
                    if (mark instanceof dawnkettle.label.Mark.Symbol symbol) {
                        Symbology kind = symbol.dots().width() == symbol.dots().height()
                                ? Symbology.GS1_DATAMATRIX
                                : Symbology.GS1_128;
                        assertThat(symbol.module() * 1_000_000.0 / pitch.dotsPerMetre())
                                .isBetween((double) kind.limits().leastModule(), (double)
                                        kind.limits().mostModule());
                    }
    }

    /** The common pitches, and one that is coarser than any: six dots a millimetre. */
    private static List<Pitch> pitches() {
        List<Pitch> pitches = new ArrayList<>(Pitch.COMMON);
        pitches.add(0, new Pitch(5_985));
        return pitches;
    }

    /** Every design over every profile on heads of 56, 80 and 104 mm at every pitch: who is refused, with the millimetres. */
    @Test
    void what_cannot_be_printed_is_refused_with_its_millimetres() throws Exception {
        List<String> lines = new ArrayList<>();
        for (Design design : SampleLabels.designs().designs())
            for (Pitch pitch : pitches()) {
                List<Problem> problems = drawing(pitch).check(design, SampleLabels.textFor(design));
                for (PrinterProfile profile : SampleProfiles.all())
                    for (int across : new int[] {56_000, 80_000, 104_000}) {
                        String row = design.name() + ", " + profile.name() + ", " + pitch + ", head " + across / 1000
                                + " mm: ";
                        PrinterProfile head =
                                profile.with(new PrinterProfile.Head(pitch, pitch.dots(across), pitch.dots(120_000)));
                        lines.add(row + (problems.isEmpty() ? said(design, pitch, head) : problems.get(0)));
                    }
            }
        for (Design design : SampleLabels.designs().designs()) lines.add("with too much to say: " + tooMuch(design));
        Golden.check("label/accepted-and-refused.txt", String.join("\n", lines) + "\n");
    }

    private static String said(Design design, Pitch pitch, PrinterProfile profile) {
        Dots fed = design.fed(preview(design, pitch));
        return new Framing(profile).objection(fed).map(why -> "refused, " + why).orElse("accepted");
    }

    private static Problem tooMuch(Design design) {
        LabelText text = SampleLabels.textFor(design);
        Map<String, String> fields = new HashMap<>(text.fields());
        fields.computeIfPresent("ingredients", (field, list) -> list + ", chives and sesame seeds".repeat(9));
        fields.computeIfPresent("heading", (field, heading) -> heading.repeat(4));
        List<Problem> problems = drawing(Pitch.COMMON.get(0)).check(design, new LabelText(fields, text.elements()));
        assertThat(problems).hasSize(1);
        return problems.get(0);
    }

    @Test
    void the_marks_of_every_design_are_those_that_were_looked_at() throws Exception {
        for (Design design : SampleLabels.designs().designs())
            Golden.check(
                    "label/" + design.name() + ".txt",
                    drawing(Pitch.COMMON.get(0))
                                    .lay(design, SampleLabels.textFor(design))
                                    .toString()
                                    .replaceAll(", dots=[^,]*, [^,]*,", ",")
                            + "\n");
    }

    /** Drawn once for all tests of this class. */
    private static Dots preview(Design design, Pitch pitch) {
        return PREVIEWS.computeIfAbsent(
                design.name() + pitch, key -> drawing(pitch).draw(design, SampleLabels.textFor(design)));
    }

    private static DotDrawing drawing(Pitch pitch) {
        return new DotDrawing(TYPEFACES, pitch, SIXTEENTH_INCH);
    }
}

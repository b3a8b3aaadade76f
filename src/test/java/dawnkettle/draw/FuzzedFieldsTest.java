package dawnkettle.draw;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.label.Design;
import dawnkettle.label.Dots;
import dawnkettle.label.Framing;
import dawnkettle.label.LabelText;
import dawnkettle.label.Pitch;
import dawnkettle.label.PrinterProfile;
import dawnkettle.label.ProfileReader;
import dawnkettle.label.SampleProfiles;
import dawnkettle.trouble.Problem;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/**
 * Whatever stands in a field, a printer gets the same commands. {@code -Dfuzz=1000000} is for a long night; whole labels are
 * a hundredth of it.
 */
class FuzzedFieldsTest {
    private static final int FIELDS = Integer.getInteger("fuzz", 20_000);
    private static final int WHOLE_LABELS = Integer.getInteger("fuzz") == null ? 60 : FIELDS / 100;

    /** Beginnings of the profiles' own commands, control characters, and letters of many scripts. */
    private static final String[] HOSTILE = {
        "^XA",
        "^XZ",
        "^FS",
        "~JA",
        "~HS",
        "\u001B@",
        "\u001Dv0",
        "\f",
        "\r\n",
        "PRINT 1,99",
        "CLS",
        "OUT \"~\"",
        "\u0000",
        "\u0010\u0004\u0001",
        "\u001B!?",
        "{copies}",
        "{data}",
        "<1B>",
        "^PQ99",
        "(01)",
        "\u001D",
        "\u202E",
        "&lt;",
        "%n",
        "$1",
        "\\",
        "\"",
        "'",
        "\uFEFF",
        "é",
        "Ω",
        "Ж",
        "豆",
        "ש",
        "\uD83D\uDE00",
        "\uDC00",
        " "
    };

    private static final LabelTypefaces TYPEFACES = LabelTypefaces.ours();

    /** Three of four are of characters that are set, and make dots; the fourth is anything. */
    private static String field(Random random) {
        String field = wild(random);
        while (random.nextInt(4) > 0 && TYPEFACES.objection(field).isPresent()) field = wild(random);
        return field;
    }

    private static String wild(Random random) {
        StringBuilder field = new StringBuilder();
        for (int length = random.nextInt(6); length >= 0; length--)
            if (random.nextBoolean()) field.append(HOSTILE[random.nextInt(HOSTILE.length)]);
            else if (random.nextInt(4) == 0) field.appendCodePoint(random.nextInt(0x3000));
            else field.append((char) random.nextInt(0x100));
        return field.toString();
    }

    private static Design small() {
        List<Problem> problems = new ArrayList<>();
        Optional<Design> design = LabelDesigns.read("small", """
                <svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="12mm" viewBox="0 0 60 12" data-role="slip">
                  <text x="2" y="4" font-size="2" data-width="56">{heading}</text>
                  <text x="2" y="7" font-size="2" data-width="56">{lot}</text>
                  <text x="2" y="10" font-size="2" data-width="56">{product}</text>
                </svg>
                """, problems);
        assertThat(problems).isEmpty();
        return design.orElseThrow();
    }

    /** Commands in their order, those of rows taken as one, since how many there are is the picture's. */
    private static String commands(PrinterProfile profile, Dots fed) {
        byte[] bytes = new Framing(profile).group(fed, 1);
        ProfileReader reader = new ProfileReader(profile, bytes, fed.width(), fed.height());
        assertThat(reader.read()).containsExactly(new ProfileReader.Printed(fed, 1));
        return String.join(" ", reader.structure()).replaceAll("(row|feed)( (row|feed))*", "dots");
    }

    @Test
    void no_field_changes_the_commands_or_what_comes_out() {
        DotDrawing drawing = new DotDrawing(TYPEFACES, new Pitch(4_000), 0);
        Design design = small();
        Random random = new Random(19);
        Map<String, Set<String>> commands = new HashMap<>();
        int refused = 0;
        for (int i = 0; i < FIELDS; i += 3) {
            LabelText text = new LabelText(
                    Map.of("heading", field(random), "lot", field(random), "product", field(random)), Optional.empty());
            if (!drawing.check(design, text).isEmpty()) {
                refused++;
                continue;
            }
            Dots picture = drawing.draw(design, text);
            for (PrinterProfile profile : SampleProfiles.all())
                if (picture.blackDots() > 0)
                    commands.computeIfAbsent(profile.name(), name -> new TreeSet<>())
                            .add(commands(profile, picture));
        }
        assertThat(refused).as("refused by name, never printed").isBetween(1, FIELDS / 4);
        assertThat(commands).hasSize(SampleProfiles.all().size());
        commands.values().forEach(one -> assertThat(one).hasSize(1));
    }

    @Test
    void nor_does_any_on_a_whole_label() {
        Random random = new Random(20);
        Design design = SampleLabels.designs().design("case-100x70");
        DotDrawing drawing = new DotDrawing(TYPEFACES, new Pitch(8_000), 1_588);
        Map<String, Set<String>> commands = new HashMap<>();
        int printed = 0;
        for (int i = 0; i < WHOLE_LABELS; i++) {
            LabelText sample = SampleLabels.textFor(design);
            Map<String, String> fields = new HashMap<>(sample.fields());
            List<String> names = new ArrayList<>(new TreeSet<>(fields.keySet()));
            fields.put(names.get(random.nextInt(names.size())), field(random));
            LabelText text = new LabelText(fields, sample.elements());
            if (!drawing.check(design, text).isEmpty()) continue;
            printed++;
            Dots picture = drawing.draw(design, text);
            for (PrinterProfile profile : SampleProfiles.all())
                commands.computeIfAbsent(profile.name(), name -> new TreeSet<>())
                        .add(commands(profile, picture));
        }
        assertThat(printed).isPositive();
        commands.values().forEach(one -> assertThat(one).hasSize(1));
    }
}

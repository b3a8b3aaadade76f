package dawnkettle.label;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dawnkettle.draw.SampleLabels;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class FramingTest {
    private static final Dots SMALL = Dots.typed("""
            ........
            .##.....
            ........
            #......#
            """);

    /** How many random pictures a profile is given; {@code -Dfuzz=1000000} for a long night. */
    private static final int PICTURES = Integer.getInteger("fuzz", 10_000);

    static Stream<PrinterProfile> profiles() {
        return SampleProfiles.all().stream();
    }

    private static String framed(String profile, Dots dots, int copies) {
        return new String(
                new Framing(SampleProfiles.profile(profile)).group(dots, copies), StandardCharsets.ISO_8859_1);
    }

    @Test
    void rows_are_sent_and_blank_rows_fed() {
        assertThat(framed("rows-behind-escape", SMALL, 1))
                .isEqualTo(
                        "\u001B@\u001BJ\u0001\u001Dv0\0\u0001\0\u0001\0\u0060\u001BJ\u0001\u001Dv0\0\u0001\0\u0001\0\u0081\f"
                                + "\u001Dr\u0001");
    }

    @Test
    void hexadecimal_digits_are_counted_and_sent_once_for_all_copies() {
        assertThat(framed("text-with-hex-runs", SMALL, 3))
                .isEqualTo("^XA^PW8^LL4^PR3^MD8^FO0,1^GFA,3,3,1,6,,81^FS^PQ3,0,1,Y^XZ\r\n");
    }

    @Test
    void a_band_is_plain_bytes_with_black_as_nought() {
        assertThat(framed("line-words", SMALL, 2))
                .isEqualTo("SIZE 1 mm,1 mm\r\nGAP 3 mm,0 mm\r\nDENSITY 8\r\nSPEED 3\r\nCLS\r\n"
                        + "BITMAP 0,1,1,3,0,\u009F\u00FF\u007E\r\nPRINT 1,2\r\nOUT \"~\"\r\n");
    }

    @Test
    void what_the_head_cannot_print_is_refused_with_its_millimetres() {
        Framing framing = new Framing(SampleProfiles.profile("line-words"));
        assertThatThrownBy(() -> framing.group(new Dots.Ink(900, 10).dry(), 1))
                .hasMessage(
                        "labels/printers/line-words.toml: label is 112.5 mm across and the head prints 104.0 mm; choose a"
                                + " smaller design, or name a profile with a wider head");
    }

    /** Pictures of any dots: the commands are the same, and the picture comes back. */
    @ParameterizedTest
    @MethodSource("profiles")
    void no_picture_can_change_the_commands(PrinterProfile profile) {
        Random random = new Random(20261204);
        Framing framing = new Framing(profile);
        for (int i = 0; i < PICTURES; i++) {
            Dots.Ink ink = new Dots.Ink(1 + random.nextInt(40), 1 + random.nextInt(12));
            Dots shape = ink.dry();
            int dots = random.nextInt(1 + shape.width() * shape.height());
            for (int d = 0; d < dots; d++) ink.set(random.nextInt(shape.width()), random.nextInt(shape.height()), true);
            Dots picture = ink.dry();
            ProfileReader reader =
                    new ProfileReader(profile, framing.group(picture, 1), picture.width(), picture.height());
            assertThat(reader.read()).containsExactly(new ProfileReader.Printed(picture, 1));
            assertThat(reader.structure().get(0)).isEqualTo("start");
            assertThat(reader.structure().stream().filter(name -> name.equals("start") || name.equals("end")))
                    .containsExactly("start", "end");
        }
    }

    @ParameterizedTest
    @MethodSource("profiles")
    void wide_rows_with_long_runs_come_back(PrinterProfile profile) {
        Dots.Ink ink = new Dots.Ink(PATIENT, 3);
        ink.fill(0, 0, PATIENT, 1);
        ink.fill(8, 1, PATIENT - 16, 1);
        ink.fill(3, 2, 1, 1);
        PrinterProfile wide = profile.with(new PrinterProfile.Head(new Pitch(8_000), PATIENT, 100));
        ProfileReader reader = new ProfileReader(wide, new Framing(wide).group(ink.dry(), 1), PATIENT, 3);
        assertThat(reader.read()).containsExactly(new ProfileReader.Printed(ink.dry(), 1));
    }

    /** Digits enough for runs beyond 400. */
    private static final int PATIENT = 8_000;

    /** Bytes of 48 labels of the case design against eight dots a byte of each: an eighth at most where it repeats. */
    @Test
    void families_that_repeat_send_an_eighth_of_the_raw_picture_at_most() {
        Dots picture = SampleLabels.drawn("case-100x70");
        int raw = 48 * picture.rowBytes() * picture.height();
        for (PrinterProfile profile : SampleProfiles.all()) {
            int sent = 0;
            for (int left = 48; left > 0; left -= 10)
                sent += new Framing(profile).group(picture, Math.min(10, left)).length;
            if (profile.repeats()) assertThat(sent).isLessThanOrEqualTo(raw / 8);
            else assertThat(sent).isLessThan(raw);
        }
    }

    @Test
    void a_profile_that_lacks_what_printing_needs_is_told_so() {
        PrinterProfile good = SampleProfiles.profile("line-words");
        PrinterProfile bad = new PrinterProfile(
                "bad",
                good.head(),
                good.coding(),
                new PrinterProfile.Sending(
                        new ByteTemplate("CLS"),
                        new ByteTemplate("BITMAP {y},{rows},{data}"),
                        ByteTemplate.NOTHING,
                        new PrinterProfile.After(
                                new ByteTemplate("PRINT"),
                                ByteTemplate.NOTHING,
                                true,
                                ByteTemplate.NOTHING,
                                ByteTemplate.NOTHING),
                        good.sending().limits()),
                new PrinterProfile.Asking(
                        ByteTemplate.NOTHING,
                        good.asking().reply(),
                        java.util.Optional.empty(),
                        List.of(new PrinterProfile.Unasked(0x20, java.util.Optional.empty()))));
        assertThat(bad.lacking())
                .isEqualTo(List.of(
                        "send.row \"BITMAP {y},{rows},{data}\" has no {rowBytes}",
                        "send.endKeeps is true and send.again is \"\", so that nothing would be printed",
                        "ask has neither inTurn nor remaining, so that nothing printed could be known",
                        "ask.question is \"\"",
                        "ask.unasked byte 0x20 could as well be part of an answer"));
    }
}

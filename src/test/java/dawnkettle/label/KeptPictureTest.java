package dawnkettle.label;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.conf.PrinterProfiles;
import dawnkettle.trouble.Problem;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What a profile may say beyond the usual: a picture that is kept, a cut, bytes that come by themselves. */
class KeptPictureTest {
    private static final Path LINE_WORDS = Path.of("labels/printers/line-words.toml");
    private static final Path DEFLATED = Path.of("labels/printers/text-with-deflated-dots.toml");
    private static final Path ROWS = Path.of("labels/printers/rows-behind-escape.toml");
    private static final GroupPrinting.Pace PACE =
            new GroupPrinting.Pace(4, Duration.ofMillis(500), Duration.ofSeconds(30), Duration.ofSeconds(60));
    private static final LabelRun RUN = LabelRun.whole(
            "261204-FI03", "FIRM-12", List.of(new LabelCopies(LabelCopies.Kind.CASE, FakePrinter.PICTURE, false, 12)));

    private static PrinterProfile changed(Path file, String what, String by) throws Exception {
        List<Problem> problems = new ArrayList<>();
        String text = Files.readString(file);
        assertThat(text).contains(what);
        Optional<PrinterProfile> profile =
                PrinterProfiles.read(file.getFileName().toString(), text.replace(what, by), problems);
        assertThat(problems).isEmpty();
        return profile.orElseThrow();
    }

    private static String problem(Path file, String what, String by) throws Exception {
        List<Problem> problems = new ArrayList<>();
        PrinterProfiles.read(
                file.getFileName().toString(), Files.readString(file).replace(what, by), problems);
        assertThat(problems).hasSize(1);
        return problems.get(0).toString();
    }

    /** Takes what is sent, and counts how often a picture was in it. */
    private static int pictures(PrinterProfile profile, FakePrinter printer, FakeLine line) {
        List<Integer> confirmed = new ArrayList<>();
        new GroupPrinting(profile, line, PACE).print(RUN, group -> confirmed.add(group.count()));
        assertThat(printer.printed()).hasSize(12).containsOnly(FakePrinter.PICTURE);
        assertThat(confirmed.stream().mapToInt(Integer::intValue).sum()).isEqualTo(12);
        String heard = line.heard();
        return heard.split("BITMAP ", -1).length - 1;
    }

    @Test
    void a_picture_that_the_printer_keeps_crosses_the_line_once_a_lot() {
        PrinterProfile profile = SampleProfiles.profile("line-words");
        FakePrinter printer = new FakePrinter(profile);
        assertThat(pictures(profile, printer, new FakeLine(printer))).isEqualTo(2); // two bands of one picture
    }

    @Test
    void after_any_stop_it_is_sent_whole_again_for_the_printer_may_have_been_switched_off() {
        PrinterProfile profile = SampleProfiles.profile("line-words");
        FakePrinter printer = new FakePrinter(profile).roll(6);
        assertThat(pictures(profile, printer, new FakeLine(printer).refillAfter(Duration.ofSeconds(20))))
                .isEqualTo(4);
    }

    @Test
    void an_end_that_only_keeps_is_followed_by_what_prints() throws Exception {
        PrinterProfile profile =
                changed(LINE_WORDS, "end = \"PRINT 1,{copies}<0D><0A>\"", "end = \"KEEP<0D><0A>\"\nendKeeps = true");
        FakePrinter printer = new FakePrinter(profile);
        FakeLine line = new FakeLine(printer);
        assertThat(pictures(profile, printer, line)).isEqualTo(2);
        assertThat(line.heard().split("KEEP", -1)).hasSize(2);
        assertThat(line.heard().split("PRINT 1,4", -1)).hasSize(4);
    }

    @Test
    void a_lot_is_cut_off_after_its_last_label() throws Exception {
        PrinterProfile profile = changed(LINE_WORDS, "cut = \"\"", "cut = \"CUT<0D><0A>\"");
        assertThat(new String(new LabelBytes(profile, 4).of(RUN), java.nio.charset.StandardCharsets.ISO_8859_1))
                .endsWith("OUT \"~\"\r\nCUT\r\n")
                .containsOnlyOnce("CUT");
    }

    @Test
    void a_byte_that_comes_by_itself_is_no_part_of_an_answer_and_is_told() throws Exception {
        PrinterProfile profile =
                changed(ROWS, "{ byte = 0x11, means = \"nothing\" }", "{ byte = 0x9F, means = \"jam\" }");
        FakePrinter printer = new FakePrinter(profile);
        FakeLine line = new FakeLine(printer)
                .answers(bytes -> new ByteRoll().add(0x13).add(bytes).add(0x9F).toBytes());
        List<String> pauses = new ArrayList<>();
        try {
            new GroupPrinting(profile, line, PACE).print(RUN, new LabelJournal() {
                @Override
                public void intended(Confirmed group) {
                    throw new AssertionError("nothing is sent to a printer that says it has a jam");
                }

                @Override
                public void confirmed(Confirmed group) {
                    throw new AssertionError("nothing was printed");
                }

                @Override
                public void doubtful(Confirmed group) {
                    throw new AssertionError("nothing is in doubt");
                }

                @Override
                public void paused(String why) {
                    pauses.add(why);
                }
            });
        } catch (dawnkettle.trouble.DeviceAway away) {
            assertThat(away.isAmbiguous()).isFalse();
        }
        assertThat(pauses).containsExactly("label printer on /dev/fake has a jam; clear it");
    }

    @Test
    void flow_control_bytes_among_answers_are_passed_over() {
        PrinterProfile profile = SampleProfiles.profile("rows-behind-escape");
        FakePrinter printer = new FakePrinter(profile);
        FakeLine line = new FakeLine(printer)
                .answers(bytes -> bytes.length == 0
                        ? bytes
                        : new ByteRoll().add(0x11).add(bytes).add(0x11).toBytes());
        new GroupPrinting(profile, line, PACE).print(RUN, group -> {});
        assertThat(printer.printed()).hasSize(12);
    }

    @Test
    void what_cannot_be_is_refused_with_its_place() throws Exception {
        assertThat(problem(LINE_WORDS, "again = \"PRINT 1,{copies}<0D><0A>\"", "again = \"PRINT<0D><0A>\""))
                .contains("send.again \"PRINT<0D><0A>\" has no {copies}, and mostCopies is \"100\"");
        assertThat(problem(ROWS, "{ byte = 0x11, means", "{ byte = 0x12, means"))
                .contains("ask.unasked byte 0x12 could as well be part of an answer");
        assertThat(problem(ROWS, "means = \"nothing\"", "means = \"lunch\"")).contains("means \"lunch\" is not known");
        assertThat(problem(LINE_WORDS, "cut = \"\"", "endKeeps = 1\ncut = \"\""))
                .contains("endKeeps \"1\" is neither true nor false; write true or leave it out");
    }

    @Test
    void pictures_kept_by_name_need_all_that_makes_them_sure() throws Exception {
        assertThat(problem(DEFLATED, "answer = \"{name}.GRF\"", "answer = \"GRF\""))
                .contains("keep.answer \"GRF\" has no {name}");
        assertThat(problem(DEFLATED, "question = \"^XA^HWR:*.GRF^XZ<0D><0A>\"", "question = \"\""))
                .contains("keep.question is \"\", so that no kept picture could be relied on");
        assertThat(problem(DEFLATED, "recall = \"^FO0,{y}^XGR:{name}.GRF", "recall = \"^FO0,{y}^XGR:A.GRF"))
                .contains("keep.recall \"^FO0,{y}^XGR:A.GRF,1,1^FS\" has no {name}");
        assertThat(problem(DEFLATED, "tail = 0x03  ", "tail = 300  ")).contains("tail \"300\" is not a whole number");
        assertThat(problem(DEFLATED, "cut = \"\"", "again = \"^PQ{copies}\"\ncut = \"\""))
                .contains("send.again and keep are both there, and a picture can be kept by one only");
    }
}

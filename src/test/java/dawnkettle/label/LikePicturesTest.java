package dawnkettle.label;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.draw.SampleLabels;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Of labels that resemble one that the printer keeps only what differs crosses the line, and never on trust. */
class LikePicturesTest {
    private static final GroupPrinting.Pace PACE =
            new GroupPrinting.Pace(4, Duration.ofMillis(500), Duration.ofSeconds(30), Duration.ofSeconds(60));

    private static final int ACROSS = 203;
    private static final int DOWN = 120;
    private static final List<Dots> LIKE =
            IntStream.range(0, 6).mapToObj(LikePicturesTest::like).toList();

    /** A text of noise, of which a corner tells one label from the next. */
    private static Dots like(int which) {
        Random text = new Random(7);
        Dots.Ink ink = new Dots.Ink(ACROSS, DOWN);
        for (int i = 0; i < 5_000; i++) ink.set(text.nextInt(ACROSS), 1 + text.nextInt(99), true);
        Random corner = new Random(which);
        for (int y = 100; y < 104; y++) for (int x = 180; x < ACROSS; x++) ink.set(x, y, corner.nextBoolean());
        return ink.dry();
    }

    static Stream<PrinterProfile> profiles() {
        return SampleProfiles.all().stream()
                .filter(profile -> profile.coding().keeping().isPresent());
    }

    private static LabelRun run(Dots... pictures) {
        return LabelRun.whole(
                "261204-FI03",
                "FIRM-12",
                Stream.of(pictures)
                        .map(picture -> new LabelCopies(LabelCopies.Kind.PART_CASE, picture, false, 3))
                        .toList());
    }

    private static FakePrinter printer(PrinterProfile profile) {
        return new FakePrinter(profile).stock(ACROSS, DOWN);
    }

    private static List<Dots> thrice(Dots... pictures) {
        return Stream.of(pictures)
                .flatMap(picture -> Stream.of(picture, picture, picture))
                .toList();
    }

    private static int stored(PrinterProfile profile, FakeLine line) {
        String store = profile.coding().keeping().orElseThrow().store().text();
        String head = Pattern.quote(store.substring(0, store.indexOf('{')));
        return line.heard().split(head, -1).length - 1;
    }

    @ParameterizedTest
    @MethodSource("profiles")
    void one_of_a_kind_is_stored_and_the_others_are_what_differs_also_in_later_runs(PrinterProfile profile) {
        FakePrinter printer = printer(profile);
        FakeLine line = new FakeLine(printer);
        GroupPrinting printing = new GroupPrinting(profile, line, PACE);
        printing.print(run(LIKE.get(0), LIKE.get(1)), group -> {});
        int first = line.heard().length();
        printing.print(run(LIKE.get(2), LIKE.get(3)), group -> {});
        assertThat(printer.printed()).isEqualTo(thrice(LIKE.get(0), LIKE.get(1), LIKE.get(2), LIKE.get(3)));
        assertThat(stored(profile, line)).isEqualTo(1);
        assertThat(line.heard().length() - first).isLessThan(first / 2);
    }

    @ParameterizedTest
    @MethodSource("profiles")
    void what_a_printer_lost_when_it_was_switched_off_between_runs_is_given_to_it_again(PrinterProfile profile) {
        FakePrinter printer = printer(profile);
        FakeLine line = new FakeLine(printer);
        GroupPrinting printing = new GroupPrinting(profile, line, PACE);
        printing.print(run(LIKE.get(0)), group -> {});
        printer.restart();
        printing.print(run(LIKE.get(1)), group -> {});
        assertThat(printer.printed()).isEqualTo(thrice(LIKE.get(0), LIKE.get(1)));
        assertThat(stored(profile, line)).isEqualTo(2);
    }

    /** It says that it is out of labels before the second picture; a person switches it off and on with the new roll. */
    @ParameterizedTest
    @MethodSource("profiles")
    void nor_is_it_trusted_after_a_stop_within_a_run(PrinterProfile profile) {
        FakePrinter printer = printer(profile).roll(3);
        FakeLine line = new FakeLine(printer).afterwards(Duration.ofSeconds(20), () -> {
            printer.restart();
            printer.newRoll();
        });
        new GroupPrinting(profile, line, PACE).print(run(LIKE.get(0), LIKE.get(1)), group -> {});
        assertThat(printer.printed()).isEqualTo(thrice(LIKE.get(0), LIKE.get(1)));
        assertThat(stored(profile, line)).isEqualTo(2);
    }

    @ParameterizedTest
    @MethodSource("profiles")
    void a_printer_that_does_not_say_what_it_keeps_gets_every_picture_whole(PrinterProfile profile) {
        FakePrinter printer = printer(profile).listsNothing();
        FakeLine line = new FakeLine(printer);
        new GroupPrinting(profile, line, PACE).print(run(LIKE.get(0), LIKE.get(1)), group -> {});
        assertThat(printer.printed()).isEqualTo(thrice(LIKE.get(0), LIKE.get(1)));
        assertThat(stored(profile, line)).isZero();
    }

    @ParameterizedTest
    @MethodSource("profiles")
    void one_without_room_drops_what_it_has_and_one_with_none_gets_every_picture_whole(PrinterProfile profile) {
        for (int room = 0; room < 2; room++) {
            FakePrinter printer = printer(profile).room(room);
            Dots[] pictures = {LIKE.get(0), LIKE.get(1), noise(), new Dots.Ink(ACROSS, DOWN).dry(), LIKE.get(2)};
            GroupPrinting printing = new GroupPrinting(profile, new FakeLine(printer), PACE);
            for (Dots picture : pictures) printing.print(run(picture), group -> {});
            assertThat(printer.printed()).isEqualTo(thrice(pictures));
        }
    }

    private static Dots noise() {
        Random random = new Random(3);
        Dots.Ink ink = new Dots.Ink(ACROSS, DOWN);
        for (int y = 0; y < DOWN; y++) for (int x = 0; x < ACROSS; x++) ink.set(x, y, random.nextInt(3) == 0);
        return ink.dry();
    }

    /** An answer with a flipped bit names no picture, so that it is given again or the label sent whole. */
    @ParameterizedTest
    @MethodSource("profiles")
    void noise_among_the_names_never_changes_what_is_printed(PrinterProfile profile) {
        Random random = new Random(9);
        FakePrinter printer = printer(profile);
        String name = KeptPictures.name(LIKE.get(0));
        FakeLine line = new FakeLine(printer).answers(bytes -> {
            String heard = new String(bytes, StandardCharsets.ISO_8859_1);
            int at = heard.indexOf(name);
            if (at < 0 || random.nextInt(3) > 0) return bytes;
            byte[] flipped = bytes.clone();
            flipped[at + random.nextInt(8)] ^= (byte) (1 << random.nextInt(7));
            return flipped;
        });
        GroupPrinting printing = new GroupPrinting(profile, line, PACE);
        List<Dots> wanted = new ArrayList<>();
        for (int i = 0; i < 30; i++) {
            Dots[] two = {LIKE.get(i == 0 ? 0 : random.nextInt(6)), LIKE.get(random.nextInt(6))};
            printing.print(run(two), group -> {});
            wanted.addAll(thrice(two));
        }
        assertThat(printer.printed()).isEqualTo(wanted);
        assertThat(stored(profile, line)).as("given again").isGreaterThan(1);
    }

    /** Real labels one after the other, as a rehearsal writes them down. */
    @ParameterizedTest
    @MethodSource("profiles")
    void the_bytes_of_a_night_give_every_picture_back_dot_for_dot(PrinterProfile profile) {
        LabelBytes bytes = new LabelBytes(profile, 10);
        Map<String, Dots> memory = new HashMap<>();
        Random random = new Random(11);
        for (String design : List.of("case-100x70", "part-case-100x70", "divider-100x70", "bucket-100x50"))
            for (int change = 0; change < 4; change++) {
                Dots picture = changed(SampleLabels.drawn(design), change, random);
                ProfileReader reader =
                        new ProfileReader(profile, bytes.of(run(picture)), picture.width(), picture.height());
                assertThat(reader.memory(memory).read()).containsExactly(new ProfileReader.Printed(picture, 3));
                assertThat(reader.structure()).contains("recall").doesNotContain("row");
                if (change > 0) assertThat(reader.structure()).doesNotContain("store");
            }
        assertThat(memory).hasSize(4);
    }

    private static Dots changed(Dots drawn, int change, Random random) {
        Dots.Ink ink = new Dots.Ink(drawn.width(), drawn.height());
        ink.stamp(drawn, 0, 0, true);
        for (int i = 0; i < 40 * change; i++)
            ink.set(20 + random.nextInt(200), 40 + random.nextInt(60), random.nextBoolean());
        return ink.dry();
    }

    /** As {@code FramingTest} has it for whole pictures. */
    @ParameterizedTest
    @MethodSource("profiles")
    void no_pair_of_pictures_can_change_the_commands(PrinterProfile profile) {
        Framing framing = new Framing(profile);
        Random random = new Random(20261205);
        for (int i = 0; i < Integer.getInteger("fuzz", 3_000); i++) {
            int across = 1 + random.nextInt(40);
            int down = 1 + random.nextInt(12);
            KeptPictures.Base base = new KeptPictures.Base("0000000A", anything(across, down, random));
            Dots fed = anything(across, down, random);
            byte[] both = new ByteRoll()
                    .add(framing.store(base))
                    .add(framing.from(base, fed, 2))
                    .toBytes();
            ProfileReader reader = new ProfileReader(profile, both, across, down);
            assertThat(reader.read()).containsExactly(new ProfileReader.Printed(fed, 2));
            assertThat(String.join(" ", reader.structure())).matches("(store )?start recall (differ )?end");
        }
    }

    private static Dots anything(int across, int down, Random random) {
        Dots.Ink ink = new Dots.Ink(across, down);
        for (int dots = random.nextInt(1 + across * down); dots > 0; dots--)
            ink.set(random.nextInt(across), random.nextInt(down), true);
        return ink.dry();
    }

    /** The check value of this checksum in the catalogues (from memory), and a division done another way. */
    @Test
    void the_checksum_is_the_one_meant() {
        byte[] check = "123456789".getBytes(StandardCharsets.US_ASCII);
        assertThat(Deflated.checksum(check)).isEqualTo(0x31C3).isEqualTo(ProfileReader.remainder(check));
    }

    @Test
    void a_name_is_of_the_very_dots() {
        assertThat(LIKE.stream().map(KeptPictures::name).distinct().toList())
                .hasSize(6)
                .allMatch(name -> name.matches("[0-9A-Z]{8}"));
        assertThat(KeptPictures.name(like(0))).isEqualTo(KeptPictures.name(LIKE.get(0)));
    }
}

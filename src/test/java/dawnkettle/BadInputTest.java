package dawnkettle;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.store.Ledger;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What somebody wrote, copied or dropped wrong reaches them in words with its place, and nothing is half done. */
class BadInputTest {
    private static final LocalDate DAY = LocalDate.of(2026, 12, 4);
    private static final String HEADER = "order,line,customer,product,packs,delivery_date,action\n";
    private static final int GARBAGE_BYTES = 10 * 1024 * 1024;

    @TempDir
    Path folder;

    private CopiedShop shop;

    @BeforeEach
    void copy() throws IOException {
        shop = CopiedShop.quick(folder).withoutHistory();
    }

    @Test
    void a_sound_shop_is_said_to_be_sound() {
        Terminal.Told told = Terminal.run("check", "--conf", shop.conf());
        assertThat(told.err()).isEmpty();
        assertThat(told.out()).isEqualTo("""
                Millrace Tofu Works: 16 products, 8 recipes, 150 customers, 8 routes. Nothing is wrong with it.
                """);
        assertThat(told.status()).isZero();
    }

    private int lineOf(String file, String start) throws IOException {
        List<String> lines = Files.readAllLines(shop.conf().resolve(file), UTF_8);
        for (int i = 0; i < lines.size(); i++) if (lines.get(i).startsWith(start)) return i + 1;
        throw new IllegalArgumentException(file + " has no line that begins with " + start);
    }

    @Test
    void mistakes_of_writing_in_six_files_are_told_at_once() throws IOException {
        Path secret = Files.writeString(folder.resolve("password"), "demonstration");
        Files.setPosixFilePermissions(secret, PosixFilePermissions.fromString("rw-r--r--"));
        String products = Files.readString(shop.conf().resolve("products.csv"), UTF_8);
        String row = products.lines()
                .filter(line -> line.startsWith("MILK-1L,"))
                .findFirst()
                .orElseThrow();
        shop.holding("products.csv", products + row + "\n")
                .with("products.csv", "bottle,515,500", "bottle,-515,500")
                .with("stations.toml", "[[presence]]", "[[presence")
                .with("customers.csv", "code,name,aliases,", "code,name,")
                .with("routes.csv", ",110,2,yes", ",many,2,yes")
                .with("shop.toml", "# host =", "host =")
                .with("shop.toml", "# user =", "user =")
                .with(
                        "shop.toml",
                        "# secret_file = \"/run/credentials/dawnkettle.service/smtp\"",
                        "secret_file = \"../password\"");
        assertTold("""
                customers.csv:5:1: column "aliases" is missing; add it to the header and to every row
                products.csv:27:38: net_g "-515" is out of range; write a whole number from 1 to 1000000
                products.csv:29:1: code "MILK-1L" is already the product of line 26; give each its own
                products.csv:29:49: gtin "19520001000147" is already the case number of line 26; give each its own
                routes.csv:9:59: cases "many" is not a whole number; write a whole number from 1 to 100000
                shop.toml:%d:1: secret_file "../password" can be read or changed by other users; run chmod 600 on it
                stations.toml:334:11: this is not TOML: Unexpected end of line, expected ]]; put it right; until then nothing else in the file is looked at
                """.formatted(lineOf("shop.toml", "secret_file = \"../password")));
    }

    @Test
    void mistakes_of_meaning_in_four_files_are_told_at_once() throws IOException {
        shop.with("routes.csv", "mon;wed;fri,10:30", ",10:30")
                .with(
                        "products.csv",
                        "16,,19520001000086,14,Q. Millrace (demonstration),2026-05-04,vacuum,yes,4",
                        "16,,19520001000086,14,Q. Millrace (demonstration),2026-05-04,vacuum,yes,14")
                .with("products.csv", "\"Water, soybeans\",soy,", "\"Water, soybeans\",,")
                .with("standing.csv", "\nC001,FIRM-400", "\nC001X,FIRM-400")
                .with("recipes.toml", "stage = \"bottle\"", "stage = \"bottling\"");
        assertTold("""
                products.csv:20:1: product "XFIRM-350" does not reach route "HARBOR" on fri with 14 of its 14 days left; lower least_days_left or take the day off the route; a longer life only where it is validated
                products.csv:20:1: product "XFIRM-350" does not reach route "HARBOR" on mon with 14 of its 14 days left; lower least_days_left or take the day off the route; a longer life only where it is validated
                products.csv:20:1: product "XFIRM-350" does not reach route "HARBOR" on sat with 14 of its 14 days left; lower least_days_left or take the day off the route; a longer life only where it is validated
                products.csv:20:1: product "XFIRM-350" does not reach route "HARBOR" on thu with 14 of its 14 days left; lower least_days_left or take the day off the route; a longer life only where it is validated
                products.csv:20:1: product "XFIRM-350" does not reach route "HARBOR" on tue with 14 of its 14 days left; lower least_days_left or take the day off the route; a longer life only where it is validated
                products.csv:20:1: product "XFIRM-350" does not reach route "HARBOR" on wed with 14 of its 14 days left; lower least_days_left or take the day off the route; a longer life only where it is validated
                products.csv:20:1: product "XFIRM-350" does not reach route "MARKET" on sat with 14 of its 14 days left; lower least_days_left or take the day off the route; a longer life only where it is validated
                products.csv:20:1: product "XFIRM-350" does not reach route "MARKET" on thu with 14 of its 14 days left; lower least_days_left or take the day off the route; a longer life only where it is validated
                products.csv:20:1: product "XFIRM-350" does not reach route "MARKET" on tue with 14 of its 14 days left; lower least_days_left or take the day off the route; a longer life only where it is validated
                products.csv:26:143: contains "" is empty; write every allergen, as soy or soy;sesame
                recipes.toml:49:22: stage "bottling" is no stage of any station; add it to stations.toml
                routes.csv:10:19: days "" is empty: the route never runs; write its weekdays, as mon;wed;fri
                standing.csv:4:1: customer "C001X" is no customer; write "C001" or add it to customers.csv
                """);
    }

    @Test
    void a_list_of_ten_megabytes_of_garbage_is_refused_by_its_size() throws IOException {
        Files.write(shop.conf().resolve("products.csv"), garbage());
        assertTold("""
                products.csv: the file has "10485760" bytes; no more than 5242880 are read: look what was copied there
                """);
    }

    @Test
    void a_list_that_was_cut_off_while_it_was_copied_is_refused_at_its_end() throws IOException {
        String products = Files.readString(shop.conf().resolve("products.csv"), UTF_8);
        shop.holding("products.csv", products.substring(0, products.indexOf("soybeans, magnesium chloride")));
        assertTold("""
                products.csv:16:128: a quoted cell is never closed; end it with a "
                """);
    }

    /** Every command that reads the shop says the same, and {@code run} says it so that it is not started again. */
    private void assertTold(String problems) {
        Terminal.Told checked = Terminal.run("check", "--conf", shop.conf());
        assertThat(checked.err()).isEqualTo(problems);
        assertThat(checked.out()).isEmpty();
        assertThat(checked.status()).isEqualTo(2);

        Path ledger = folder.resolve("ledger.db");
        Terminal.Told started = Terminal.run("run", "--conf", shop.conf(), "--ledger", ledger);
        assertThat(started.err()).isEqualTo(problems);
        assertThat(started.status()).isEqualTo(78);

        Terminal.Told rehearsed = shop.rehearse("2026-12-03T15:00");
        assertThat(rehearsed.err()).isEqualTo(problems);
        assertThat(rehearsed.status()).isEqualTo(2);
        assertThat(List.of(ledger, shop.out()))
                .allSatisfy(path -> assertThat(path).doesNotExist());
    }

    @Test
    void orders_that_were_taken_stay_untouched_by_files_that_are_refused() throws IOException {
        try (PlayedNight night = new PlayedNight(shop, DAY, "2026-12-03T05:00")) {
            night.drop("orders.csv", Files.readString(shop.conf().resolve("rehearsal/orders.csv"), UTF_8));
            night.tickAt("2026-12-03T05:00");
            List<Object> taken = taken(night.ledger());
            assertThat(taken).hasSize(504 + 14); // lines and amendments of conf/rehearsal/orders.csv

            night.drop("half.csv", HEADER + "H1,1,C072,FIRM-400,6,2026-12-04,\nH2,1,C07");
            night.drop("mistyped.csv", HEADER + "M1,1,C072,FIRM-400,-6,2026-12-04,\n");
            Files.write(drop().resolve("garbage.csv"), garbage());
            night.tickAt("2026-12-03T06:00");

            assertThat(taken(night.ledger())).isEqualTo(taken);
            assertThat(new Left(drop()).names("taken", "")).containsExactly("orders.csv");
        }
        assertRefused(
                "half.csv",
                "half.csv: the last line has no end, so the file may be half written; end it with a line break");
        assertRefused(
                "garbage.csv",
                "garbage.csv: the file is larger than 1 MB; drop a file of at most 1 MB with orders alone");
        assertRefused(
                "mistyped.csv",
                "mistyped.csv:2:20: packs \"-6\" is not a whole number from 1 to 5000; write the packs as a number, as 24");
    }

    private Path drop() {
        return shop.out().resolve("drop");
    }

    private void assertRefused(String name, String why) {
        assertThat(drop().resolve(name)).doesNotExist();
        assertThat(drop().resolve("refused").resolve(name)).exists();
        assertThat(drop().resolve("refused").resolve(name + ".reasons.txt"))
                .hasContent("Nothing of this file was taken:\n" + why + "\n");
    }

    private static List<Object> taken(Ledger ledger) {
        List<Object> rows = new ArrayList<>(ledger.orders().lines(LocalDate.EPOCH));
        rows.addAll(ledger.orders().amendments(LocalDate.EPOCH));
        return rows;
    }

    private static byte[] garbage() {
        byte[] bytes = new byte[GARBAGE_BYTES];
        new Random(1).nextBytes(bytes);
        return bytes;
    }
}
